package light

import (
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/light/radiosity"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/solid"
)

// What is left out of a field gets nothing of the lamp, and little that gets nothing is left in: on floors and walls, planes and
// domes, rows that run either way, of lamps that lean any way.
func TestUnlitPointsGetNothing(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 11))
	grid, _ := photometry.NewGrid(photometry.Cosine{}, 60, 40)
	shapes := map[string]photometry.Distribution{"cosine": photometry.Cosine{}, "grid": grid, "lobe": photometry.NewFaceLobe(30, 70), "measured": measured(t, 1, 0.8)}
	forms := []photometry.Opening{face(0.8, 0.5), {Form: photometry.Disc, Width: 0.7}}
	lattices := []Lattice{floorAt(-2, -2, 0, 4, 40), floorAt(2, -2, 0.7, 4, 40), floorAt(-2, 0.3, -2, 4, 40)}
	lattices[1].U.X *= -1
	lattices[1].Response = Dome
	lattices[2].V, lattices[2].Normal = r3.Vec{Z: lattices[2].V.Y}, r3.Vec{Y: 1}
	for name, d := range shapes {
		for n := range 12 {
			at, lat := r3.Vec{X: random.NormFloat64(), Y: 1 + random.NormFloat64(), Z: 1.5 + random.Float64()}, &lattices[n%len(lattices)]
			e := Emitter{Frame: looking(at, r3.Vec{X: random.NormFloat64(), Y: random.NormFloat64()}), Source: photometry.Source{Flux: 1000, Distribution: d, Opening: forms[n%len(forms)]}}
			l := newLamp(&e, 16, 16, 4)
			g := newGrid(lat, 1e-9)
			mask := make([]uint64, len(g.blank))
			g.hideUnlit(mask, l)
			left, dark := 0, 0
			for j := range lat.NV {
				for i := range lat.NU {
					r := lat.Receptor(i, j)
					r.Axis, r.Response = r3.Unit(r3.Sub(at, r.At)), Cosine // turned to the lamp
					value, hidden := l.unoccluded(&r, coarsely()), g.row(mask, j)[i>>6]>>(i&63)&1 != 0
					if hidden && value > 1e-9 {
						t.Fatalf("%s, case %d: point %d, %d gets %g lx and is left out", name, n, i, j, value)
					}
					if value == 0 {
						dark++
						if !hidden {
							left++
						}
					}
				}
			}
			if left > dark/50+lat.NU/4 {
				t.Errorf("%s, case %d: %d of %d points without light are left in", name, n, left, dark)
			}
		}
	}
}

// A surface beyond the angle at which light ends is hidden from the lamp, though nothing stands between, and one that reaches into it is not.
func TestSurfacesBeyondTheEndOfLightAreHidden(t *testing.T) {
	grid, _ := photometry.NewGrid(photometry.Cosine{}, 60, 40)
	w := build(t, &solid.Set{}, Options{Workers: 1})
	e := Emitter{Frame: looking(r3.Vec{Z: 2}, r3.Vec{}), Source: photometry.Source{Flux: 1000, Distribution: grid, Opening: face(0.8, 0.5)}}
	l := w.newLamp(&e)
	b := w.newSurfaceLamp(l)
	end := l.opening.Width/2 + 2*l.creases.right // m along the floor
	for from, want := range map[float64]radiosity.Visibility{end + 0.01: radiosity.Hidden, end - 0.01: radiosity.Unoccluded} {
		at := func(x, y float64) r3.Vec { return r3.Add(r3.Scale(x, l.right), r3.Scale(y, l.up)) }
		corners := []r3.Vec{at(from, -0.1), at(from+0.2, -0.1), at(from+0.2, 0.1), at(from, 0.1)}
		if got := b.SetPatch(0, corners, r3.Vec{Z: 1}); got != want {
			t.Errorf("from %.2f m, where light ends at %.2f: %v, want %v", from, end, got, want)
		}
		if got := b.SetOpenPatch(0, corners, r3.Vec{Z: 1}); got != want {
			t.Errorf("from %.2f m, asked as open: %v, want %v", from, got, want)
		}
	}
}
