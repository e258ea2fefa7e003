package solid

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// box is an axis-aligned box; lo > hi is the empty one.
type box struct{ lo, hi [3]float64 }

func emptyBox() box {
	inf := math.Inf(1)
	return box{[3]float64{inf, inf, inf}, [3]float64{-inf, -inf, -inf}}
}

// add grows b to hold p.
func (b *box) add(p r3.Vec) {
	for k, v := range [3]float64{p.X, p.Y, p.Z} {
		b.lo[k] = min(b.lo[k], v)
		b.hi[k] = max(b.hi[k], v)
	}
}

// join grows b to hold c.
func (b *box) join(c box) {
	for k := range b.lo {
		b.lo[k] = min(b.lo[k], c.lo[k])
		b.hi[k] = max(b.hi[k], c.hi[k])
	}
}

// grow moves every face out by d.
func (b *box) grow(d float64) {
	for k := range b.lo {
		b.lo[k] -= d
		b.hi[k] += d
	}
}

// centre2 is twice the centre: sums compare as well as means do.
func (b *box) centre2(axis int) float64 { return b.lo[axis] + b.hi[axis] }

// area is half the surface, the measure of how many rays a convex body meets.
func (b *box) area() float64 {
	x, y, z := b.hi[0]-b.lo[0], b.hi[1]-b.lo[1], b.hi[2]-b.lo[2]
	if x < 0 {
		return 0
	}
	return x*y + y*z + z*x
}

// extent is the largest distance of a face from the origin or from its opposite.
func (b *box) extent() float64 {
	var e float64
	for k := range b.lo {
		if b.lo[k] <= b.hi[k] {
			e = max(e, math.Abs(b.lo[k]), math.Abs(b.hi[k]))
		}
	}
	return e
}

// ray is a ray made ready for boxes.
type ray struct {
	o, d  r3.Vec
	from  [3]float64
	inv   [3]float64 // 1/d; infinite along an axis that the ray does not move on
	turns [3]bool    // where it runs to lesser coordinates: it meets the far face first
}

func newRay(o, d r3.Vec) ray {
	r := ray{o: o, d: d, from: [3]float64{o.X, o.Y, o.Z}, inv: [3]float64{1 / d.X, 1 / d.Y, 1 / d.Z}}
	for k, v := range r.inv {
		r.turns[k] = v < 0
	}
	return r
}

// at is the point at distance t.
func (r *ray) at(t float64) r3.Vec {
	return r3.Vec{X: r.o.X + t*r.d.X, Y: r.o.Y + t*r.d.Y, Z: r.o.Z + t*r.d.Z}
}

// meets says whether the ray is in the box somewhere between 0 and far. A ray that runs in the
// plane of a face gives products that are not numbers, and so no: the boxes of a BVH stand off
// from what they hold. It asks axis by axis, for by the first most boxes are missed.
func (r *ray) meets(b *box, far float64) bool {
	x0, x1 := (b.lo[0]-r.from[0])*r.inv[0], (b.hi[0]-r.from[0])*r.inv[0]
	if r.turns[0] {
		x0, x1 = x1, x0
	}
	if !(x0 <= far && x1 >= 0) {
		return false
	}
	y0, y1 := (b.lo[1]-r.from[1])*r.inv[1], (b.hi[1]-r.from[1])*r.inv[1]
	if r.turns[1] {
		y0, y1 = y1, y0
	}
	if !(y0 <= far && y1 >= 0 && x0 <= y1 && y0 <= x1) {
		return false
	}
	z0, z1 := (b.lo[2]-r.from[2])*r.inv[2], (b.hi[2]-r.from[2])*r.inv[2]
	if r.turns[2] {
		z0, z1 = z1, z0
	}
	return z0 <= far && z1 >= 0 && x0 <= z1 && y0 <= z1 && z0 <= x1 && z0 <= y1 && far >= 0
}
