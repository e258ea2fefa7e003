package scan_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/light/scan"
)

func TestCeil(t *testing.T) {
	for _, c := range []struct {
		x    float64
		want int
	}{{-3, 0}, {0, 0}, {0.001, 1}, {1, 1}, {1.5, 2}, {8.9, 9}, {9, 9}, {1e300, 9}, {math.Inf(1), 9}, {math.NaN(), 0}} {
		if got := scan.Ceil(c.x, 9); got != c.want {
			t.Errorf("%g: %d, want %d", c.x, got, c.want)
		}
	}
}

// An edge from (1, 0.5) up to (4, 3) crosses the rows 1 and 2; row 3 belongs to what lies above.
func TestEdge(t *testing.T) {
	at := []float64{-1, -1, -1, -1, -1}
	scan.Edge(at, r2.Vec{X: 1, Y: 0.5}, r2.Vec{X: 4, Y: 3}, 0, 5)
	for j, want := range []float64{-1, 1.6, 2.8, -1, -1} {
		if math.Abs(at[j]-want) > 1e-12 {
			t.Errorf("row %d: %g, want %g", j, at[j], want)
		}
	}
}
