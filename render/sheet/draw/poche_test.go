package draw

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/render/sheet/box"
)

// TestNoLineBetweenPiecesOfAWall: the outline runs round all pieces together, wherever they meet: along a whole edge, along
// a part of one, or one in the other.
func TestNoLineBetweenPiecesOfAWall(t *testing.T) {
	square := func(x, y, w, h float64) []r2.Vec { return box.Corners(box.Of(x, y, x+w, y+h)) }
	clockwise := func(q []r2.Vec) []r2.Vec { return []r2.Vec{q[3], q[2], q[1], q[0]} }
	for name, c := range map[string]struct {
		pieces [][]r2.Vec
		want   float64 // mm of line
	}{
		"alone":              {[][]r2.Vec{square(0, 0, 10, 4)}, 28},
		"end to end":         {[][]r2.Vec{square(0, 0, 10, 4), square(10, 0, 10, 4)}, 48},
		"the other way":      {[][]r2.Vec{clockwise(square(0, 0, 10, 4)), square(10, 0, 10, 4)}, 48},
		"a corner":           {[][]r2.Vec{square(0, 0, 10, 4), square(6, 4, 4, 6)}, 28 + 12},
		"over each other":    {[][]r2.Vec{square(0, 0, 10, 4), square(8, -2, 4, 8)}, 28 + 24 - 2*4 - 2*2},
		"apart":              {[][]r2.Vec{square(0, 0, 10, 4), square(20, 0, 10, 4)}, 56},
		"a part of one edge": {[][]r2.Vec{square(0, 0, 10, 4), square(3, 4, 2, 5)}, 28 + 10},
	} {
		got := 0.0
		for _, line := range outlineOf(c.pieces) {
			got += r2.Norm(r2.Sub(line[1], line[0]))
		}
		if !(math.Abs(got-c.want) <= 0.1) {
			t.Errorf("%s: %.2f mm of line, want %.2f", name, got, c.want)
		}
	}
}
