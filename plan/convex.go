package plan

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// Geometry in plan is exact to a millionth of a metre: points closer than that are one point,
// and a piece thinner than that is none.
const grain = 1e-6

// snap puts a coordinate on the grain, so that pieces cut one by one share their corners. The
// result is the decimal as it would be written, which a product with the grain is not.
func snap(v float64) float64 { return math.Round(v*1e6) / 1e6 }

// snapped puts every corner on the grain and drops those that then stand on the line between
// their neighbours. It returns nil for a ring without area.
func snapped(ring []r2.Vec) []r2.Vec {
	on := make([]r2.Vec, len(ring))
	for i, p := range ring {
		on[i] = r2.Vec{X: snap(p.X), Y: snap(p.Y)}
	}
	return tidied(on)
}

// tidied drops corners that repeat or stand on the line between their neighbours, to the grain.
// It returns nil for a ring without area.
func tidied(ring []r2.Vec) []r2.Vec {
	kept := append([]r2.Vec(nil), ring...)
	for i := 0; i < len(kept) && len(kept) >= 3; {
		n := len(kept)
		if flat(kept[(i+n-1)%n], kept[i], kept[(i+1)%n]) {
			kept = append(kept[:i], kept[i+1:]...)
			i = max(i-1, 0) // its neighbour may have become flat
			continue
		}
		i++
	}
	if len(kept) < 3 {
		return nil
	}
	return kept
}

// flat reports whether b adds nothing between a and c.
func flat(a, b, c r2.Vec) bool {
	chord := r2.Sub(c, a)
	length := r2.Norm(chord)
	if length <= grain {
		return true
	}
	return math.Abs(r2.Cross(chord, r2.Sub(b, a))) <= grain*length
}

// area is the area of a ring, positive where it runs counter-clockwise.
func area(ring []r2.Vec) float64 {
	if len(ring) == 0 {
		return 0
	}
	var twice float64
	o := ring[0] // far from the origin products would cancel
	for i := range ring {
		twice += r2.Cross(r2.Sub(ring[i], o), r2.Sub(ring[(i+1)%len(ring)], o))
	}
	return twice / 2
}

// perimeter is the length round a ring.
func perimeter(ring []r2.Vec) float64 {
	var sum float64
	for i := range ring {
		sum += r2.Norm(r2.Sub(ring[(i+1)%len(ring)], ring[i]))
	}
	return sum
}

// thin reports whether a ring is too thin to be a piece of anything.
func thin(ring []r2.Vec) bool {
	return len(ring) < 3 || math.Abs(area(ring)) <= grain*perimeter(ring)
}

// centroid is the centre of area of a ring.
func centroid(ring []r2.Vec) r2.Vec {
	var sum r2.Vec
	var weight float64
	for i := 1; i+1 < len(ring); i++ {
		a, b := r2.Sub(ring[i], ring[0]), r2.Sub(ring[i+1], ring[0])
		w := r2.Cross(a, b)
		sum = r2.Add(sum, r2.Scale(w/3, r2.Add(a, b)))
		weight += w
	}
	if weight == 0 {
		return ring[0]
	}
	return r2.Add(ring[0], r2.Scale(1/weight, sum))
}

// line is a directed line in plan: its points have height 0, what lies to its left is positive.
type line struct {
	at     r2.Vec
	normal r2.Vec // unit, to the left
}

// lineThrough is the line from a to b; they must differ.
func lineThrough(a, b r2.Vec) line {
	d := r2.Unit(r2.Sub(b, a))
	return line{at: a, normal: r2.Vec{X: -d.Y, Y: d.X}}
}

func (l line) height(p r2.Vec) float64 { return r2.Dot(r2.Sub(p, l.at), l.normal) }

// reversed is the same line with its other side to the left.
func (l line) reversed() line { return line{at: l.at, normal: r2.Scale(-1, l.normal)} }

// clip keeps the part of a convex ring to the left of l. Corners within the grain of l count as
// on it, so that no new corner stands next to an old one. It returns nil where nothing is left.
func clip(ring []r2.Vec, l line) []r2.Vec {
	n := len(ring)
	if n == 0 {
		return nil
	}
	kept := make([]r2.Vec, 0, n+1)
	before, beforeSide := ring[n-1], side(l, ring[n-1])
	var inside bool
	for _, p := range ring {
		s := side(l, p)
		if s*beforeSide < 0 {
			kept = append(kept, crossing(l, before, p))
		}
		if s >= 0 {
			kept = append(kept, p)
		}
		inside = inside || s > 0
		before, beforeSide = p, s
	}
	if !inside {
		return nil
	}
	return kept
}

