package plane_test

import (
	"math/rand/v2"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/plane"
)

// A hull holds all its points, turns left at each corner, and each corner is one of the points.
func TestHull(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 1))
	for range 200 {
		points := make([]r2.Vec, 3+rng.IntN(30))
		for i := range points {
			points[i] = r2.Vec{X: float64(rng.IntN(12)), Y: float64(rng.IntN(12))}
		}
		ring := plane.Hull(points)
		for i, a := range ring {
			b, c := ring[(i+1)%len(ring)], ring[(i+2)%len(ring)]
			if !slices.Contains(points, a) {
				t.Fatalf("%v is a corner and not among %v", a, points)
			}
			if len(ring) > 2 && r2.Cross(r2.Sub(b, a), r2.Sub(c, b)) <= 0 {
				t.Fatalf("no turn to the left at %v of %v", b, ring)
			}
			for _, p := range points {
				if len(ring) > 2 && r2.Cross(r2.Sub(b, a), r2.Sub(p, a)) < 0 {
					t.Fatalf("%v is outside of %v", p, ring)
				}
			}
		}
	}
	for _, c := range []struct {
		points []r2.Vec
		want   int
	}{{nil, 0}, {[]r2.Vec{{X: 1}, {X: 1}, {X: 1}}, 1}, {[]r2.Vec{{X: 1}, {X: 3}, {X: 2}}, 2}} {
		if got := plane.Hull(c.points); len(got) != c.want {
			t.Errorf("the hull of %v is %v", c.points, got)
		}
	}
}
