package meter

import (
	"cmp"
	"fmt"
	"io"
	"slices"
	"strings"

	"scrimshaw/plan/light"
)

// Of the surfaces that light came back from, a row names at most so many, and none below so many
// percent of the reading.
const (
	maxSurfaces = 3
	minSurface  = 5
)

// roundsToNothing is the greatest percentage that would be printed as 0 %: a share up to it is left out.
const roundsToNothing = 0.5

// sharesInWords words the shares in the order of the lights, what came back of a light after what came
// straight: "1 day through street 64 %, 1 day reflected 31 % (kitchen.right 16 %, kitchen.floor 6 %)".
func (r *Reading) sharesInWords() string {
	total := r.sumOfShares()
	var parts []string
	for i := range r.Shares {
		s := &r.Shares[i]
		alike := func(o Share) bool { return o.Light == s.Light && o.Path == s.Path }
		switch {
		case s.Path != light.Reflected.String() && s.Path != light.Diffused.String():
			if percent := 100 * s.Lux / total; percent > roundsToNothing {
				parts = append(parts, fmt.Sprintf("%s %.0f %%", s.pathInWords(), percent))
			}
		case !slices.ContainsFunc(r.Shares[:i], alike):
			parts = append(parts, reflected(sharesOf(r.Shares[i:], alike), total)...)
		}
	}
	return strings.Join(parts, ", ")
}

// sharesOf are those of some shares that is picks.
func sharesOf(all []Share, is func(Share) bool) (some []Share) {
	for _, s := range all {
		if is(s) {
			some = append(some, s)
		}
	}
	return some
}

// sumOfShares is the sum of the shares, which is the reading.
func (r *Reading) sumOfShares() (sum float64) {
	for i := range r.Shares {
		sum += r.Shares[i].Lux
	}
	return sum
}

// reflected words what came back of one light, or off cloths.
func reflected(shares []Share, total float64) []string {
	sum := 0.0
	for i := range shares {
		sum += shares[i].Lux
	}
	percent := func(lux float64) float64 { return 100 * lux / total }
	if percent(sum) <= roundsToNothing {
		return nil
	}
	words := fmt.Sprintf("%s %s %.0f %%", shares[0].called(), shares[0].Path, percent(sum))
	strongest := slices.Clone(shares)
	slices.SortStableFunc(strongest, func(a, b Share) int { return cmp.Compare(b.Lux, a.Lux) })
	var named []string
	for _, s := range strongest[:min(maxSurfaces, len(strongest))] {
		if p := percent(s.Lux); p >= minSurface {
			named = append(named, fmt.Sprintf("%s %.0f %%", strings.Join(s.lastLegInWords(), " "), p))
		}
	}
	if len(named) > 0 {
		words += " (" + strings.Join(named, ", ") + ")"
	}
	return []string{words}
}

// pathInWords words how a share came: "1 day through street".
func (s *Share) pathInWords() string {
	if way := s.WayInWords(); way != "" {
		return s.called() + " " + way
	}
	return s.called()
}

// WayInWords words the way of a share without its light: "through street", "by glass", "reflected off kitchen.floor"; "" of what
// came straight past nothing.
func (s *Share) WayInWords() string {
	var words []string
	switch s.Path {
	case light.Direct.String():
	case light.Mirrored.String():
		words = append(words, "by")
	case light.Reflected.String():
		words = append(words, s.Path, "off")
	default:
		words = append(words, s.Path, "from")
	}
	return strings.Join(append(words, s.lastLegInWords()...), " ")
}

// lastLegInWords words the last leg of the way: the surface, where there is one, the panes and the mirrors.
func (s *Share) lastLegInWords() (words []string) {
	if s.From != "" {
		words = append(words, s.From)
	}
	for i, name := range s.Via {
		if i < len(s.Mirrors) && s.Mirrors[i] {
			words = append(words, "by", name)
		} else {
			words = append(words, "through", name)
		}
	}
	return words
}

// WriteShares writes every share of every reading as aligned text: the light, its path, the panes
// that it passed and the surface that it left last. The shares of a reading add up to it.
func WriteShares(w io.Writer, sets []Set) error {
	var b strings.Builder
	for i := range sets {
		if i > 0 {
			b.WriteByte('\n')
		}
		if heading := sets[i].heading(); heading != "" {
			b.WriteString(heading + "\n")
		}
		rows := [][]string{{"reading", "light", "share", "way"}}
		for k := range sets[i].Readings {
			rows = append(rows, sets[i].Readings[k].shareRows()...)
		}
		aligned(&b, rows)
		sets[i].legend(&b)
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// shareRows is a row for the reading and one for each of its shares.
func (r *Reading) shareRows() [][]string {
	value := r.row()[1]
	rows := [][]string{{r.Name, value, "100 %", ""}}
	total := r.sumOfShares()
	for i := range r.Shares {
		s := &r.Shares[i]
		lone := Reading{Lux: &s.Lux, Footcandles: &s.Lux, Uncomputed: r.Uncomputed}
		if r.Luminance != nil {
			lone = Reading{Luminance: &s.Lux, Uncomputed: r.Uncomputed}
		}
		rows = append(rows, []string{"", lone.row()[1], Mark(fmt.Sprintf("%.1f %%", 100*s.Lux/total), r.Struck()), s.pathInWords()})
	}
	return rows
}

// called is the light in words.
func (s *Share) called() string { return cmp.Or(s.Numbered, s.Light) }
