package plane

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// Overlap reports whether two spans of height share more than the grain.
func Overlap(a0, a1, b0, b1 float64) bool { return min(a1, b1)-max(a0, b0) > Grain }

// Clip keeps the part of a convex ring to the left of l. Corners within the grain of l count as
// on it, so that no new corner stands next to an old one. It returns nil where nothing is left.
func Clip(ring []r2.Vec, l Line) []r2.Vec {
	n := len(ring)
	if n == 0 {
		return nil
	}
	kept := make([]r2.Vec, 0, n+1)
	before, beforeSide := ring[n-1], Side(l, ring[n-1])
	var inside bool
	for _, p := range ring {
		s := Side(l, p)
		if s*beforeSide < 0 {
			kept = append(kept, Crossing(l, before, p))
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

// Intersection is the part that two convex counter-clockwise rings share; nil where it is thin.
func Intersection(a, b []r2.Vec) []r2.Vec {
	if !BoxesOverlap(a, b) {
		return nil
	}
	Edges(b, func(l Line) bool {
		a = Clip(a, l)
		return a != nil
	})
	if Thin(a) {
		return nil
	}
	return a
}

// Difference splits what is left of convex ring a without convex ring b into convex pieces, and
// returns the part they share as well (nil where they share none: then rest is a itself).
func Difference(a, b []r2.Vec) (rest [][]r2.Vec, shared []r2.Vec) {
	if Intersection(a, b) == nil {
		return [][]r2.Vec{a}, nil
	}
	Edges(b, func(l Line) bool {
		if off := Clip(a, l.Reversed()); !Thin(off) {
			rest = append(rest, off)
		}
		a = Clip(a, l)
		return true
	})
	return rest, a
}

// Contains reports whether p lies in a convex counter-clockwise ring, at least margin from its
// sides (a negative margin lets it lie that far outside).
func Contains(p r2.Vec, ring []r2.Vec, margin float64) bool {
	for i, a := range ring {
		d := r2.Sub(ring[(i+1)%len(ring)], a)
		if long := math.Sqrt(r2.Norm2(d)); long > Grain && r2.Cross(d, r2.Sub(p, a)) < margin*long {
			return false
		}
	}
	return len(ring) >= 3
}
