package light

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/photometry"
	"scrimshaw/plan/solid"
)

// Of a face that a receptor's plane runs through comes what the part before the plane gives, to a meter and, quickly, to a lattice: the sum over
// its places one by one, with nothing of those behind.
func TestFacesAcrossAPlane(t *testing.T) {
	grid, _ := photometry.NewGrid(photometry.Cosine{}, 110, 90)
	w := build(t, &solid.Set{}, Options{Direct: true})
	for name, d := range map[string]photometry.Distribution{"grid": grid, "table": measured(t, 1, 0.8), "lobe": photometry.NewFaceLobe(60, 100)} {
		for _, o := range []photometry.Opening{face(0.9, 0.9), {Form: photometry.Disc, Width: 0.9}} {
			e := Emitter{Name: "a", Frame: looking(r3.Vec{Z: 1}, r3.Vec{X: 1, Z: 1.2}), Source: photometry.Source{Flux: 1000, Distribution: d, Opening: o}}
			l := w.newLamp(&e)
			for _, at := range []r3.Vec{{X: 0.3, Z: 1}, {X: 0.7, Z: 1.2}, {X: 1, Y: 0.1, Z: 1}, {X: 2, Y: 0.3, Z: 1}, {X: 3, Z: 1.2}} {
				r := Receptor{At: at, Axis: r3.Vec{Z: -1}}
				want := overOpening(&e, &r)
				for _, quick := range []bool{false, true} {
					tr := &tracer{visibleSums: newVisibleSums(w.bvh), quick: quick}
					if got := tr.total(l, &r).Y(); !(math.Abs(got/want-1) <= 0.005) {
						t.Errorf("%s, form %d, quickly %v, at %v: %.5g lx, want %.5g", name, o.Form, quick, at, got, want)
					}
				}
			}
		}
	}
}
