package meter

import (
	"fmt"
	"math"
	"strings"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/unit"
)

// lines word how a light passes for something: what it passes for, and two or three lines a face.
func (s *StandIn) lines() []string {
	lines := []string{s.Numbered + " stands for " + s.For}
	if s.Unknown != "" {
		lines = append(lines, "  "+s.Unknown)
	}
	for i := range s.Faces {
		p := &s.Faces[i]
		said := []string{fmt.Sprintf("  at %s, %.0f %% of the light there: %s", p.Person, 100*p.Share, p.ColourWords())}
		for _, cure := range p.CureWords() {
			said = append(said, "    "+cure)
		}
		if p.Way != nil {
			said = append(said, "    "+p.Way.Words())
		}
		for _, line := range said {
			lines = append(lines, Mark(line, len(p.Uncomputed) > 0))
		}
	}
	return lines
}

// leastDuv is the Duv that is worded at least: no gel takes less away (common practice: the weakest is 0.002).
const leastDuv = 0.0015

// GapWords word a gap: "34 mired cooler, 0.004 greener"; "" of one that rounds to nothing.
func GapWords(g colour.Gap) string {
	var parts []string
	say := func(by float64, figure, more, less string) {
		parts = append(parts, figure+over(by, more, less))
	}
	if mired := math.Round(math.Abs(g.Mired)); mired > 0 {
		say(g.Mired, fmt.Sprintf("%.0f", mired), " mired warmer", " mired cooler")
	}
	if math.Abs(g.Duv) >= leastDuv {
		say(g.Duv, fmt.Sprintf("%.3f", math.Abs(g.Duv)), " greener", " more magenta")
	}
	return strings.Join(parts, ", ")
}

// ColourWords word the gap of a light's colour at a face.
func (p *Passing) ColourWords() string {
	switch {
	case p.Gap == nil:
		return "no two colour temperatures to compare"
	case GapWords(*p.Gap) == "":
		return "the same colour"
	}
	return GapWords(*p.Gap)
}

// CureWords word what brings a light's colour nearer, a line for the gels and one for the unit's own white; none where there is no gap that
// prints.
func (p *Passing) CureWords() (lines []string) {
	if p.Gap == nil || GapWords(*p.Gap) == "" {
		return nil
	}
	gels := "no gel of the catalogue brings it nearer"
	switch {
	case p.Gels.Changes() && p.Gap.Passes():
		gels = "it may pass; to come nearer " + p.Gels.Words()
	case p.Gels.Changes():
		gels = p.Gels.Words()
	}
	lines = append(lines, gels)
	if p.Setting != nil {
		lines = append(lines, "or "+p.Setting.Words())
	}
	return lines
}

// Change words what is changed: "add 1/2 CTO + 1/8 minus green", "take off 1/4 CTB", "put full CTO in place of 1/2 CTO", "set it to 2700 K, Duv -0.003, without
// full CTB".
func (c *Cure) Change() string {
	off, on := strings.Join(c.Off, " + "), strings.Join(c.Gels, " + ")
	switch {
	case c.White != nil:
		words := "set it to " + unit.FormatKelvin(c.White.Kelvin)
		if duv := unit.FormatDuv(c.White.Duv); duv != "0" {
			words += ", Duv " + duv
		}
		if off != "" {
			words += ", without " + off
		}
		return words
	case off == "":
		return "add " + on
	case on == "":
		return "take off " + off
	}
	return "put " + on + " in place of " + off
}

// Words word a change with what it leaves and what it costs.
func (c *Cure) Words() string {
	left := "leaves nothing"
	if c.Left != nil && GapWords(*c.Left) != "" {
		left = "leaves " + GapWords(*c.Left)
	}
	switch cost := fmt.Sprintf("%.1f", math.Abs(c.Stops)); {
	case cost == "0.0":
		return c.Change() + ": " + left
	case c.Stops < 0:
		return fmt.Sprintf("%s: %s, gives %s stops", c.Change(), left, cost)
	default:
		return fmt.Sprintf("%s: %s, takes %s stops", c.Change(), left, cost)
	}
}

// alikeAngle is the angle, degrees, and alikeWidth the ratio under which two lights come from one place and look as wide: less is not seen
// in a shadow (common practice).
const (
	alikeAngle = 5
	alikeWidth = 1.25
)

// Words word how a light comes from elsewhere: "from 38° beside it: 31° higher, 24° farther to own left; half as wide: harder shadows".
func (w *Way) Words() string {
	if w.Angle < alikeAngle {
		return "from the same direction; " + w.width()
	}
	return fmt.Sprintf("from %.0f° beside it: %s; %s", w.Angle, w.Aside(), w.width())
}

// Aside words which way a light comes from beside what it passes for: "31° higher, 24° farther to own left".
func (w *Way) Aside() string {
	var parts []string
	if side := math.Round(math.Abs(w.Higher)); side > 0 {
		parts = append(parts, fmt.Sprintf("%.0f° %s", side, over(w.Higher, "higher", "lower")))
	}
	if w.Right != nil {
		if side := math.Round(math.Abs(*w.Right)); side > 0 {
			parts = append(parts, fmt.Sprintf("%.0f° farther to own %s", side, over(*w.Right, "right", "left")))
		}
	}
	if parts == nil {
		return "from the other side of the zenith"
	}
	return strings.Join(parts, ", ")
}

// over is a word for more than nothing, and one for less.
func over(v float64, more, less string) string {
	if v > 0 {
		return more
	}
	return less
}

func (w *Way) width() string {
	switch ratio := w.Softer(); {
	case ratio == 0:
		return "no size to compare"
	case ratio > alikeWidth:
		return unit.FormatFigures(ratio) + " times as wide: softer shadows"
	case ratio < 1/alikeWidth:
		return unit.FormatFigures(ratio) + " times as wide: harder shadows"
	}
	return "as wide: like shadows"
}
