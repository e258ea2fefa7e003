package photometry_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/internal/reference"
	"scrimshaw/plan/photometry"
)

// toward is a direction so many degrees over the axis, and to the right.
func toward(up, right float64) r3.Vec {
	return r3.Unit(r3.Vec{X: math.Tan(right * math.Pi / 180), Y: math.Tan(up * math.Pi / 180), Z: -1})
}

// A half scrim takes its share of its half: below the seam of a wide beam it passes what it passes, above the seam all, and
// in the seam between; on the whole the mean of the two.
func TestHalfScrimTakesItsHalf(t *testing.T) {
	const passes, field, narrowest = 0.5, 64, 12
	base := photometry.NewLobe(50, field)
	d, share := photometry.NewHalfScrim(base, passes, field, narrowest)
	within(t, "share", share, 0.75, 1e-12)
	within(t, "lm", reference.SphereIntegral(d), 1, 2e-4)
	for _, right := range []float64{0, 10, -20} {
		for _, up := range []float64{9, 15, 25} {
			within(t, "above", share*d.Candela(toward(up, right)), base.Candela(toward(up, right)), 1e-12)
			within(t, "below", share*d.Candela(toward(-up, right)), passes*base.Candela(toward(-up, right)), 1e-12)
		}
		within(t, "level", share*d.Candela(toward(0, right)), 0.75*base.Candela(toward(0, right)), 1e-12)
	}
	// The seam is about as broad as the narrowest beam: 8° to either side.
	last := 0.0
	for up := -9.5; up <= 9.5; up += 0.5 {
		part := share * d.Candela(toward(up, 0)) / base.Candela(toward(up, 0))
		if part < last-1e-12 || part < passes-1e-12 || part > 1+1e-12 {
			t.Errorf("at %g° the scrim passes %g, before that %g", up, part, last)
		}
		if math.Abs(up) < 8 && (part <= passes || part >= 1) {
			t.Errorf("at %g°, in the seam, the scrim passes %g", up, part)
		}
		last = part
	}
}

// At full spot each direction gets light of all of the lens: half a scrim dims the beam evenly.
func TestHalfScrimAtSpot(t *testing.T) {
	base := photometry.NewLobe(8, 12)
	d, share := photometry.NewHalfScrim(base, 0.5, 12, 12)
	for _, up := range []float64{-5, -1, 0, 3, 6} {
		within(t, "at spot", share*d.Candela(toward(up, 1)), 0.75*base.Candela(toward(up, 1)), 1e-9)
	}
}
