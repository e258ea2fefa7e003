package list

import (
	"math"
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/day"
	"scrimshaw/plan/supply"
	"scrimshaw/render/sheet/section"
)

// lampColumns are those of the list of lamps.
var lampColumns = []Column{
	{Key: "setup", Head: "set-up", Doc: "the set-up; \"\" of a scene without"},
	{Key: "number", Head: "no.", Doc: "the number on the plan, all day"},
	{Key: "unit", Head: "unit", Doc: "how many of which unit"},
	{Key: "role", Head: "role", Doc: "what it does, and of whom"},
	{Key: "wears", Head: "with", Doc: "its modifiers, bulb, and what is in its gate"},
	{Key: "doors", Head: "doors", Doc: "its barn doors with the angles of their leaves"},
	{Key: "scrims", Head: "scrims", Doc: "the wire in it"},
	{Key: "focus", Head: "focus", Doc: "spot, flood, or how far from spot"},
	{Key: "filters", Head: "gels and cloth", Doc: "from the lamp outward"},
	{Key: "heightMetres", Head: "height", Doc: "of its front above the floor that it belongs to, m", Number: true},
	{Key: "rise", Head: "over its feet", Doc: "over what its stand stands on, where that is another height"},
	{Key: "metresOverFeet", Head: "over deck", Doc: "of its front over the floor, the deck or the ground that its stand stands on, m", Number: true},
	{Key: "metresOverStreet", Head: "over street", Doc: "of its front over the ground outside, m", Number: true},
	{Key: "aim", Head: "aim", Doc: "what it is aimed at"},
	{Key: "tiltDegrees", Head: "tilt", Doc: "up from level, degrees", Number: true},
	{Key: "panDegrees", Head: "pan", Doc: "clockwise from the plan's up, degrees", Number: true},
	{Key: "level", Head: "level", Doc: "of its full light"},
	{Key: "lightPercent", Head: "light %", Doc: "of its full light, where its level is another figure, %", Number: true},
	{Key: "cues", Head: "cues", Doc: "in which it changes, and to what"},
	{Key: "colour", Head: "colour", Doc: "of its light at that level, with its gels"},
	{Key: "dimmer", Head: "dimmer", Doc: "that a filament lamp below full takes"},
	{Key: "circuit", Head: "circuit", Doc: "that it is on"},
	{Key: "amps", Head: "A at full", Doc: "what it takes of its circuit with all its light, A", Number: true},
	{Key: "placing", Head: "place", Doc: "two distances by tape"},
	{Key: "mount", Head: "on", Doc: "its stand, or what holds it"},
	{Key: "bags", Head: "bags", Doc: "sandbags on its stands", Number: true},
	{Key: "note", Head: "note", Doc: "of the scene"},
	{Key: "change", Head: "change", Doc: "what is done to it since which set-up"},
	{Key: "next", Head: "next", Doc: "what it becomes in the set-up after"},
}

// addLamps adds the lamps of a set-up, and those that are struck before it.
func (d *Day) addLamps(s *plan.Setup, powered *supply.Supply) {
	for _, l := range section.Lamps(s) {
		row := make([]Cell, len(lampColumns))
		put := func(key string, c Cell) { row[d.Lamps.At(key)] = c }
		for key, text := range map[string]string{"setup": s.Name, "number": l.Tag, "unit": l.Unit, "role": l.Role, "wears": l.Wears, "doors": l.Doors, "scrims": l.Scrims, "focus": l.Focus,
			"filters": l.Filters, "rise": l.Rise, "aim": l.Aim, "level": l.Level, "cues": l.Cues, "colour": l.Colour, "circuit": l.Circuit, "placing": l.Placing,
			"mount": l.Mount, "note": l.Note, "change": l.Change} {
			put(key, words(text))
		}
		put("tiltDegrees", whole(l.TiltDegrees))
		put("panDegrees", whole(l.PanDegrees))
		if on := l.Light; on != nil {
			putLight(put, s, on)
			if _, draw := powered.DrawOf(on); draw != nil && draw.Full > 0 {
				put("amps", noLess(draw.Full, 2))
			}
		}
		d.becomes(s, &l)
		d.Lamps.Rows = append(d.Lamps.Rows, row)
	}
}

// putLight puts what a light itself says into its row.
func putLight(put func(key string, c Cell), s *plan.Setup, on *plan.Light) {
	put("heightMetres", number(on.Height, 3))
	put("metresOverFeet", number(on.Frame.At.Z-on.Base, 3))
	put("metresOverStreet", number(on.Frame.At.Z-s.Ground, 3))
	if light := on.Head.LightAt(on.Level); on.Level > 0 && math.Abs(light-on.Level) >= 0.005 {
		put("lightPercent", number(100*light, 0))
	}
	put("dimmer", words(day.DimmerOf(s, on)))
	put("bags", number(float64(on.Count*on.Mount.Bags(on.Frame.At.Z-on.Base)), 0))
}

// becomes writes what changes of a lamp into its row of the set-up before.
func (d *Day) becomes(s *plan.Setup, l *section.Lamp) {
	if l.Change == "" || s.Before == nil {
		return
	}
	t := &d.Lamps
	for r := range t.Rows {
		if t.Said(r, t.At("setup")) == words(s.Before.Name).Text && t.Said(r, t.At("number")) == words(l.Tag).Text && t.Rows[r][t.At("heightMetres")].Number != nil {
			_, change, _ := strings.Cut(l.Change, ": ")
			t.Rows[r][t.At("next")] = words("in " + s.Name + ": " + change)
		}
	}
}
