package tint

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/render/carto"
)

// terrain is a field as places on the scale.
type terrain struct {
	grid   carto.Grid
	place  []float32 // not a number where there is no data
	levels int
}

func newTerrain(g carto.Grid, s Scale) terrain {
	t := terrain{grid: g, place: make([]float32, g.NX*g.NY), levels: len(s.levels)}
	for n := range t.place {
		t.place[n] = float32(math.NaN())
		if !g.Masked(n%g.NX, n/g.NX) {
			t.place[n] = float32(s.place(float64(g.Value[n])))
		}
	}
	return t
}

// at is the place of a point of the plan that lies in band k: straight between the four points of
// the lattice about it, held to the band. Points of the lattice that are more than a stop outside
// the band stand across an edge of shadow: they do not count, so that the tint ends at the edge
// and not a cell before it. Where none counts the point has the band's own tint.
func (t *terrain) at(p r2.Vec, k int) float32 {
	u, v := (p.X-t.grid.Origin.X)/t.grid.Step, (p.Y-t.grid.Origin.Y)/t.grid.Step
	i, j := cell(u, t.grid.NX), cell(v, t.grid.NY)
	across, up := float32(min(max(u-float64(i), 0), 1)), float32(min(max(v-float64(j), 0), 1))
	row := t.place[j*t.grid.NX+i:]
	low, high := float32(k)-0.5, float32(k)+0.5
	sum, weights := float32(0), float32(0)
	for _, corner := range [...]struct {
		n      int
		weight float32
	}{
		{0, (1 - across) * (1 - up)}, {1, across * (1 - up)},
		{t.grid.NX, (1 - across) * up}, {t.grid.NX + 1, across * up},
	} {
		if q := row[corner.n]; q >= low-1 && q <= high+1 {
			sum, weights = sum+corner.weight*q, weights+corner.weight
		}
	}
	if weights < 1e-3 {
		return float32(k)
	}
	return min(max(sum/weights, low, 0), high, float32(t.levels))
}

// cell is the number of the cell that a coordinate lies in, of a lattice of n points.
func cell(u float64, n int) int { return min(max(int(math.Floor(u)), 0), n-2) }
