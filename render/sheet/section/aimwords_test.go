package section_test

import (
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/scene"
	"scrimshaw/render/sheet/internal/fixture"
)

// TestTheListSaysWhereLightsPoint holds the second line of a light to its aim, its tilt and what it
// draws from the mains.
func TestTheListSaysWhereLightsPoint(t *testing.T) {
	down := scene.Aim{Form: scene.AimDown}
	table := scene.Aim{Form: scene.AtThing, Thing: scene.Ref{Name: "table"}}
	for _, c := range []struct {
		name   string
		light  int
		change func(l *plan.Light)
		aim    *scene.Aim
		want   string
	}{
		{"at a face, with watts of its own", 0, func(l *plan.Light) { l.Head.Watts = 660 }, nil, "lens 25, 1/2 CTO; at ruth, 17° down, pan 96°, draws 660 W; two bags, tie off"},
		{"whose watts its name says", 0, func(l *plan.Light) { l.Head.Watts = 600 }, nil, "lens 25, 1/2 CTO; at ruth, 17° down, pan 96°; two bags, tie off"},
		{"at a thing", 1, func(l *plan.Light) { l.AimPoint = r3.Vec{X: 2.7, Y: 2.9, Z: 0.75} }, &table, "softbox 0.9 m; at table, 27° down, pan 145°"},
		{"down", 1, func(l *plan.Light) { l.Throw, l.Frame.Axis = 0, r3.Vec{Z: -1} }, &down, "softbox 0.9 m; aimed straight down"},
		{"level", 1, func(l *plan.Light) { l.Throw, l.Frame.Axis = 0, r3.Vec{X: 1} }, nil, "softbox 0.9 m; aimed level, pan 90°"},
		{"a lamp that shines all round", 2, func(l *plan.Light) { l.Head.Watts = 40 }, nil, ""},
	} {
		in := fixture.Example()
		l := &in.Setup.Lights[c.light]
		l.Placing = nil
		c.change(l)
		if c.aim != nil {
			w := scene.Light{Thing: scene.Thing{Name: l.Name}}
			w.Aim.Value, w.Aim.Set = *c.aim, true
			in.Setup.Scene.Lights = []scene.Light{w}
		}
		got := ""
		if notes := sectionOf(t, in, "Lights, in metres").Tables[0].Entries[c.light].Notes; len(notes) > 0 {
			got = notes[0]
		}
		if got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}
