package sheet

import (
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/unit"
)

// lightLines are what stands beside a light: unit and modifier; colour, level and height; gels and
// note.
func (c things) lightLines(l *plan.Light) [][]string {
	if c.terse {
		return nil
	}
	first := c.p.small().strong()
	var lines [][]string
	if whole := c.lightLabel(l); first.width(whole) <= tagRoom || c.modifierLabel(l) == "" {
		lines = append(lines, []string{first.ellipsis(whole, tagRoom)})
	} else {
		lines = append(lines, []string{first.ellipsis(c.unitLabel(l), tagRoom)})
		lines = append(lines, c.twoLines(c.modifierLabel(l))...)
	}
	lines = append(lines, []string{lightColour(l), unit.FormatPercent(l.Level), "h " + c.bare(l.Height)})
	return append(lines, c.twoLines(joined("; ", strings.Join(l.Gels, " + "), l.Note))...)
}

// twoLines are up to two lines of a tag.
func (c things) twoLines(s string) [][]string {
	var lines [][]string
	set, _ := c.p.small().wrap(s, tagRoom, 2)
	for _, l := range set {
		lines = append(lines, []string{l})
	}
	return lines
}

// shortLabel is a light's unit without what qualifies it.
func (c things) shortLabel(l *plan.Light) string {
	unit, _, _ := strings.Cut(c.unitLabel(l), ", ")
	return c.p.small().strong().ellipsis(unit, tagRoom)
}

// gripLines are what stands beside a piece of grip.
func (c things) gripLines(g *plan.Grip) [][]string {
	if c.terse {
		return nil
	}
	st := c.p.small()
	what := joined(" ", g.Kind, c.bare(g.Size[0])+" × "+c.bare(g.Size[1]))
	lines := [][]string{
		{st.strong().ellipsis(what, tagRoom)},
		nonEmpty(st.ellipsis(joined(", ", g.Cloth, g.Surface), tagRoom/2), "h "+c.bare(g.Height)),
	}
	return append(lines, c.twoLines(g.Note)...)
}

// cameraLines are what stands beside a camera.
func (c things) cameraLines(m *plan.Camera) [][]string {
	if c.terse {
		return nil
	}
	return [][]string{{unit.FormatLens(m.Lens)}, {"h " + c.bare(m.Height), unit.FormatAspect(m.Aspect)}}
}
