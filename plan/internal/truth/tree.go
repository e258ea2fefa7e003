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
	nodes []node // the first is the root
}

// node is two boxes and what is in them.
type node struct{ child [2]child }

// child is a box with a node in it, or with count faces from first on.
type child struct {
	low, high    [3]float64
	first, count int32
}

// maxInLeaf is how many faces a box holds undivided.
const maxInLeaf = 2

func newTree(faces []face) *tree {
	t := &tree{faces: faces}
	if len(faces) > 0 {
		t.nodes = make([]node, 1)
		whole := t.box(0, len(faces))
		if whole.count == 0 {
			t.nodes[0] = t.nodes[whole.first]
		} else {
			t.nodes[0].child[0], t.nodes[0].child[1] = whole, nothing()
		}
	}
	return t
}

// nothing is a box that no ray is in.
func nothing() child {
	inf := math.Inf(1)
	return child{low: [3]float64{inf, inf, inf}, high: [3]float64{-inf, -inf, -inf}}
}

// box makes the box of the faces from first up to end, and the nodes in it.
func (t *tree) box(first, end int) child {
	c := child{first: int32(first), count: int32(end - first)}
	c.low, c.high = bounds(t.faces[first:end])
	if end-first <= maxInLeaf {
		return c
	}
	middle := first + split(t.faces[first:end])
	n := node{[2]child{t.box(first, middle), t.box(middle, end)}}
	c.first, c.count = int32(len(t.nodes)), 0
	t.nodes = append(t.nodes, n)
	return c
}

func bounds(faces []face) (low, high [3]float64) {
	low, high = faces[0].low, faces[0].high
	for i := range faces {
		low, high = joined(low, high, &faces[i])
	}
	return low, high
}

// split sorts faces along the axis, and gives the place, where rays are expected to have the least work.
func split(faces []face) (middle int) {
	best, axis := math.Inf(1), 0
	for k := range 3 {
		sortAlong(faces, k)
		for i, c := range sweep(faces) {
			if c < best {
				best, axis, middle = c, k, i+1
			}
		}
	}
	sortAlong(faces, axis)
	return middle
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
	o, d    r3.Vec
	inverse r3.Vec
}

func newRay(o, d r3.Vec) ray {
	return ray{o, d, r3.Vec{X: 1 / d.X, Y: 1 / d.Y, Z: 1 / d.Z}}
}

// in says where a ray enters a box, if it does before far. Boxes stand off from what they hold, so that a
// ray in the plane of a side, of which nothing is known, may pass.
func (r *ray) in(c *child, far float64) (near float64, ok bool) {
	x0, x1 := (c.low[0]-r.o.X)*r.inverse.X, (c.high[0]-r.o.X)*r.inverse.X
	if r.inverse.X < 0 {
		x0, x1 = x1, x0
	}
	y0, y1 := (c.low[1]-r.o.Y)*r.inverse.Y, (c.high[1]-r.o.Y)*r.inverse.Y
	if r.inverse.Y < 0 {
		y0, y1 = y1, y0
	}
	z0, z1 := (c.low[2]-r.o.Z)*r.inverse.Z, (c.high[2]-r.o.Z)*r.inverse.Z
	if r.inverse.Z < 0 {
		z0, z1 = z1, z0
	}
	near = max(x0, y0, z0, 0)
	return near, near <= min(x1, y1, z1, far)
}

// deepest is how many nodes may wait while others are looked into.
const deepest = 64

// waiting are nodes that are yet to be looked into, and where the ray enters them.
type waiting struct {
	node  [deepest]int32
	near  [deepest]float64
	depth int
}

func (w *waiting) push(node int32, near float64) {
	w.node[w.depth], w.near[w.depth] = node, near
	w.depth++
}

// first finds the first face on a ray before far; nil where there is none.
func (t *tree) first(o, d r3.Vec, far float64, skip []solid.ID) (at *face, distance float64, front bool) {
	distance = far
	if len(t.nodes) == 0 {
		return at, distance, front
	}
	r := newRay(o, d)
	var wait waiting
	wait.push(0, 0)
	for wait.depth > 0 {
		wait.depth--
		if wait.near[wait.depth] > distance {
			continue
		}
		n := &t.nodes[wait.node[wait.depth]]
		var near [2]float64
		var in [2]bool
		for k := range n.child {
			c := &n.child[k]
			near[k], in[k] = r.in(c, distance)
			if !in[k] || c.count == 0 {
				continue
			}
			in[k] = false
			for i := c.first; i < c.first+c.count; i++ {
				f := &t.faces[i]
				if s, before, ok := f.meets(o, d, distance); ok && (len(skip) == 0 || !slices.Contains(skip, f.id)) {
					at, distance, front = f, s, before
				}
			}
		}
		later := 1
		if near[0] > near[1] {
			later = 0
		}
		for _, k := range [2]int{later, 1 - later} {
			if in[k] {
				wait.push(n.child[k].first, near[k])
			}
		}
	}
	return at, distance, front
}

// blocked says whether any face lies on a ray before far.
func (t *tree) blocked(o, d r3.Vec, far float64, skip []solid.ID) bool {
	if len(t.nodes) == 0 {
		return false
	}
	r := newRay(o, d)
	var wait waiting
	wait.push(0, 0)
	for wait.depth > 0 {
		wait.depth--
		n := &t.nodes[wait.node[wait.depth]]
		for k := range n.child {
			c := &n.child[k]
			near, in := r.in(c, far)
			switch {
			case !in:
			case c.count == 0:
				wait.push(c.first, near)
			case t.meetsAny(c, o, d, far, skip):
				return true
			}
		}
	}
	return false
}

// meetsAny says whether a ray meets any face of a box.
func (t *tree) meetsAny(c *child, o, d r3.Vec, far float64, skip []solid.ID) bool {
	for i := c.first; i < c.first+c.count; i++ {
		f := &t.faces[i]
		if _, _, ok := f.meets(o, d, far); ok && (len(skip) == 0 || !slices.Contains(skip, f.id)) {
			return true
		}
	}
	return false
}
