package draw

import (
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/unit"
	"scrimshaw/render/sheet/section"
)

// lightLines are what stands beside a light: unit and modifier; whether it is the key or the fill, colour, level and height;
// gels and note.
func (c things) lightLines(l *plan.Light) [][]string {
	if c.Terse {
		return c.nameLine(l.Name)
	}
	first, role := c.Pad.plan().Strong(), section.MainRole(l)
	var lines [][]string
	switch whole := c.LightLabel(l); {
	case first.Width(whole) <= tagRoom:
		lines = append(lines, []string{whole})
	case c.ModifierLabel(l) == "":
		lines = append(lines, []string{c.shortLabel(l)})
	default:
		name := c.UnitLabel(l)
		if first.Width(name) > tagRoom { // what qualifies a unit goes before a name that ends in the middle of a word
			name = c.shortLabel(l)
		}
		lines = append(lines, []string{first.Ellipsis(name, tagRoom)})
		lines = append(lines, c.modifierLines(l, role)...)
		role = "" // it widens the tag there least
	}
	lines = append(lines, section.NonEmpty(role, section.LightColour(l), section.LightLevel(l), "h "+c.Bare(l.Height)))
	return append(lines, c.twoLines(section.Joined("; ", section.Filters(l), l.Note))...)
}

// modifierLines are what a light wears and whether it is the key or the fill: without figures where those have no room.
func (c things) modifierLines(l *plan.Light, role string) [][]string {
	whole := section.Joined(", ", c.ModifierLabel(l), role)
	if _, cut := c.Pad.plan().wrap(whole, tagRoom, 2); cut {
		whole = section.Joined(", ", c.ShortModifierLabel(l), role)
	}
	return c.twoLines(whole)
}

// nameLine is a name, where numbers alone are not enough.
func (c things) nameLine(name string) [][]string {
	if !c.Named {
		return nil
	}
	return [][]string{{c.Pad.Small().Strong().Ellipsis(name, tagRoom)}}
}

// twoLines are up to two lines of a tag.
func (c things) twoLines(s string) [][]string {
	var lines [][]string
	set, _ := c.Pad.plan().wrap(s, tagRoom, 2)
	for _, l := range set {
		lines = append(lines, []string{l})
	}
	return lines
}

// shortLabel is a light's unit without what qualifies it.
func (c things) shortLabel(l *plan.Light) string {
	if c.Terse {
		return ""
	}
	unit, _, _ := strings.Cut(c.UnitLabel(l), ", ")
	return c.Pad.plan().Strong().Ellipsis(unit, tagRoom)
}

// gripLines are what stands beside a piece of grip.
func (c things) gripLines(g *plan.Grip) [][]string {
	if c.Terse {
		return c.nameLine(g.Name)
	}
	st := c.Pad.plan()
	what := section.Joined(" ", string(g.Kind), c.GripSize(g, c.Bare))
	lines := [][]string{
		{st.Strong().Ellipsis(what, tagRoom)},
		section.NonEmpty(st.Ellipsis(section.Joined(", ", g.Cloth, section.SurfaceWord(g)), tagRoom/2), "h "+c.Bare(g.Height)),
	}
	return append(lines, c.twoLines(g.Note)...)
}

// cameraLines are what stands beside a camera.
func (c things) cameraLines(m *plan.Camera) [][]string {
	if c.Terse {
		return nil
	}
	return [][]string{{m.LensWords()}, {"h " + c.Bare(m.Height), unit.FormatAspect(m.Aspect)}}
}
