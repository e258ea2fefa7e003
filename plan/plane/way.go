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
	w := &wayfinder{}
	w.addNode(wayNode{at: from})
	w.addNode(wayNode{at: to})
	boxes, taken := make([]r2.Box, len(rings)), make([]bool, len(rings))
	for i, ring := range rings {
		boxes[i] = Bounds(ring)
	}
	for {
		path, ok = w.find()
		if !ok {
			return nil, false
		}
		met := false
		for i, ring := range rings {
			if !taken[i] && enters(path, ring, boxes[i]) {
				taken[i], met = true, true
				w.add(ring, boxes[i])
			}
		}
		if !met {
			return path, true
		}
	}
}

// wayfinder looks for a way over the corners of rings.
type wayfinder struct {
	rings [][]r2.Vec
	boxes []r2.Box
	nodes []wayNode // the ends of the way, then the corners
	clear [][]int   // by node and an earlier one: how many of the rings do not cut what joins them; blocked: some ring does
}

// blocked is of two nodes that no shortest way joins, whatever rings come.
const blocked = -1

// wayNode is a place where a way may bend: a corner of a ring, between the one before it and the one after it.
type wayNode struct {
	at, before, after r2.Vec
	corner            bool
}

func (w *wayfinder) add(ring []r2.Vec, b r2.Box) {
	w.rings, w.boxes = append(w.rings, ring), append(w.boxes, b)
	n := len(ring)
	for i, p := range ring {
		w.addNode(wayNode{p, ring[(i+n-1)%n], ring[(i+1)%n], true})
	}
}

func (w *wayfinder) addNode(n wayNode) {
	w.clear = append(w.clear, make([]int, len(w.nodes)))
	w.nodes = append(w.nodes, n)
}

// find is the shortest way over the corners of all rings, by the algorithm A* with the distance to the end as the crow flies.
func (w *wayfinder) find() (path []r2.Vec, ok bool) {
	far, before, done := make([]float64, len(w.nodes)), make([]int, len(w.nodes)), make([]bool, len(w.nodes))
	for i := range far {
		far[i] = math.Inf(1)
	}
	far[0] = 0
	for {
		i := w.nearestLeft(far, done)
		if i < 0 {
			return nil, false
		}
		if i == 1 {
			return w.wayBack(before), true
		}
		done[i] = true
		for k := range w.nodes {
			if done[k] || w.clear[max(i, k)][min(i, k)] == blocked {
				continue
			}
			if d := far[i] + r2.Norm(r2.Sub(w.nodes[k].at, w.nodes[i].at)); d < far[k] && w.joins(i, k) {
				far[k], before[k] = d, i
			}
		}
	}
}

// nearestLeft is the node that is reached and not done by which the way to the end would be shortest; -1 where there is none.
func (w *wayfinder) nearestLeft(far []float64, done []bool) int {
	best, least := -1, math.Inf(1)
	for i := range far {
		if done[i] || math.IsInf(far[i], 1) {
			continue
		}
		if sum := far[i] + r2.Norm(r2.Sub(w.nodes[1].at, w.nodes[i].at)); sum < least {
			best, least = i, sum
		}
	}
	return best
}

// joins says whether a shortest way may go straight from one node to another: it touches the rings of both, and enters none. Of two
// nodes that were asked for before, the rings that have come since are looked at alone.
func (w *wayfinder) joins(i, k int) bool {
	a, b, known := &w.nodes[i], &w.nodes[k], &w.clear[max(i, k)][min(i, k)]
	if *known == 0 && !(a.touchedFrom(b.at) && b.touchedFrom(a.at)) {
		*known = blocked
	}
	if *known == blocked || !isClear(a.at, b.at, w.rings[*known:], w.boxes[*known:]) {
		*known = blocked
		return false
	}
	*known = len(w.rings)
	return true
}

// touchedFrom says whether the line from a point to the corner only touches its ring, so that both corners beside it lie to one side: a
// taut line bends at no other.
func (n *wayNode) touchedFrom(p r2.Vec) bool {
	if !n.corner {
		return true
	}
	d := r2.Sub(n.at, p)
	before, after := r2.Cross(d, r2.Sub(n.before, n.at)), r2.Cross(d, r2.Sub(n.after, n.at))
	slip := skin * (math.Abs(d.X) + math.Abs(d.Y))
	return before > -slip && after > -slip || before < slip && after < slip
}

// wayBack follows the nodes from the second to the first.
func (w *wayfinder) wayBack(before []int) []r2.Vec {
	path := []r2.Vec{w.nodes[1].at}
	for i := 1; i != 0; {
		i = before[i]
		if at := w.nodes[i].at; !SamePoint(at, path[len(path)-1]) {
			path = append(path, at)
		}
	}
	slices.Reverse(path)
	return path
}

func isClear(a, b r2.Vec, rings [][]r2.Vec, boxes []r2.Box) bool {
	for i, ring := range rings {
		if mayMeet(a, b, &boxes[i]) && Enters(a, b, ring) {
			return false
		}
	}
	return true
}

// mayMeet says whether a line may enter what lies in a box: it does not lie all on one side of it.
func mayMeet(a, b r2.Vec, in *r2.Box) bool {
	return min(a.X, b.X) < in.Max.X && max(a.X, b.X) > in.Min.X && min(a.Y, b.Y) < in.Max.Y && max(a.Y, b.Y) > in.Min.Y
}

func enters(path, ring []r2.Vec, in r2.Box) bool {
	for i := 1; i < len(path); i++ {
		if mayMeet(path[i-1], path[i], &in) && Enters(path[i-1], path[i], ring) {
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
