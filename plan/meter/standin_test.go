package meter

import (
	"slices"
	"strings"
	"testing"

	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/scene"
)

// How a light passes for something is said in the trade's words, each face with its figures.
func TestStandInWords(t *testing.T) {
	right, zenith := -12.4, 3.0
	s := StandIn{Numbered: "2 page", For: "1 desk-lamp", Faces: []Passing{
		{Person: "inga", Share: 0.95, Gap: &colour.Gap{Mired: -88.3, Duv: 0.0042}, Gels: Cure{Gels: []string{"1/2 CTO", "1/4 minus green"}, Left: &colour.Gap{Mired: 2.7}, Stops: 0.8},
			Setting: &Cure{White: &kit.Setting{Kelvin: 2700, Duv: -0.004}, Left: &colour.Gap{Mired: 0.2, Duv: 0.0002}, Stops: -0.12}, Way: &Way{Angle: 38, Higher: -31, Right: &right, Wide: 3, For: 6}},
		{Person: "tom", Share: 0.2, Gap: &colour.Gap{Mired: 12, Duv: -0.0016}, Gels: Cure{Gels: []string{"1/8 CTB"}, Left: &colour.Gap{Mired: -4.7, Duv: -0.003}, Stops: 0.3}, Way: &Way{Angle: 4, Higher: 4, Wide: 4, For: 4}},
		{Person: "bo", Share: 0.1, Gap: &colour.Gap{Mired: 0.3, Duv: 0.0014}, Way: &Way{Angle: 40, Higher: 0.2, Wide: 8, For: 4}},
		{Person: "jo", Share: 0.1, Gap: &colour.Gap{Mired: 900}, Way: &Way{Angle: 6, Higher: 0.1, Right: &zenith}},
		{Person: "al", Share: 0.1},
	}}
	want := []string{
		"2 page stands for 1 desk-lamp",
		"  at inga, 95 % of the light there: 88 mired cooler, 0.004 greener",
		"    add 1/2 CTO + 1/4 minus green: leaves 3 mired warmer, takes 0.8 stops",
		"    or set it to 2700 K, Duv -0.004: leaves nothing, gives 0.1 stops",
		"    from 38° beside it: 31° lower, 12° farther to own left; 0.50 times as wide: harder shadows",
		"  at tom, 20 % of the light there: 12 mired warmer, 0.002 more magenta",
		"    it may pass; to come nearer add 1/8 CTB: leaves 5 mired cooler, 0.003 more magenta, takes 0.3 stops",
		"    from the same direction; as wide: like shadows",
		"  at bo, 10 % of the light there: the same colour",
		"    from 40° beside it: from the other side of the zenith; 2.00 times as wide: softer shadows",
		"  at jo, 10 % of the light there: 900 mired warmer",
		"    no gel of the catalogue brings it nearer",
		"    from 6° beside it: 3° farther to own right; no size to compare",
		"  at al, 10 % of the light there: no two colour temperatures to compare",
	}
	if got := s.lines(); !slices.Equal(got, want) {
		t.Errorf("got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
	s.Faces, s.Unknown = s.Faces[1:2], "write its colour"
	s.Faces[0].Uncomputed = []plan.Uncomputed{{Uncomputed: scene.Uncomputed{Path: "haze"}}}
	if got := s.lines(); got[1] != "  write its colour" || !strings.HasPrefix(got[2], UncomputedMark) || !strings.HasPrefix(got[4], UncomputedMark) {
		t.Errorf("got\n%s", strings.Join(got, "\n"))
	}
}

// What comes off, what goes on and what is set is said in one line; of a setting and gels the one counts that closes the gap.
func TestCuresInWords(t *testing.T) {
	white := &kit.Setting{Kelvin: 3200}
	for _, c := range []struct {
		cure Cure
		want string
	}{
		{Cure{Gels: []string{"full CTO"}, Off: []string{"1/2 CTO"}, Stops: 0.3}, "put full CTO in place of 1/2 CTO: leaves nothing, takes 0.3 stops"},
		{Cure{Off: []string{"1/4 CTB", "1/8 plus green"}, Stops: -0.6, Left: &colour.Gap{Mired: -3}}, "take off 1/4 CTB + 1/8 plus green: leaves 3 mired cooler, gives 0.6 stops"},
		{Cure{Off: []string{"full CTB"}, White: white}, "set it to 3200 K, without full CTB: leaves nothing"},
	} {
		if got := c.cure.Words(); got != c.want || !c.cure.Changes() {
			t.Errorf("got %q, want %q", got, c.want)
		}
	}
	near, mid, far := &colour.Gap{Mired: 9}, &colour.Gap{Mired: 40}, &colour.Gap{Mired: 80}
	gels := func(left *colour.Gap) Cure { return Cure{Gels: []string{"1/4 CTO"}, Left: left} }
	set := func(left *colour.Gap) *Cure { return &Cure{White: white, Left: left} }
	for i, c := range []struct {
		p    Passing
		want string
	}{
		{Passing{}, ""}, {Passing{Gels: gels(near)}, "add 1/4 CTO"}, {Passing{Setting: set(far)}, "set it to 3200 K"},
		{Passing{Gels: gels(near), Setting: set(near)}, "set it to 3200 K"}, {Passing{Gels: gels(mid), Setting: set(far)}, "add 1/4 CTO"},
		{Passing{Gels: gels(far), Setting: set(mid)}, "set it to 3200 K"}, {Passing{Gels: gels(near), Setting: set(nil)}, "add 1/4 CTO"},
	} {
		got := ""
		if cure := c.p.Cure(); cure != nil {
			got = cure.Change()
		}
		if got != c.want {
			t.Errorf("%d: got %q, want %q", i, got, c.want)
		}
	}
}

// A light passes where neither its colour nor its direction tells it from the other.
func TestPasses(t *testing.T) {
	small, large := &colour.Gap{Mired: 20}, &colour.Gap{Mired: 21}
	for _, c := range []struct {
		p    Passing
		want bool
	}{
		{Passing{Gap: small, Way: &Way{Angle: 30}}, true}, {Passing{}, true},
		{Passing{Gap: large, Way: &Way{Angle: 30}}, false}, {Passing{Gap: small, Way: &Way{Angle: 31}}, false}, {Passing{Gap: large}, false},
	} {
		if c.p.Passes() != c.want {
			t.Errorf("%+v passes: %v", c.p, !c.want)
		}
	}
	s := StandIn{Faces: []Passing{{Person: "a", Share: 0.2}, {Person: "b", Share: 0.7}, {Person: "c", Share: 0.1}}}
	if s.Main().Person != "b" {
		t.Errorf("mainly at %s", s.Main().Person)
	}
}
