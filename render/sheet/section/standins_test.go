package section

import (
	"testing"

	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/scene"
)

// The list of lights says in a few words what a light passes for, at the face that gets most of it.
func TestStandInWords(t *testing.T) {
	gap := &colour.Gap{Mired: -88}
	gels, set := meter.Cure{Gels: []string{"1/2 CTO", "1/8 CTO"}}, &meter.Cure{White: &kit.Setting{Kelvin: 2450}}
	way := &meter.Way{Angle: 21.4}
	for _, c := range []struct {
		p    meter.Passing
		want string
	}{
		{meter.Passing{Gap: &colour.Gap{}, Way: way}, "stands for 1 lamp: at ada the same colour, 21° beside it"},
		{meter.Passing{Gap: gap, Gels: gels, Way: way}, "stands for 1 lamp: at ada 88 mired cooler, add 1/2 CTO + 1/8 CTO, 21° beside it"},
		{meter.Passing{Gap: gap, Gels: gels, Setting: set}, "stands for 1 lamp: at ada 88 mired cooler, set it to 2450 K"},
		{meter.Passing{Gap: gap}, "stands for 1 lamp: at ada 88 mired cooler, no gel closes it"},
		{meter.Passing{Gap: &colour.Gap{Mired: 12}, Gels: gels}, "stands for 1 lamp: at ada 12 mired warmer"},
		{meter.Passing{}, "stands for 1 lamp: at ada no two colour temperatures to compare"},
		{meter.Passing{Gap: gap, Uncomputed: []plan.Uncomputed{{Uncomputed: scene.Uncomputed{Path: "haze"}}}}, "stands for 1 lamp"},
	} {
		c.p.Person, c.p.Share = "ada", 0.5
		in := Input{StandIns: []meter.StandIn{{Light: "x"}, {Light: "k", For: "1 lamp", Faces: []meter.Passing{{Person: "tom", Share: 0.1}, c.p}}}}
		if got := in.standInWords(&plan.Light{Name: "k"}); got != c.want {
			t.Errorf("got %q, want %q", got, c.want)
		}
	}
	if got := (&Input{}).standInWords(&plan.Light{Name: "k"}); got != "" {
		t.Errorf("got %q of a light that is itself", got)
	}
}
