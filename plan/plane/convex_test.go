package plane

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
)

func TestCommonOfSquares(t *testing.T) {
	a := ringAt(0, 0, 2, 0, 2, 2, 0, 2)
	b := ringAt(1, 1, 3, 1, 3, 3, 1, 3)
	near(t, "shared area", Area(Intersection(a, b)), 1, 1e-12)
	if Intersection(a, ringAt(2, 0, 3, 0, 3, 2, 2, 2)) != nil {
		t.Error("squares that touch share no area")
	}
	if Intersection(a, ringAt(2-1e-7, 0, 3, 0, 3, 2, 2-1e-7, 2)) != nil {
		t.Error("less than the Grain is no area")
	}
}

// What is left and what is shared tile the first ring, and the share is the same both ways.
func TestMinusTiles(t *testing.T) {
	rnd := rand.New(rand.NewPCG(1, 1))
	met := 0
	for range 5000 {
		a, b := randomConvex(rnd), randomConvex(rnd)
		rest, shared := Difference(a, b)
		sum := Area(shared)
		for _, r := range rest {
			sum += Area(r)
			if !IsConvex(r) {
				t.Fatalf("%v is not convex", r)
			}
			if c := Intersection(r, b); c != nil && Area(c) > 1e-5 {
				t.Fatalf("%v is left inside %v", r, b)
			}
		}
		near(t, "area of the pieces", sum, Area(a), 1e-5)
		near(t, "area shared the other way", Area(Intersection(b, a)), Area(shared), 1e-5)
		if shared != nil {
			met++
		}
	}
	if met < 1000 {
		t.Errorf("only %d pairs met", met)
	}
}

// randomConvex is the hull of a random polygon on a circle.
func randomConvex(rnd *rand.Rand) []r2.Vec {
	c := r2.Vec{X: 3 * rnd.Float64(), Y: 3 * rnd.Float64()}
	n := 3 + rnd.IntN(6)
	radius := 0.3 + 2*rnd.Float64()
	ring := make([]r2.Vec, n)
	for i := range ring {
		a := 2 * math.Pi * (float64(i) + 0.7*rnd.Float64()) / float64(n)
		ring[i] = r2.Add(c, r2.Vec{X: radius * math.Cos(a), Y: radius * math.Sin(a)})
	}
	return ring
}

func TestTidiedDropsWhatAddsNothing(t *testing.T) {
	got := Tidy(ringAt(0, 0, 1, 0, 2, 0, 2, 0, 2, 2, 1, 2+1e-8, 0, 2))
	if len(got) != 4 {
		t.Errorf("%v has %d corners, want 4", got, len(got))
	}
	if Tidy(ringAt(0, 0, 1, 0, 2, 0)) != nil {
		t.Error("a line is no ring")
	}
}

func TestConvexPartsTileTheRing(t *testing.T) {
	rnd := rand.New(rand.NewPCG(2, 2))
	for i := range 2000 {
		ring := star(rnd, 3+rnd.IntN(20), r2.Vec{X: 1}, 0.5, 4)
		parts := ConvexParts(ring)
		sum, reflex := 0.0, 0
		for k, p := range parts {
			sum += Area(p)
			if !IsConvex(p) {
				t.Fatalf("ring %d: part %v is not convex", i, p)
			}
			for _, q := range parts[:k] {
				if c := Intersection(p, q); c != nil {
					t.Fatalf("ring %d: parts %v and %v overlap by %v", i, p, q, c)
				}
			}
		}
		near(t, "area of the parts", sum, Area(ring), 1e-5)
		for k := range ring {
			if orientation(ring[(k+len(ring)-1)%len(ring)], ring[k], ring[(k+1)%len(ring)]) < 0 {
				reflex++
			}
		}
		// Four times the least number; the least is at least half the corners that turn right, plus one.
		if most := 2*reflex + 1; len(parts) > most {
			t.Errorf("ring %d: %d parts for %d corners that turn right", i, len(parts), reflex)
		}
	}
}

func TestConvexPartsOfCombs(t *testing.T) {
	// A comb with n teeth: rectilinear, with many corners in line.
	var ring []r2.Vec
	const n = 12
	for i := range n {
		x := float64(2 * i)
		ring = append(ring, ringAt(x, 0, x+1, 0, x+1, 3, x+2, 3)...)
	}
	ring = append(ring, ringAt(2*n, 4, 0, 4)...)
	sum := 0.0
	for _, p := range ConvexParts(ring) {
		sum += Area(p)
	}
	near(t, "area", sum, Area(ring), 1e-9)
	near(t, "area", sum, n*3+2*n, 1e-9)
}
