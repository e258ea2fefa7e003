package light

import (
	"math"
	"math/rand/v2"
	"testing"

	"scrimshaw/plan/colour"
)

// On the reference scene, shadows drawn and rays traced differ by less than 0.02 % in the mean, and by
// more than 0.5 % at fewer than 2 of 1000 points: those that lie on the very edge of a shadow.
func TestDrawnAndTracedShadowsAgree(t *testing.T) {
	t.Parallel()
	s, floor := reference(0)
	w := build(t, s, Options{Quality: Draft, Direct: true})
	lights := referenceLamps()
	d := Levels{}
	for _, e := range lights {
		d[e.Name] = colour.RGB{1, 1, 1}
	}
	field := make([]float32, floor.NU*floor.NV)
	basis(t, w, lights, Targets{Lattices: []Lattice{floor}}).Field(0, d, field)
	traced := func(r Receptor) (sum float64) {
		for i := range lights {
			sum += sampled(w, newLamp(&lights[i], w.faces, w.tubes, w.bundle), &r).Y()
		}
		return sum
	}
	r := rand.New(rand.NewPCG(1, 3))
	sum, far, count := 0.0, 0, 0
	for count < 3000 {
		i, j := r.IntN(floor.NU), r.IntN(floor.NV)
		want := traced(Receptor{At: floor.At(i, j), Axis: floor.Normal})
		if want < 5 {
			continue
		}
		count++
		off := math.Abs(float64(field[j*floor.NU+i])/want - 1)
		sum += off
		if off > 0.005 {
			far++
		}
	}
	t.Logf("%.4f %% in the mean, %d of %d over 0.5 %%", 100*sum/float64(count), far, count)
	if sum/float64(count) > 2e-4 || far*1000 > 2*count {
		t.Errorf("%.4f %% in the mean, %d of %d over 0.5 %%", 100*sum/float64(count), far, count)
	}
}
