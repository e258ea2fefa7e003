package section

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"scrimshaw/plan/match"
	"scrimshaw/plan/unit"
)

// mendWords are what is done, what stays open and why, and whom else it moves.
func mendWords(m *match.Mend, l, from *match.Look) (lines []string) {
	for i := range m.Changes {
		lines = append(lines, matterWords(m.Changes[i].For)+m.Changes[i].Words())
	}
	var left []string
	for r := range match.Rows {
		if after := m.After[r]; !math.IsNaN(after) && l.Off(from, r) && !slices.Contains(m.Closes, r) && !openWithFigure(m, r) {
			left = append(left, rowWords(r)+" "+matchFigure(&after, r))
		}
	}
	if len(left) > 0 && len(m.Changes) > 0 {
		lines = append(lines, "leaves "+strings.Join(left, ", "))
	}
	for i := range m.Open {
		lines = append(lines, openWords(&m.Open[i], m, from))
	}
	if len(m.Spoils) > 0 {
		lines = append(lines, "moves "+strings.Join(m.Spoils, ", ")+", too")
	}
	return lines
}

// matterWords stand before a change that is not for the light of the face.
func matterWords(of match.Matter) string {
	return [...]string{match.OfSide: "to cross: ", match.OfFace: "", match.OfBehind: "behind: ", match.OfSteady: "steady: "}[of]
}

// openWithFigure says whether a row that is left stands beside what it hangs on.
func openWithFigure(m *match.Mend, r match.Row) bool {
	of := match.OfFace
	switch r {
	case match.BehindLeft, match.BehindRight:
		of = match.OfBehind
	case match.Steadiness:
		of = match.OfSteady
	}
	return of != match.OfFace && slices.ContainsFunc(m.Open, func(o match.Open) bool { return o.Of == of })
}

// openWords say for what nothing was found, and why.
func openWords(o *match.Open, m *match.Mend, from *match.Look) string {
	words := [...]string{match.OfSide: "side: none found", match.OfSteady: "steady: none found", match.OfBehind: "behind" + Prefixed(" ", stillBehind(m)) + ": none found"}
	switch {
	case o.Of == match.OfFace:
		return "no level, white, scrim or gel of its lamps closes it"
	case o.Light == "":
		return words[o.Of] + ", for it hangs on many lights"
	case o.Of == match.OfSide:
		return words[o.Of] + fmt.Sprintf(", for %s gives %.0f %% of that side: it would have to go across, or the camera over the line", o.Light, 100*o.Share)
	case o.Of == match.OfSteady:
		was := ""
		if o.Was > 0 {
			was = " (" + from.Setup + ": " + unit.FormatLength(o.Was, from.Feet) + ")"
		}
		return words[o.Of] + ", for most of it is by " + o.Light + ", " + unit.FormatLength(o.Away, from.Feet) + " away" + was
	case o.Spoil:
		return words[o.Of] + ", for " + o.Light + " would spoil what matches"
	}
	return words[o.Of] + ", for " + o.Light + " gives most of it and cannot be set so"
}

// stillBehind are the rows of what is behind that do not pass: "left −0.8".
func stillBehind(m *match.Mend) string {
	var all []string
	for _, r := range []match.Row{match.BehindLeft, match.BehindRight} {
		if after := m.After[r]; math.Abs(after) > match.PassStops {
			all = append(all, strings.TrimPrefix(rowWords(r), "behind ")+" "+matchFigure(&after, r))
		}
	}
	return strings.Join(all, ", ")
}

// matchFigure prints stops to a tenth and mired whole, with their signs but for what has none.
func matchFigure(v *float64, r match.Row) string {
	switch {
	case v == nil:
		return "–"
	case r.InMired():
		if math.Round(*v) == 0 {
			return "0"
		}
		return signed(fmt.Sprintf("%+.0f", *v))
	case r == match.Contrast || r == match.Steadiness:
		return signed(tenths(*v))
	}
	return overTenths(v)
}

// rowWords name a row where it stands alone.
func rowWords(r match.Row) string {
	return [...]string{"key", "fill", "contrast", "behind left", "behind right", "key colour", "fill colour", "steadiness"}[r]
}
