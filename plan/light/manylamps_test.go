package light

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/photometry"
)

// Of many lamps each is looked at less often, so that each alone is a little off; all together are not, in the mean and from
// point to point, whether points lend each other what they see or not.
func TestManyLampsShareLooks(t *testing.T) {
	const lamps = 48
	s := shell(6, 5, 2.8, colour.RGB{0.6, 0.6, 0.6})
	r := rand.New(rand.NewPCG(3, 4))
	var lights []Emitter
	for i := range lamps {
		at := r3.Vec{X: 0.4 + 5.2*r.Float64(), Y: 0.4 + 4.2*r.Float64(), Z: 1}
		lights = append(lights, Emitter{Name: fmt.Sprint(i), Frame: looking(at, r3.Add(at, r3.Vec{X: 0.3, Z: 3})),
			Source: photometry.Source{Flux: 1000, Distribution: photometry.NewLobe(12, 30)}})
	}
	for name, floor := range map[string]Lattice{"close together": floorAt(1.5, 1.5, 1.2, 1.5, 31), "far apart": floorAt(1, 1, 1.2, 3, 16)} {
		if testing.Short() && name == "far apart" {
			continue // the other kind of lattice takes as long again
		}
		w := build(t, s, Options{})
		together := basis(t, w, lights, Targets{Lattices: []Lattice{floor}})
		n := floor.NU * floor.NV
		got, want, mixed := make([]float64, n), make([]float64, n), make([]float32, n)
		fixed := Levels{}
		for i := range lights {
			fixed[lights[i].Name] = colour.RGB{1, 1, 1}
		}
		basis(t, w, lights, Targets{Lattices: []Lattice{floor}, Fixed: fixed}).ReflectedField(0, Levels{FromSurfaces: {1, 1, 1}}, mixed)
		differ := 0
		for i := range lights {
			alone := basis(t, w, lights[i:i+1], Targets{Lattices: []Lattice{floor}})
			for k := range n {
				a, b := together.Reflected[i][0][k], alone.Reflected[0][0][k]
				got[k], want[k] = got[k]+float64(a), want[k]+float64(b)
				if !(math.Abs(float64(a-b)) <= 0.02*float64(b)) {
					differ++
				}
			}
		}
		if differ < n*lamps/20 {
			t.Errorf("%s: %d of %d figures of one lamp differ: the looks are not shared, or nothing is hot", name, differ, n*lamps)
		}
		for what, is := range map[string]func(k int) float64{"light by light": func(k int) float64 { return got[k] }, "at fixed levels": func(k int) float64 { return float64(mixed[k]) }} {
			mean, square := 0.0, 0.0
			for k := range n {
				off := is(k)/want[k] - 1
				mean, square = mean+off/float64(n), square+off*off/float64(n)
			}
			t.Logf("%s, %s: %.3f %% in the mean, %.2f %% from point to point", name, what, 100*mean, 100*math.Sqrt(square))
			if !(math.Abs(mean) <= 2e-3) || math.Sqrt(square) > 1e-2 {
				t.Errorf("%s, %s: all together are %.2f %% off in the mean, %.2f %% from point to point", name, what, 100*mean, 100*math.Sqrt(square))
			}
		}
	}
}
