package study

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/plane"
)

// Whatever shape holds a point, in the box or beyond it, is among those that are looked at.
func TestBinsLoseNoShape(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	for range 50 {
		box := r2.Box{Min: r2.Vec{X: -2, Y: 1}, Max: r2.Vec{X: -2 + 9*rng.Float64(), Y: 1 + 9*rng.Float64()}}
		var shapes [][]r2.Vec
		for range 40 {
			at, size := r2.Vec{X: 14*rng.Float64() - 5, Y: 14*rng.Float64() - 3}, 3*rng.Float64()*rng.Float64()
			var shape []r2.Vec
			for k := range 5 {
				sin, cos := math.Sincos(2 * math.Pi * float64(k) / 5)
				shape = append(shape, r2.Add(at, r2.Vec{X: size * cos, Y: size * sin}))
			}
			shapes = append(shapes, shape)
		}
		b := newBins(box, shapes)
		for range 200 {
			p := r2.Vec{X: 14*rng.Float64() - 5, Y: 14*rng.Float64() - 3}
			for n, shape := range shapes {
				if plane.Contains(p, shape, 0) && !slices.Contains(b.near(p), int32(n)) {
					t.Fatalf("shape %d holds %v and is not near it", n, p)
				}
			}
		}
	}
}
