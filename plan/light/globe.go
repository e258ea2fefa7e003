package light

import (
	"math"

	"scrimshaw/plan/photometry"
)

// globe is measured intensities on Lambert's equal-area map about the axis: a direction lies at its right and
// its up over sqrt(1 + its cosine from the axis). Sums over parts of an opening read it instead of the
// table, which takes two arcs a direction.
type globe struct {
	reach float64 // of the map, from its middle
	scale float64 // cells to the unit
	cells []float32
}

// globeSide is how many points a globe has to a side: cells are about a degree.
const globeSide = 161

func newGlobe(t *photometry.Table, onesided bool) *globe {
	g := &globe{reach: math.Sqrt2, cells: make([]float32, globeSide*globeSide)}
	if onesided {
		g.reach = 1
	}
	g.scale = (globeSide - 1) / (2 * g.reach)
	for j := range globeSide {
		for i := range globeSide {
			x, y := float64(i)/g.scale-g.reach, float64(j)/g.scale-g.reach
			if square := x*x + y*y; square > g.reach*g.reach { // the nearest there is
				out := g.reach / math.Sqrt(square)
				x, y = x*out, y*out
			}
			cos := 1 - x*x - y*y
			out := math.Sqrt(max(0, 1+cos))
			g.cells[j*globeSide+i] = float32(t.FastCandela(x*out, y*out, cos, 1))
		}
	}
	return g
}

// at is the intensity in the direction (right, up, -ahead) times inverse, a unit vector.
func (g *globe) at(right, up, ahead, inverse float64) float64 {
	out := inverse * g.scale / math.Sqrt(max(1e-9, 1+ahead*inverse))
	middle := float64(globeSide-1) / 2
	x, y := middle+right*out, middle+up*out
	i, j := min(max(int(x), 0), globeSide-2), min(max(int(y), 0), globeSide-2)
	u, v := x-float64(i), y-float64(j)
	low, high := g.cells[j*globeSide+i:][:2], g.cells[(j+1)*globeSide+i:][:2]
	a, b := float64(low[0]), float64(high[0])
	a, b = a+u*(float64(low[1])-a), b+u*(float64(high[1])-b)
	return a + v*(b-a)
}
