package plane

import "gonum.org/v1/gonum/spatial/r2"

// ConvexParts splits a simple counter-clockwise ring into convex ones: ears are cut off until
// nothing is left, then parts are joined again over every diagonal that may go (the method of
// Hertel and Mehlhorn, 1983: never more than four times the least number of parts).
func ConvexParts(ring []r2.Vec) [][]r2.Vec {
	ring = Tidy(ring)
	if ring == nil {
		return nil
	}
	if IsConvex(ring) {
		return [][]r2.Vec{ring}
	}
	points := ring
	return joined(points, triangulate(points))
}

// isConvex reports whether a counter-clockwise ring has no corner that turns right.
func IsConvex(ring []r2.Vec) bool {
	n := len(ring)
	for i := range ring {
		if orientation(ring[(i+n-1)%n], ring[i], ring[(i+1)%n]) < 0 {
			return false
		}
	}
	return true
}

// orientation is 1 where the way a, b, c turns left, -1 where it turns right and 0 where it goes on.
func orientation(a, b, c r2.Vec) int {
	if Collinear(a, b, c) {
		return 0
	}
	if r2.Cross(r2.Sub(b, a), r2.Sub(c, b)) > 0 {
		return 1
	}
	return -1
}

// triangulate triangulates a simple ring and returns triples of indices into it.
func triangulate(points []r2.Vec) [][]int {
	left := make([]int, len(points))
	for i := range left {
		left[i] = i
	}
	var parts [][]int
	for len(left) > 3 {
		i := nextEar(points, left)
		if i < 0 {
			break // only a ring that crosses itself has no ear
		}
		n := len(left)
		parts = append(parts, []int{left[(i+n-1)%n], left[i], left[(i+1)%n]})
		left = append(left[:i], left[i+1:]...)
	}
	return append(parts, left)
}

// nextEar finds a corner that can be cut off: one that turns left and whose triangle holds no
// other corner. Of those it takes the fattest, which keeps slivers out. Corners that have become
// flat are cut first; they take no area with them.
func nextEar(points []r2.Vec, left []int) int {
	n := len(left)
	best, most := -1, 0.0
	for i := range left {
		a, b, c := points[left[(i+n-1)%n]], points[left[i]], points[left[(i+1)%n]]
		if orientation(a, b, c) < 0 || !empty(points, left, i) {
			continue
		}
		if fat := smallestHeight(a, b, c); best < 0 || fat > most {
			best, most = i, fat
		}
	}
	return best
}

// smallestHeight is the smallest height of a triangle.
func smallestHeight(a, b, c r2.Vec) float64 {
	longest := max(r2.Norm(r2.Sub(b, a)), r2.Norm(r2.Sub(c, b)), r2.Norm(r2.Sub(a, c)))
	return r2.Cross(r2.Sub(b, a), r2.Sub(c, b)) / longest
}

// empty reports whether the triangle at corner i of what is left holds none of the others.
func empty(points []r2.Vec, left []int, i int) bool {
	n := len(left)
	triangle := []r2.Vec{points[left[(i+n-1)%n]], points[left[i]], points[left[(i+1)%n]]}
	for k := 2; k < n-1; k++ {
		p := points[left[(i+k)%n]]
		if Contains(p, triangle, -Grain/2) && !SamePoint(p, triangle[0]) && !SamePoint(p, triangle[2]) {
			return false
		}
	}
	return true
}

func SamePoint(p, q r2.Vec) bool { return r2.Norm(r2.Sub(p, q)) <= Grain }

// joined merges parts over shared sides while the result stays convex.
func joined(points []r2.Vec, parts [][]int) [][]r2.Vec {
	for i := 0; i < len(parts); i++ {
		for k := i + 1; k < len(parts); {
			whole, ok := merged(points, parts[i], parts[k])
			if !ok {
				k++
				continue
			}
			parts[i] = whole
			parts = append(parts[:k], parts[k+1:]...)
			k = i + 1 // what did not fit before may fit now
		}
	}
	rings := make([][]r2.Vec, 0, len(parts))
	for _, part := range parts {
		if ring := Tidy(ringOf(points, part)); ring != nil {
			rings = append(rings, ring)
		}
	}
	return rings
}

func ringOf(points []r2.Vec, part []int) []r2.Vec {
	ring := make([]r2.Vec, len(part))
	for i, k := range part {
		ring[i] = points[k]
	}
	return ring
}

// merged joins two parts over a side they share; not ok where there is none or a corner of the
// result would turn right.
func merged(points []r2.Vec, a, b []int) ([]int, bool) {
	for i := range a {
		from, to := a[i], a[(i+1)%len(a)]
		for k := range b {
			if b[k] != to || b[(k+1)%len(b)] != from {
				continue
			}
			whole := make([]int, 0, len(a)+len(b)-2)
			for j := range a {
				whole = append(whole, a[(i+1+j)%len(a)]) // to ... from
			}
			for j := 2; j < len(b); j++ {
				whole = append(whole, b[(k+j)%len(b)]) // between from and to
			}
			return whole, IsConvex(ringOf(points, whole))
		}
	}
	return nil, false
}
