package frame_test

import (
	"math"
	"testing"

	"scrimshaw/plan/frame"
)

// A cable that runs up and down the picture of a camera that looks straight down takes of its width what lies between its far upper edge and its
// near lower one; under a table it does not show, and that of a lamp that is meant to be seen may.
func TestCablesShow(t *testing.T) {
	scene := func(more, light string) string {
		return "cameras: {A: {at: [0, 0], height: 3, looks: {pan: 0, tilt: -90}, lens: 50 mm, sensor: full-frame, aspect: 16:9}}\n" +
			"circuits: {gen: {breaker: 16, at: [0.2, -4]}}\n" + more +
			"lights: {k: {unit: fresnel-tungsten-650, at: [0.2, 4], height: 2, aim: 0, circuit: gen" + light + "}}\n"
	}
	cable := func(text string) (found *frame.Sight) {
		for _, s := range frame.Judge(resolvedText(t, text)) {
			if s.Kind == frame.Cable {
				found = &s
			}
		}
		return found
	}
	const thick = 0.01
	s := cable(scene("", ""))
	if want := (0.205/(3-thick) - 0.195/3) / (36.0 / 50); s == nil || !(math.Abs(s.Share/want-1) <= 1e-3) || s.Name != "k" || s.Move != nil {
		t.Errorf("a cable across the picture: %+v, want a share of %g", s, want)
	}
	if s := cable(scene("furniture: {t: {table: [3, 3, 0.7], at: [0, 0]}}\n", "")); s == nil || s.Shows() || !s.Hidden {
		t.Errorf("a cable under a table: %+v", s)
	}
	if s := cable(scene("", ", seen: true")); s != nil {
		t.Errorf("the cable of a lamp in the picture: %+v", s)
	}
}
