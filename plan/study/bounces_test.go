package study_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/light"
	"scrimshaw/plan/study"
)

// A light that is aimed at a page, or at a mirror, goes on from there to who has most of it from there; one that is aimed at a
// person, or lights a background, does not. Where it lands lies on the line of its aim and on what it is sent to.
func TestBounces(t *testing.T) {
	for name, want := range map[string][]string{"night-log": {"page off log to inga"}, "fitting-room": {"day off glass to imre"}, "map-room": nil, "press-house": nil} {
		s := setup(t, name)
		lit := run(t, s, study.Options{Quality: light.Draft})
		var got []string
		for _, b := range lit.Bounces {
			got = append(got, b.Light+" off "+b.Off+" to "+b.To)
			l := s.LightNamed(b.Light)
			way := r3.Sub(b.At, l.Frame.At)
			if off := r3.Norm(r3.Cross(way, l.Frame.Axis)); off > 1e-9 {
				t.Errorf("%s: %s lands %g m off its aim", name, b.Light, off)
			}
			if on := r3.Norm(r3.Sub(b.Face, b.At)); !(math.Abs(b.On-on) <= 1e-12) || on < 0.1 {
				t.Errorf("%s: %s goes on for %g m, want %g", name, b.Light, b.On, on)
			}
		}
		if len(got) != len(want) || len(got) > 0 && got[0] != want[0] {
			t.Errorf("%s: %q, want %q", name, got, want)
		}
	}
}
