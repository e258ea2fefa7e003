package light

import (
	"math"
	"slices"
	"testing"

	"scrimshaw/plan/solid"
)

// The errors that Quality promises, against 65,536 points of a face and of a tube: relative, over all
// points of the floor above 5 lx, in the reference scene and in that with panes and measured light. A short run holds a
// draft to a thousand.
func TestErrorOfQualities(t *testing.T) {
	plain, floor := reference(0)
	hard, _, measured := glazed(t)
	type promise struct{ mean, p95 float64 }
	for _, c := range []struct {
		name     string
		set      *solid.Set
		lights   []Emitter
		promised map[Quality]promise
	}{
		{"reference", plain, referenceLamps(), map[Quality]promise{Draft: {0.013, 0.055}, Normal: {0.0025, 0.010}, Fine: {0.0015, 0.005}}},
		{"glazed", hard, measured, map[Quality]promise{Draft: {0.022, 0.085}, Normal: {0.0025, 0.010}, Fine: {0.0015, 0.005}}},
	} {
		if testing.Short() && c.name != "reference" {
			continue
		}
		t.Run(c.name, func(t *testing.T) {
			best := build(t, c.set, Options{})
			best.faces, best.tubes = cases(65536, 1220), cases(65536, 1024)
			want := everyLamp(t, best, c.lights, floor)
			for _, q := range []Quality{Draft, Normal, Fine}[:cases(3, 1)] {
				mean, p95 := errorsOf(everyLamp(t, build(t, c.set, Options{Quality: q}), c.lights, floor), want)
				t.Logf("%s: mean %.3f %%, 95th percentile %.2f %%", q, 100*mean, 100*p95)
				if p := c.promised[q]; mean > p.mean || p95 > p.p95 {
					t.Errorf("%s: mean %.3f %%, 95th percentile %.2f %%, promised %g and %g %%", q, 100*mean, 100*p95, 100*p.mean, 100*p.p95)
				}
			}
		})
	}
}

// everyLamp is the field of all lamps together.
func everyLamp(t *testing.T, w *World, lights []Emitter, at Lattice) []float64 {
	d := Levels{}
	for _, e := range lights {
		d[e.Name] = [3]float64{1, 1, 1}
	}
	out := make([]float32, at.NU*at.NV)
	basis(t, w, lights, Targets{Lattices: []Lattice{at}}).Field(0, d, out)
	values := make([]float64, len(out))
	for n, v := range out {
		values[n] = float64(v)
	}
	return values
}

// errorsOf is the mean and the 95th percentile of the relative errors over 5 lx.
func errorsOf(got, want []float64) (mean, p95 float64) {
	var all []float64
	for n, w := range want {
		if w > 5 {
			e := math.Abs(got[n]/w - 1)
			all, mean = append(all, e), mean+e
		}
	}
	slices.Sort(all)
	return mean / float64(len(all)), all[len(all)*95/100]
}

// Each quality has its name, the first too; nothing else has one.
func TestNamesOfQualities(t *testing.T) {
	for name, want := range map[string]Quality{"normal": Normal, "draft": Draft, "fine": Fine} {
		if got, ok := QualityOf(name); got != want || !ok || got.String() != name {
			t.Errorf("%s is %d, %v", name, got, ok)
		}
	}
	if got, ok := QualityOf("rough"); ok || got != Normal {
		t.Errorf("an unknown name is %d, %v", got, ok)
	}
}
