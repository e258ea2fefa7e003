package truth

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/solid"
)

// tree is a tree of boxes over faces.
type tree struct {
	faces []face // in the order of the leaves
	nodes []node
}

// node is a box with two nodes in it, the first after it and the second at other, or with count faces from first on.
type node struct {
	low, high    [3]float64
	first, other int32
	count        int32
	axis         int8
}

// mostInLeaf is how many faces a leaf holds.
const mostInLeaf = 3

func newTree(faces []face) *tree {
	t := &tree{faces: faces}
	if len(faces) > 0 {
		t.build(0, len(faces))
	}
	return t
}

// build makes the node of the faces from first up to end.
func (t *tree) build(first, end int) {
	here := len(t.nodes)
	t.nodes = append(t.nodes, node{first: int32(first), count: int32(end - first)})
	n := &t.nodes[here]
	n.low, n.high = bounds(t.faces[first:end])
	if end-first <= mostInLeaf {
		return
	}
	axis, middle := split(t.faces[first:end])
	n.axis, n.count = int8(axis), 0
	t.build(first, first+middle)
	t.nodes[here].other = int32(len(t.nodes))
	t.build(first+middle, end)
}

func bounds(faces []face) (low, high [3]float64) {
	low, high = faces[0].low, faces[0].high
	for i := range faces {
		for k := range 3 {
			low[k], high[k] = min(low[k], faces[i].low[k]), max(high[k], faces[i].high[k])
		}
	}
	return low, high
}

// split sorts faces along the axis, and gives the place, where rays are expected to have the least work.
func split(faces []face) (axis, middle int) {
	best := math.Inf(1)
	for k := range 3 {
		sortAlong(faces, k)
		cost := sweep(faces)
		for i, c := range cost {
			if c < best {
				best, axis, middle = c, k, i+1
			}
		}
	}
	sortAlong(faces, axis)
	return axis, middle
}

func sortAlong(faces []face, k int) {
	slices.SortStableFunc(faces, func(a, b face) int { return cmp.Compare(a.low[k]+a.high[k], b.low[k]+b.high[k]) })
}

// sweep gives for every place between faces what a split there costs: area times number on both sides.
func sweep(faces []face) []float64 {
	cost := make([]float64, len(faces)-1)
	low, high := faces[0].low, faces[0].high
	for i := range cost {
		low, high = joined(low, high, &faces[i])
		cost[i] = area(low, high) * float64(i+1)
	}
	low, high = faces[len(faces)-1].low, faces[len(faces)-1].high
	for i := len(cost) - 1; i >= 0; i-- {
		low, high = joined(low, high, &faces[i+1])
		cost[i] += area(low, high) * float64(len(faces)-1-i)
	}
	return cost
}

func joined(low, high [3]float64, f *face) (l, h [3]float64) {
	for k := range 3 {
		l[k], h[k] = min(low[k], f.low[k]), max(high[k], f.high[k])
	}
	return l, h
}

func area(low, high [3]float64) float64 {
	x, y, z := high[0]-low[0], high[1]-low[1], high[2]-low[2]
	return x*y + y*z + z*x
}

// ray is a ray made ready for boxes.
type ray struct {
	o, d     r3.Vec
	from     [3]float64
	inverse  [3]float64
	backward [3]bool
}

func newRay(o, d r3.Vec) ray {
	r := ray{o: o, d: d, from: [3]float64{o.X, o.Y, o.Z}, inverse: [3]float64{1 / d.X, 1 / d.Y, 1 / d.Z}}
	for k := range 3 {
		r.backward[k] = r.inverse[k] < 0
	}
	return r
}

// in says whether a ray is in a box before far.
func (r *ray) in(n *node, far float64) bool {
	near := 0.0
	for k := range 3 {
		a, b := (n.low[k]-r.from[k])*r.inverse[k], (n.high[k]-r.from[k])*r.inverse[k]
		if r.backward[k] {
			a, b = b, a
		}
		if a > near {
			near = a
		}
		if b < far {
			far = b
		}
	}
	return near <= far*(1+1e-12)
}

// deepest is how many nodes may wait while others are looked into.
const deepest = 96

// first finds the first face on a ray before far; nil where there is none. Of two at one place the earlier counts.
func (t *tree) first(o, d r3.Vec, far float64, skip []solid.ID) (at *face, distance float64, front bool) {
	distance = far
	r := newRay(o, d)
	var wait [deepest]int32
	depth := 0
	if len(t.nodes) > 0 {
		depth = 1
	}
	for depth > 0 {
		depth--
		here := wait[depth]
		n := &t.nodes[here]
		if !r.in(n, distance) {
			continue
		}
		if n.count == 0 {
			near, other := here+1, n.other
			if r.backward[n.axis] {
				near, other = other, near
			}
			wait[depth], wait[depth+1] = other, near
			depth += 2
			continue
		}
		for i := n.first; i < n.first+n.count; i++ {
			f := &t.faces[i]
			if s, before, ok := f.meets(o, d, distance); ok && (len(skip) == 0 || !slices.Contains(skip, f.id)) {
				at, distance, front = f, s, before
			}
		}
	}
	return at, distance, front
}

// blocked says whether any face lies on a ray before far.
func (t *tree) blocked(o, d r3.Vec, far float64, skip []solid.ID) bool {
	r := newRay(o, d)
	var wait [deepest]int32
	depth := 0
	if len(t.nodes) > 0 {
		depth = 1
	}
	for depth > 0 {
		depth--
		here := wait[depth]
		n := &t.nodes[here]
		if !r.in(n, far) {
			continue
		}
		if n.count == 0 {
			wait[depth], wait[depth+1] = n.other, here+1
			depth += 2
			continue
		}
		for i := n.first; i < n.first+n.count; i++ {
			f := &t.faces[i]
			if _, _, ok := f.meets(o, d, far); ok && (len(skip) == 0 || !slices.Contains(skip, f.id)) {
				return true
			}
		}
	}
	return false
}
