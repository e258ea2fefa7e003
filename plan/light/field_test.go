package light

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// The shadows drawn on a lattice tell what rays tell, at every point that is lit: random rooms,
// every sort of source, both weights. Points within a ten-millionth of the edge of a shadow may fall either
// way, and random scenes have none.
func TestFieldsAgreeWithRays(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 12))
	scenes := 40
	if testing.Short() {
		scenes = 4
	}
	for scene := range scenes {
		s := room(r)
		w := build(t, s, Options{Quality: Draft})
		lights := lamps(r)
		floor := floorAt(0.013, 0.017, 0, 8, 61)
		switch scene % 6 {
		case 1:
			floor.Origin.Z = 1.4
			floor.Weight, floor.Normal = Dome, r3.Unit(r3.Vec{X: 1, Y: 2, Z: 0.1})
		case 2:
			floor.Origin.Z, floor.Normal.Z = 1.1, -1
		case 3:
			floor.Normal = r3.Unit(r3.Vec{X: 1, Y: 0.5, Z: 0.7})
		case 4: // upright, askew to everything
			floor.U, floor.V = r3.Vec{X: 0.1, Y: 0.05}, r3.Vec{Z: 0.04}
			floor.Origin, floor.Normal = r3.Vec{X: 0.7, Y: 1.1, Z: 0.013}, r3.Unit(r3.Vec{X: 1, Y: -2})
		case 5: // leaning, looked at from behind
			floor.U, floor.V = r3.Vec{X: 0.1}, r3.Vec{Y: 0.03, Z: 0.04}
			floor.Origin, floor.Normal = r3.Vec{X: 1.1, Y: 3.1, Z: 0.013}, r3.Unit(r3.Vec{Y: 4, Z: -3})
		}
		to := Targets{Lattices: []Lattice{floor}}
		var index [][2]int
		for range 300 {
			i, j := r.IntN(floor.NU), r.IntN(floor.NV)
			at := floor.At(i, j)
			if _, in := w.bvh.Inside(at); in {
				continue
			}
			index = append(index, [2]int{i, j})
			to.Points = append(to.Points, Receptor{At: at, Axis: floor.Normal, Weight: floor.Weight})
		}
		b := basis(t, w, lights, to)
		field := make([]float32, floor.NU*floor.NV)
		for _, e := range lights {
			d := Drive{e.Name: {1, 1, 1}}
			b.Field(0, d, field)
			l := newLamp(&e, w.faces, w.tubes, w.bundle)
			for p, ij := range index {
				got, want := float64(field[ij[1]*floor.NU+ij[0]]), 0.0
				if floor.drawable() {
					want = sampled(w, l, &to.Points[p]).Y()
				} else {
					total, _ := b.Point(p, d)
					want = total.Y()
				}
				if math.Abs(got-want) > 1e-3*math.Max(want, 5) {
					t.Errorf("scene %d, lamp %s, %v: field %.6g, rays %.6g", scene, e.Name, to.Points[p].At, got, want)
				}
			}
		}
	}
}
