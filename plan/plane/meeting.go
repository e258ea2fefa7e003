package plane

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// FirstMeeting finds the first two sides of a ring that touch where they should not: sides that
// are not neighbours at all, neighbours in more than their common corner.
func FirstMeeting(ring []r2.Vec) (i, k int, at r2.Vec, found bool) {
	n := len(ring)
	for k = range n {
		for i = range k {
			a, b, c, d := ring[i], ring[(i+1)%n], ring[k], ring[(k+1)%n]
			switch {
			case k == i+1:
				at, found = b, turnsBack(a, b, d)
			case i == 0 && k == n-1:
				at, found = a, turnsBack(c, a, b)
			default:
				at, found = commonPoint(a, b, c, d)
			}
			if found {
				return i, k, at, true
			}
		}
	}
	return 0, 0, r2.Vec{}, false
}

// Neighbours reports whether sides i < k of a ring of n follow each other.
func Neighbours(i, k, n int) bool { return k == i+1 || i == 0 && k == n-1 }

// turnsBack reports whether the way a, b, c returns on itself at b.
func turnsBack(a, b, c r2.Vec) bool {
	in, out := r2.Sub(b, a), r2.Sub(c, b)
	return r2.Dot(in, out) < 0 && math.Abs(r2.Cross(in, out)) <= Grain*max(r2.Norm(in), r2.Norm(out))
}

// LinesMeet says whether two lines of corners share a point, to the grain.
func LinesMeet(a, b []r2.Vec) bool {
	for i := 1; i < len(a); i++ {
		for k := 1; k < len(b); k++ {
			if _, ok := commonPoint(a[i-1], a[i], b[k-1], b[k]); ok {
				return true
			}
		}
	}
	return false
}

// commonPoint finds a point that the segments a-b and c-d share, to the grain.
func commonPoint(a, b, c, d r2.Vec) (at r2.Vec, ok bool) {
	p, q := Through(a, b), Through(c, d)
	if Side(p, c)*Side(p, d) < 0 && Side(q, a)*Side(q, b) < 0 {
		return Crossing(p, c, d), true
	}
	for _, end := range []struct{ p, a, b r2.Vec }{{a, c, d}, {b, c, d}, {c, a, b}, {d, a, b}} {
		if on, _ := NearestOnSegment(end.p, end.a, end.b); SamePoint(on, end.p) {
			return end.p, true
		}
	}
	return r2.Vec{}, false
}
