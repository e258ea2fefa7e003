package plane

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// Line is a directed line in plan: its points are at distance 0, those to its left at a positive one.
type Line struct {
	At     r2.Vec // a point of it, m
	Normal r2.Vec // unit vector, to the left
}

// Through is the line from a to b; they must differ.
func Through(a, b r2.Vec) Line {
	d := r2.Unit(r2.Sub(b, a))
	return Line{At: a, Normal: r2.Vec{X: -d.Y, Y: d.X}}
}

// Distance is how far p lies to the left of the line; negative to its right.
func (l Line) Distance(p r2.Vec) float64 { return r2.Dot(r2.Sub(p, l.At), l.Normal) }

// Reversed is the same line with its other side to the left.
func (l Line) Reversed() Line { return Line{At: l.At, Normal: r2.Scale(-1, l.Normal)} }

// Side is 1 to the left of l, -1 to its right and 0 on it.
func Side(l Line, p r2.Vec) int {
	switch h := l.Distance(p); {
	case h > Grain/2:
		return 1
	case h < -Grain/2:
		return -1
	}
	return 0
}

// Crossing is where the segment from a to b crosses l. It does not depend on the direction that
// the segment is walked in, so that two pieces that share it get the same corner.
func Crossing(l Line, a, b r2.Vec) r2.Vec {
	if a.X > b.X || a.X == b.X && a.Y > b.Y {
		a, b = b, a
	}
	ha, hb := l.Distance(a), l.Distance(b)
	return r2.Add(a, r2.Scale(ha/(ha-hb), r2.Sub(b, a)))
}

// Edges calls f with the line of each side of a counter-clockwise ring, the inside to its left.
// Sides shorter than the grain have no direction and are left out.
func Edges(ring []r2.Vec, f func(l Line) bool) {
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		if r2.Norm(r2.Sub(b, a)) <= Grain {
			continue
		}
		if !f(Through(a, b)) {
			return
		}
	}
}

// NearestOnSegment is the point of segment a-b nearest to p, and whether it is p's foot on the line.
func NearestOnSegment(p, a, b r2.Vec) (at r2.Vec, foot bool) {
	d := r2.Sub(b, a)
	square := r2.Norm2(d)
	if square == 0 {
		return a, true
	}
	t := r2.Dot(r2.Sub(p, a), d) / square
	foot = t >= 0 && t <= 1
	t = math.Min(math.Max(t, 0), 1)
	return r2.Add(a, r2.Scale(t, d)), foot
}

// Nearest is the point of some convex counter-clockwise rings nearest to p: p itself in one of them.
func Nearest(p r2.Vec, rings ...[]r2.Vec) r2.Vec {
	best := rings[0][0]
	for _, ring := range rings {
		if Contains(p, ring, 0) {
			return p
		}
		for i, a := range ring {
			on, _ := NearestOnSegment(p, a, ring[(i+1)%len(ring)])
			if r2.Norm(r2.Sub(on, p)) < r2.Norm(r2.Sub(best, p)) {
				best = on
			}
		}
	}
	return best
}

// Slab is the rectangle over the segment from left to right, between two distances along the unit vector outward,
// which is square to it. It runs counter-clockwise where outward is to the left of the way.
func Slab(left, right, outward r2.Vec, near, far float64) []r2.Vec {
	in, out := r2.Scale(near, outward), r2.Scale(far, outward)
	return []r2.Vec{r2.Add(left, in), r2.Add(right, in), r2.Add(right, out), r2.Add(left, out)}
}

// Chord is where a ray from p along the unit vector d enters and leaves a convex ring; near may
// lie before p.
func Chord(p, d r2.Vec, ring []r2.Vec) (near, far float64, ok bool) {
	near, far = math.Inf(-1), math.Inf(1)
	Edges(ring, func(l Line) bool {
		h, speed := l.Distance(p), r2.Dot(d, l.Normal)
		switch {
		case math.Abs(speed) < 1e-12:
			if h < -Grain {
				far = near - 1
			}
		case speed > 0:
			near = max(near, -h/speed)
		default:
			far = min(far, -h/speed)
		}
		return true
	})
	return near, far, far-near > Grain && far > 0
}