// side is 1 to the left of l, -1 to its right and 0 on it.
func side(l line, p r2.Vec) int {
	switch h := l.height(p); {
	case h > grain/2:
		return 1
	case h < -grain/2:
		return -1
	}
	return 0
}

// crossing is where the segment from a to b crosses l. It does not depend on the direction that
// the segment is walked in, so that two pieces that share it get the same corner.
func crossing(l line, a, b r2.Vec) r2.Vec {
	if a.X > b.X || a.X == b.X && a.Y > b.Y {
		a, b = b, a
	}
	ha, hb := l.height(a), l.height(b)
	return r2.Add(a, r2.Scale(ha/(ha-hb), r2.Sub(b, a)))
}

// edges calls f with the line of each side of a counter-clockwise ring, the inside to its left.
// Sides shorter than the grain have no direction and are left out.
func edges(ring []r2.Vec, f func(l line) bool) {
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		if r2.Norm(r2.Sub(b, a)) <= grain {
			continue
		}
		if !f(lineThrough(a, b)) {
			return
		}
	}
}

// common is the part that two convex counter-clockwise rings share; nil where it is thin.
func common(a, b []r2.Vec) []r2.Vec {
	if !boxesMeet(a, b) {
		return nil
	}
	edges(b, func(l line) bool {
		a = clip(a, l)
		return a != nil
	})
	if thin(a) {
		return nil
	}
	return a
}

// boxesMeet reports whether the bounding boxes of two rings share some area.
func boxesMeet(a, b []r2.Vec) bool {
	p, q := boundsOf(a), boundsOf(b)
	return p.Min.X < q.Max.X && q.Min.X < p.Max.X && p.Min.Y < q.Max.Y && q.Min.Y < p.Max.Y
}

// boundsOf is the bounding box of some points; its Min is over its Max where there are none.
func boundsOf(points []r2.Vec) r2.Box {
	inf := math.Inf(1)
	box := r2.Box{Min: r2.Vec{X: inf, Y: inf}, Max: r2.Vec{X: -inf, Y: -inf}}
	for _, p := range points {
		box = including(box, p)
	}
	return box
}

func including(box r2.Box, p r2.Vec) r2.Box {
	box.Min = r2.Vec{X: min(box.Min.X, p.X), Y: min(box.Min.Y, p.Y)}
	box.Max = r2.Vec{X: max(box.Max.X, p.X), Y: max(box.Max.Y, p.Y)}
	return box
}

// minus splits what is left of convex ring a without convex ring b into convex pieces, and
// returns the part they share as well (nil where they share none: then rest is a itself).
func minus(a, b []r2.Vec) (rest [][]r2.Vec, shared []r2.Vec) {
	if common(a, b) == nil {
		return [][]r2.Vec{a}, nil
	}
	edges(b, func(l line) bool {
		if off := clip(a, l.reversed()); !thin(off) {
			rest = append(rest, off)
		}
		a = clip(a, l)
		return true
	})
	return rest, a
}

// within reports whether p lies in a convex counter-clockwise ring, at least margin from its
// sides (a negative margin lets it lie that far outside).
func within(p r2.Vec, ring []r2.Vec, margin float64) bool {
	for i, a := range ring {
		d := r2.Sub(ring[(i+1)%len(ring)], a)
		if long := math.Sqrt(r2.Norm2(d)); long > grain && r2.Cross(d, r2.Sub(p, a)) < margin*long {
			return false
		}
	}
	return len(ring) >= 3
}

// reach is how far a set of points lies along direction d from the origin.
func reach(points []r2.Vec, d r2.Vec) float64 {
	far := math.Inf(-1)
	for _, p := range points {
		far = math.Max(far, r2.Dot(p, d))
	}
	return far
}

// nearestOn is the point of segment a-b nearest to p, and whether it is p's foot on the line.
func nearestOn(p, a, b r2.Vec) (at r2.Vec, foot bool) {
	d := r2.Sub(b, a)
	t := r2.Dot(r2.Sub(p, a), d) / r2.Norm2(d)
	foot = t >= 0 && t <= 1
	t = math.Min(math.Max(t, 0), 1)
	return r2.Add(a, r2.Scale(t, d)), foot
}
