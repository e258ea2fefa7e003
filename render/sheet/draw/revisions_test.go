package draw

import (
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
)

// TestWhatOfAWallIsNew: the ends of one that is longer or shorter, all of one that stands elsewhere or is another thickness, nothing of the same.
func TestWhatOfAWallIsNew(t *testing.T) {
	wall := func(x0, x1, y, thick float64) *plan.Wall {
		return &plan.Wall{Left: r2.Vec{X: x0, Y: y}, Right: r2.Vec{X: x1, Y: y}, Outward: r2.Vec{Y: 1}, Thickness: thick}
	}
	for _, c := range []struct {
		w, was *plan.Wall
		want   [][2]float64
	}{
		{wall(0, 4, 3, 0.15), wall(0, 4, 3, 0.15), nil},
		{wall(0, 4, 3, 0.15), wall(0.005, 4.005, 3.005, 0.15), nil},
		{wall(0, 4, 3, 0.15), wall(0, 3, 3, 0.15), [][2]float64{{3, 4}}},
		{wall(0, 4, 3, 0.15), wall(1, 5, 3, 0.15), [][2]float64{{0, 1}, {3.9, 4}}},
		{wall(0, 4, 3, 0.15), wall(-1, 4, 3, 0.15), [][2]float64{{0, 0.1}}},
		{wall(0, 4, 3, 0.15), wall(6, 9, 3, 0.15), [][2]float64{{0, 4}}},
		{wall(0, 4, 3, 0.15), wall(0, 4, 3.2, 0.15), [][2]float64{{0, 4}}},
		{wall(0, 4, 3, 0.15), wall(0, 4, 3, 0.2), [][2]float64{{0, 4}}},
		{wall(0, 4, 3, 0.15), nil, [][2]float64{{0, 4}}},
	} {
		if got := stretchesNew(c.w, c.was); !slices.Equal(got, c.want) {
			t.Errorf("of %v after %v %v is new, want %v", c.w, c.was, got, c.want)
		}
	}
}
