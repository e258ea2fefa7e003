package study_test

import (
	"math"
	"strings"
	"testing"

	"scrimshaw/plan/lens"
)

// A filter takes its stops from all that its camera judges, and from what no camera judges where it is that of the first;
// it takes no light, and a conversion is what the camera's white is compared through.
func TestFilterBeforeALens(t *testing.T) {
	const scene = `scrimshaw: 1
rooms: {den: {size: [6, 6]}}
people: {ada: {at: [3, 2], faces: 0}}
cameras: {A: {at: [3, 5], lens: 35 mm, looks: ada, FILTER}, B: {at: [4, 5], lens: 35 mm, looks: ada}}
lights: {k: {output: {candela: 500, shape: uniform}, at: [2, 4], height: 2, colour: 5600 K}}
exposure: {white: 3200 K}
meters: {a: {spot: [3, 2, 1], from: A}, b: {spot: [3, 2, 1], from: B}, m: {flat: [3, 4, 0.5], facing: up}}
`
	bare := read(t, strings.Replace(scene, "FILTER", "height: 1.6", 1))
	for _, c := range []struct {
		filter       string
		stops, mired float64
	}{
		{"filter: ND 0.6", lens.DensityStops(0.6), 0},
		{"filter: [ND .3, polariser]", lens.DensityStops(0.3) + 1.5, 0},
		{"filter: [full CTO]", math.Log2(1 / 0.55), 1e6/3200.0 - 1e6/5600},
		{"filter: [5500 K to 3200 K, 1/2 CTB]", 0.67 + math.Log2(1/0.54), 1e6/3200.0 - 1e6/5500 + (1e6/5600.0-1e6/3200)/2},
	} {
		s := read(t, strings.Replace(scene, "FILTER", "height: 1.6, "+c.filter, 1))
		for name, less := range map[string]float64{"ada.key": c.stops, "ada.dome.A": c.stops, "ada.dome.B": 0, "a": c.stops, "b": 0, "m": c.stops} {
			was, is := bare.Named(name), s.Named(name)
			if got := *was.Over - *is.Over; !(math.Abs(got-less) <= 1e-9) {
				t.Errorf("%s takes %.4f stops of %s, want %.4f", c.filter, got, name, less)
			}
			if was.Lux != nil && *was.Lux != *is.Lux {
				t.Errorf("%s takes light of %s", c.filter, name)
			}
			if was.Stop != nil && !(math.Abs(2*math.Log2(*was.Stop / *is.Stop)-less) <= 1e-9) {
				t.Errorf("%s: %s calls for T%g, was T%g", c.filter, name, *is.Stop, *was.Stop)
			}
		}
		views, before := s.FaceOf("ada").Views, bare.FaceOf("ada").Views
		if got := views[0].KeyShift.Mired - before[0].KeyShift.Mired; !(math.Abs(got-c.mired) <= 1e-6) {
			t.Errorf("%s shifts the key side by %.3f mired, want %.3f", c.filter, got, c.mired)
		}
		if got := views[1].KeyShift.Mired - before[1].KeyShift.Mired; got != 0 {
			t.Errorf("%s of A shifts what B sees by %.3f mired", c.filter, got)
		}
	}
}
