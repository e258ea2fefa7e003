package study

import (
	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/plane"
)

// bins tell which of many shapes may hold a point, by a grid of cells over an area: each knows the shapes whose boxes
// meet it.
type bins struct {
	box   r2.Box
	cells [binsAcross * binsAcross][]int32
}

// binsAcross is how many cells lie along each side.
const binsAcross = 64

// newBins sorts shapes into the cells of a box.
func newBins(box r2.Box, shapes [][]r2.Vec) *bins {
	b := &bins{box: box}
	for n, shape := range shapes {
		bounds := plane.Bounds(shape)
		grain := r2.Vec{X: plane.Grain, Y: plane.Grain}
		fromX, fromY := b.cell(r2.Sub(bounds.Min, grain))
		toX, toY := b.cell(r2.Add(bounds.Max, grain))
		for y := fromY; y <= toY; y++ {
			for x := fromX; x <= toX; x++ {
				b.cells[y*binsAcross+x] = append(b.cells[y*binsAcross+x], int32(n))
			}
		}
	}
	return b
}

// cell is that of a point, for one beyond the box the nearest.
func (b *bins) cell(p r2.Vec) (x, y int) {
	along := func(at, from, to float64) int {
		if !(to > from) {
			return 0
		}
		return int(min(max((at-from)/(to-from)*binsAcross, 0), binsAcross-1))
	}
	return along(p.X, b.box.Min.X, b.box.Max.X), along(p.Y, b.box.Min.Y, b.box.Max.Y)
}

// near are the shapes that may hold a point, by their numbers.
func (b *bins) near(p r2.Vec) []int32 {
	x, y := b.cell(p)
	return b.cells[y*binsAcross+x]
}
