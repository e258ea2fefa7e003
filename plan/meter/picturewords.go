package meter

import (
	"fmt"
	"strings"

	"scrimshaw/plan/unit"
)

// leastListed is the least share of a frame that a surface of a table takes: JSON has all.
const leastListed = 0.01

// table prints a picture: its surfaces and lamps in stops from grey, and what clips or sinks.
func (p *Picture) table(b *strings.Builder) {
	struck := len(p.Uncomputed) > 0
	rows := [][]string{{"  in its picture, stops from grey", "of the frame", "mean", "brightest", "darkest", ""}}
	for i := range p.Surfaces {
		s := &p.Surfaces[i]
		switch {
		case s.Share < leastListed, s.Name == "" && s.Through == "": // round a set on open ground there is nothing
		case s.Name == "":
			rows = append(rows, []string{"  " + s.Words(), unit.FormatPercent(roundedShare(s.Share)), "–", "–", "–", "no light comes from there"})
		default:
			rows = append(rows, []string{"  " + s.Words(), unit.FormatPercent(roundedShare(s.Share)), Mark(signedOrDark(s.Mean), struck), Mark(signedOrDark(s.Most), struck),
				Mark(signedOrDark(s.Least), struck), s.whereInWords()})
		}
	}
	for i := range p.Lamps {
		l := &p.Lamps[i]
		over, words := "–", "a lamp, "+l.Where
		if l.Over != nil {
			over = Mark(signedOrDark(l.Over), struck)
			words += ", " + unit.FormatLuminance(*l.Luminance)
		}
		rows = append(rows, []string{"  " + l.Numbered, unit.FormatPercent(roundedShare(l.Share)), over, "–", "–", words})
	}
	if len(rows) > 1 {
		aligned(b, rows)
	}
	for _, line := range p.rangeInWords() {
		b.WriteString("  " + Mark(line, struck) + "\n")
	}
}

// roundedShare is a share as it is printed: to a percent, of less than one to a tenth.
func roundedShare(share float64) float64 {
	steps := 100.0
	if share < 1/steps {
		steps = 1000
	}
	return float64(int(share*steps+0.5)) / steps
}

// signedOrDark prints stops from grey.
func signedOrDark(stops *float64) string {
	if stops == nil {
		return "dark"
	}
	return signed(*stops)
}

// whereInWords says where a surface is brightest and darkest; "" where it is even to what is printed.
func (s *Surface) whereInWords() string {
	if s.Most == nil || s.Least != nil && signed(*s.Most) == signed(*s.Least) {
		return ""
	}
	if s.MostAt == s.LeastAt {
		return "both " + s.MostAt
	}
	return "brightest " + s.MostAt + ", darkest " + s.LeastAt
}

// rangeInWords says what clips and sinks, or that nothing does.
func (p *Picture) rangeInWords() (lines []string) {
	if !p.Range.Known() {
		return nil
	}
	if p.Range.Over > 0 {
		lines = append(lines, "over the "+unit.FormatNumber(p.Range.Over)+" stops that "+p.Camera+" holds: "+p.beyondInWords(false))
	}
	if p.Range.Under > 0 {
		lines = append(lines, "under the "+unit.FormatNumber(p.Range.Under)+" stops that "+p.Camera+" holds: "+p.beyondInWords(true))
	}
	if len(p.Unjudged) > 0 {
		lines = append(lines, "not judged: the faces of "+strings.Join(p.Unjudged, ", ")+", whose skin the scene does not say")
	}
	return lines
}

// beyondInWords lists what clips, or what sinks.
func (p *Picture) beyondInWords(sinks bool) string {
	var all []string
	for i := range p.Beyond {
		if b := &p.Beyond[i]; b.Sinks == sinks {
			all = append(all, b.What+" "+b.Words())
		}
	}
	if len(all) == 0 {
		return "nothing that is looked at"
	}
	return strings.Join(all, "; ")
}

// Words say how far something is beyond grey, and how much of the frame it takes there: "7.1 stops over grey, 3 % of the frame".
func (b *Beyond) Words() string {
	words := stopsFromGrey(b.Over)
	if b.Share > 0 {
		words += fmt.Sprintf(", %s of the frame", unit.FormatPercent(roundedShare(b.Share)))
	}
	return words
}
