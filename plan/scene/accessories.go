package scene

import (
	"scrimshaw/plan/kit"
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
)

// doors are barn doors as a light has them.
type doors = kit.Opened

var (
	leafAngle = quantity("a leaf's angle", "40", degrees, between(0, kit.Folded))
	doorTable = tableOf("barndoors", "The four leaves: 0 lies across the light, 90 points straight ahead.", nil,
		figure("top", leafAngle, func(d *doors) *float64 { return &d.Top }, "The upper leaf.", "folded back"),
		figure("bottom", leafAngle, func(d *doors) *float64 { return &d.Bottom }, "The lower leaf.", "folded back"),
		figure("left", leafAngle, func(d *doors) *float64 { return &d.Left }, "The left leaf, seen from behind.", "folded back"),
		figure("right", leafAngle, func(d *doors) *float64 { return &d.Right },
			"The right leaf, seen from behind.", "folded back"),
		figure("turn", bearing, func(d *doors) *float64 { return &d.Turn }, "Turn of the set, clockwise from behind.", "0"),
	)
)

// lightAccessories are the keys of what hangs on a head.
func lightAccessories() []entry[Light] {
	set := foldedFirst(mapOf("a set of barndoors", "{top: 40, left: 60}", doorTable))
	scrims := oneOrMore("a list of scrims", "[double, half-single]", source.Vocabulary("a scrim", term.Scrims), 6)
	return []entry[Light]{
		into("barndoors", set, func(l *Light, v doors, n *source.Node) {
			v.Span = n.Span
			l.Doors = &v
		}, "Angles of its leaves.", "{top: 40, left: 60}", "none").of("unit"),
		into("scrims", scrims, func(l *Light, v []term.Scrim, n *source.Node) { l.Scrims = &kit.ScrimChoice{Scrims: v, Span: n.Span} },
			"Wire scrims in the head: a single takes half a stop, a double one; a half one covers the lower half.", "[double, half-single]", "none").of("unit"),
	}
}

// foldedFirst has the leaves that nobody mentions folded back.
func foldedFirst(r source.Reader[doors]) source.Reader[doors] {
	return withNode(r, func(d *doors, n *source.Node) {
		for _, leaf := range []struct {
			key string
			at  *float64
		}{{"top", &d.Top}, {"bottom", &d.Bottom}, {"left", &d.Left}, {"right", &d.Right}} {
			if n.Get(leaf.key) == nil {
				*leaf.at = kit.Folded
			}
		}
	})
}
