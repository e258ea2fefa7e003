package plane

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
)

// ShortestPath is the shortest way from one point to another that enters none of some convex rings, given counter-clockwise, with
// every corner of it: the ends first and last. It may run along their edges. ok is false where there is no way. Ends that lie in a ring have none.
//
// The shortest way round the rings that are in the way of a shorter one is the shortest of all as soon as it enters none of the
// others, so rings far from it cost nothing.
func ShortestPath(from, to r2.Vec, rings [][]r2.Vec) (path []r2.Vec, ok bool) {
	var near [][]r2.Vec
	taken := make([]bool, len(rings))
	for {
		path, ok = wayRound(from, to, near)
		if !ok {
			return nil, false
		}
		met := false
		for i, ring := range rings {
			if !taken[i] && enters(path, ring) {
				taken[i], met = true, true
				near = append(near, ring)
			}
		}
		if !met {
			return path, true
		}
	}
}

// wayRound is the shortest way over the corners of all rings, by Dijkstra's algorithm.
func wayRound(from, to r2.Vec, rings [][]r2.Vec) (path []r2.Vec, ok bool) {
	at := []r2.Vec{from, to}
	for _, ring := range rings {
		at = append(at, ring...)
	}
	far, before, done := make([]float64, len(at)), make([]int, len(at)), make([]bool, len(at))
	for i := range far {
		far[i] = math.Inf(1)
	}
	far[0] = 0
	for {
		i := nearestLeft(far, done)
		if i < 0 {
			return nil, false
		}
		if i == 1 {
			return wayBack(at, before), true
		}
		done[i] = true
		for k := range at {
			if d := far[i] + r2.Norm(r2.Sub(at[k], at[i])); !done[k] && d < far[k] && isClear(at[i], at[k], rings) {
				far[k], before[k] = d, i
			}
		}
	}
}

// nearestLeft is the nearest point that is reached and not done; -1 where there is none.
func nearestLeft(far []float64, done []bool) int {
	best := -1
	for i := range far {
		if !done[i] && !math.IsInf(far[i], 1) && (best < 0 || far[i] < far[best]) {
			best = i
		}
	}
	return best
}

// wayBack follows the points from the second to the first.
func wayBack(at []r2.Vec, before []int) []r2.Vec {
	path := []r2.Vec{at[1]}
	for i := 1; i != 0; {
		i = before[i]
		if !SamePoint(at[i], path[len(path)-1]) {
			path = append(path, at[i])
		}
	}
	slices.Reverse(path)
	return path
}

func isClear(a, b r2.Vec, rings [][]r2.Vec) bool {
	return !slices.ContainsFunc(rings, func(ring []r2.Vec) bool { return Enters(a, b, ring) })
}

func enters(path, ring []r2.Vec) bool {
	for i := 1; i < len(path); i++ {
		if Enters(path[i-1], path[i], ring) {
			return true
		}
	}
	return false
}

// skin is how deep a line may be in a ring and still count as along its edge, m.
const skin = 1e-6

// Enters says whether the line from a to b runs through the inside of a convex ring, given counter-clockwise; along an edge it does not.
func Enters(a, b r2.Vec, ring []r2.Vec) bool {
	d := r2.Sub(b, a)
	near, far := 0.0, 1.0
	Edges(ring, func(l Line) bool {
		h, speed := l.Distance(a)-skin, r2.Dot(d, l.Normal)
		switch {
		case speed == 0 && h < 0:
			far = -1
		case speed > 0:
			near = max(near, -h/speed)
		case speed < 0:
			far = min(far, -h/speed)
		}
		return near < far
	})
	return near < far
}

// Grown is a convex ring, given counter-clockwise, with every edge moved outward by a distance, m, and the corners cut off at the same distance where they
// are sharp.
func Grown(ring []r2.Vec, by float64) []r2.Vec {
	var out []r2.Vec
	n := len(ring)
	for i, p := range ring {
		before, after := r2.Sub(p, ring[(i+n-1)%n]), r2.Sub(ring[(i+1)%n], p)
		if r2.Norm(before) == 0 || r2.Norm(after) == 0 {
			continue
		}
		a, b := outward(before), outward(after)
		middle := r2.Unit(r2.Add(a, b))
		// Two corners where the ring turns: both lie on the moved edges, and the line between them touches the circle about p.
		for _, edge := range [...]r2.Vec{a, b} {
			if t := r2.Dot(edge, middle); t < 1-1e-12 {
				along := r2.Sub(middle, r2.Scale(t, edge))
				out = append(out, r2.Add(p, r2.Add(r2.Scale(by, edge), r2.Scale(by*(1-t)/r2.Dot(along, along), along))))
			} else if edge == a {
				out = append(out, r2.Add(p, r2.Scale(by, a)))
			}
		}
	}
	return out
}

// outward is square to an edge of a counter-clockwise ring, away from it.
func outward(edge r2.Vec) r2.Vec { return r2.Unit(r2.Vec{X: edge.Y, Y: -edge.X}) }
