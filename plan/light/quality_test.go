package light

import (
	"math"
	"slices"
	"testing"
)

// The errors that Quality promises, against 8192 points of a face and 2048 of a tube, in the
// reference scene: relative, over all points of the floor above 5 lx.
func TestErrorOfQualities(t *testing.T) {
	slow(t)
	s, floor := reference(0)
	lights := referenceLamps()
	field := func(w *World) []float32 {
		b := basis(t, w, lights, Targets{Lattices: []Lattice{floor}})
		d := Drive{}
		for _, e := range lights {
			d[e.Name] = [3]float64{1, 1, 1}
		}
		out := make([]float32, floor.NU*floor.NV)
		b.Field(0, d, out)
		return out
	}
	best := build(t, s, Options{})
	best.faces, best.tubes = 8192, 2048
	want := field(best)
	for _, c := range []struct {
		quality   Quality
		mean, p95 float64
	}{{Draft, 0.013, 0.055}, {Normal, 0.0025, 0.010}, {Fine, 0.0015, 0.005}} {
		got := field(build(t, s, Options{Quality: c.quality}))
		var errors []float64
		sum := 0.0
		for n := range got {
			if want[n] > 5 {
				e := math.Abs(float64(got[n])/float64(want[n]) - 1)
				errors, sum = append(errors, e), sum+e
			}
		}
		slices.Sort(errors)
		mean, p95 := sum/float64(len(errors)), errors[len(errors)*95/100]
		t.Logf("quality %d: mean %.3f %%, 95th percentile %.2f %%, largest %.1f %%, %d points", c.quality, 100*mean, 100*p95, 100*errors[len(errors)-1], len(errors))
		if mean > c.mean || p95 > c.p95 {
			t.Errorf("quality %d: mean %.3f %%, 95th percentile %.2f %%, promised %g and %g %%", c.quality, 100*mean, 100*p95, 100*c.mean, 100*c.p95)
		}
	}
}
