package colour_test

import (
	"math"
	"testing"

	"scrimshaw/plan/colour"
)

// 3200 K against 5600 K is 133.9 mired, by 10^6/K; a light off the locus is greener by its Duv; a strong colour has no gap.
func TestGapBetween(t *testing.T) {
	xy := func(k, duv float64) [2]float64 { return colour.White{Kelvin: k, Duv: duv}.XY() }
	g, ok := colour.GapBetween(xy(3200, 0.005), xy(5600, -0.001))
	if !ok || !(math.Abs(g.Mired-(1e6/3200-1e6/5600)) <= 0.1) || !(math.Abs(g.Duv-0.006) <= 1e-4) {
		t.Errorf("%+v %v", g, ok)
	}
	if _, ok := colour.GapBetween([2]float64{0.17, 0.11}, xy(5600, 0)); ok {
		t.Error("deep blue has a gap")
	}
	if _, ok := colour.GapBetween(xy(5600, 0), [2]float64{0.24, 0.6}); ok {
		t.Error("there is a gap to deep green")
	}
}

// Without light there is no gap.
func TestNoGapOfNoLight(t *testing.T) {
	if g, ok := colour.GapBetween([2]float64{math.NaN(), math.NaN()}, colour.White{Kelvin: 3200}.XY()); ok {
		t.Errorf("%+v", g)
	}
}

func TestGapPasses(t *testing.T) {
	for _, c := range []struct {
		gap    colour.Gap
		passes bool
	}{
		{colour.Gap{Mired: 20, Duv: 0.006}, true}, {colour.Gap{Mired: -20, Duv: -0.006}, true},
		{colour.Gap{Mired: 20.1}, false}, {colour.Gap{Mired: -20.1}, false}, {colour.Gap{Duv: 0.0061}, false}, {colour.Gap{Duv: -0.0061}, false},
	} {
		if c.gap.Passes() != c.passes {
			t.Errorf("%+v passes: %v", c.gap, !c.passes)
		}
	}
	if got := (colour.Gap{Mired: -60, Duv: 0.024}).Size(); !(math.Abs(got-5) <= 1e-12) {
		t.Errorf("3 and 4 limits off are %g, want 5", got)
	}
}
