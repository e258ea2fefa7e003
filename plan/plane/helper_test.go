package plane

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
)

func near(t testing.TB, what string, got, want, slack float64) {
	t.Helper()
	if !(math.Abs(got-want) <= slack) {
		t.Errorf("%s is %.9g, want %.9g", what, got, want)
	}
}

// ring makes a ring of x, y, x, y, ...
func ringAt(xy ...float64) []r2.Vec {
	var ring []r2.Vec
	for i := 0; i < len(xy); i += 2 {
		ring = append(ring, r2.Vec{X: xy[i], Y: xy[i+1]})
	}
	return ring
}

// star is a random simple ring of n corners round a centre, counter-clockwise.
func star(rnd *rand.Rand, n int, centre r2.Vec, least, most float64) []r2.Vec {
	ring := make([]r2.Vec, n)
	for i := range ring {
		a := 2 * math.Pi * (float64(i) + 0.8*rnd.Float64()) / float64(n)
		radius := least + (most-least)*rnd.Float64()
		ring[i] = r2.Add(centre, r2.Vec{X: radius * math.Cos(a), Y: radius * math.Sin(a)})
	}
	return ring
}
