package radiosity

import (
	"context"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/light/receptor"
	"scrimshaw/plan/solid"
)

// Neighbours lend each other nothing across a sheet without thickness that stands on the lattice, along it or
// askew: close behind it the lattice has what single receptors have.
func TestNothingIsLentAcrossASheet(t *testing.T) {
	for _, askew := range []float64{0, 0.9} {
		s := boxOf(4, 4, 2.8, func(int) colour.RGB { return grey(0.6) })
		screen := solid.Sheet{ID: 77, Name: "screen", Corners: []r3.Vec{
			{X: 2.013 - askew, Y: 0.5}, {X: 2.013 + askew, Y: 3.5}, {X: 2.013 + askew, Y: 3.5, Z: 2.2}, {X: 2.013 - askew, Y: 0.5, Z: 2.2}}}
		s.Sheets = append(s.Sheets, screen)
		floor := inside(s, 80)[0]
		var behind []receptor.Receptor
		var at [][2]int
		for j := 30; j < 50; j++ {
			y := floor.Origin.Y + float64(j)*0.05
			edge := 2.013 + askew*(y-2)/1.5
			i := int(math.Ceil((edge - floor.Origin.X) / 0.05))
			for _, k := range []int{i, i + 1} {
				at = append(at, [2]int{k, j})
				behind = append(behind, receptor.Receptor{At: r3.Vec{X: floor.Origin.X + float64(k)*0.05, Y: y}, Axis: r3.Vec{Z: 1}})
			}
		}
		tr, bvh := trace(t, s, Quality{Patch: 0.25, Links: 64, Point: 8192, Lattice: 256}, behind, []receptor.Lattice{floor})
		solution := solve(t, tr, &bulb{bvh: bvh, at: r3.Vec{X: 0.6, Y: 2, Z: 0.5}, flux: grey(10000), cos: -1})
		planes, err := solution.Lattice(context.Background(), 0)
		if err != nil {
			t.Fatal(err)
		}
		got, want := 0.0, 0.0
		for p, ij := range at {
			got += float64(planes[0][ij[1]*floor.NU+ij[0]])
			for _, e := range solution.Point(p, 0) {
				want += e[0]
			}
		}
		t.Logf("askew by %g: %.2f, by single receptors %.2f", askew, got, want)
		if !(math.Abs(got/want-1) <= 0.02) {
			t.Errorf("askew by %g: %.2f behind the screen, by single receptors %.2f", askew, got, want)
		}
	}
}

// What stands on a lattice cuts it whichever way the lattice runs: it is looked for over the side that the points look to.
func TestLatticesAreCutOverTheirFace(t *testing.T) {
	for name, c := range map[string]struct{ u, v r3.Vec }{
		"counter-clockwise": {r3.Vec{X: 0.5}, r3.Vec{Y: 0.5}},
		"clockwise":         {r3.Vec{X: 0.5}, r3.Vec{Y: -0.5}},
	} {
		for _, up := range []float64{1, -1} { // a sheet over the lattice, and one under it
			tr := handmade(1, boardFace(t, r3.Vec{X: 1.3, Y: -9}, r3.Vec{Y: 18}, r3.Vec{Z: up}, 1, 1, 0.5))
			f := &frame{Lattice: receptor.Lattice{U: c.u, V: c.v, Normal: r3.Vec{Z: 1}, NU: 4, NV: 3}}
			f.cut(tr.mesh)
			for j := range f.NV {
				for i := range f.NU - 1 {
					// The points lie at 0, 0.5, 1 and 1.5 m.
					if got, want := set(f.cuts.u, j*f.NU+i), i == 2 && up > 0; got != want {
						t.Errorf("%s, a sheet to %g m: cut after point %d of row %d: %v", name, up, i, j, got)
					}
				}
			}
			if f.cuts.v != nil {
				t.Errorf("%s: rows are cut from each other: %v", name, f.cuts.v)
			}
		}
	}
}
