package carto

import (
	"gonum.org/v1/gonum/spatial/r2"
)

// rim is the boundary of the cells that have data at all four corners, as rings with the data on
// their left, cut into arcs where contours end on it.
type rim struct {
	arcs  []arc
	nodes []node
	at    map[place]int // index of the node at a place
}

// arc is a piece of the rim within one class of value. It ends at a node, or is a whole ring.
type arc struct {
	class  int
	points []r2.Vec // from its start up to, not including, its end
	end    int      // index into nodes; -1 for a whole ring
}

// place is where a contour of level k crosses edge e of the rim.
type place struct {
	e edge
	k int
}

// node is a place where a contour ends on the rim, between two arcs.
type node struct {
	place
	in, out int
}

// The ways along the lattice, counter-clockwise.
const (
	east = iota
	north
	west
	south
)

// way is the step in (i, j) of each.
var way = [4][2]int{east: {1, 0}, north: {0, 1}, west: {-1, 0}, south: {0, -1}}

// newRim walks the rim. The rings start at their lowest, leftmost point.
func newRim(t *tracer) *rim {
	r := &rim{at: map[place]int{}}
	leaves := t.rimWays()
	for n := range leaves {
		for leaves[n] != 0 {
			r.ring(t, leaves, n)
		}
	}
	return r
}

// hasAllCorners says whether the cell whose lower left point is (i, j) has data at its four corners.
func (t *tracer) hasAllCorners(i, j int) bool {
	nx := t.g.NX
	if i < 0 || j < 0 || i >= nx-1 || j >= t.g.NY-1 {
		return false
	}
	n := j*nx + i
	return max(t.class[n], t.class[n+1], t.class[n+nx], t.class[n+nx+1]) != noData
}

// rimWays returns, for each point of the lattice, the ways in which rim leaves it, as bits.
func (t *tracer) rimWays() []uint8 {
	nx, ny := t.g.NX, t.g.NY
	leaves := make([]uint8, nx*ny)
	for j := range ny {
		for i := range nx {
			n := j*nx + i
			here, below, before := t.hasAllCorners(i, j), t.hasAllCorners(i, j-1), t.hasAllCorners(i-1, j)
			switch {
			case here && !below:
				leaves[n] |= 1 << east
			case below && !here:
				leaves[n+1] |= 1 << west
			}
			switch {
			case before && !here:
				leaves[n] |= 1 << north
			case here && !before:
				leaves[n+nx] |= 1 << south
			}
		}
	}
	return leaves
}

// ring walks one ring from point start, and takes its ways out of leaves.
func (r *rim) ring(t *tracer, leaves []uint8, start int) {
	first, w := len(r.arcs), firstWay(leaves[start])
	r.arcs = append(r.arcs, arc{class: int(t.class[start]), points: []r2.Vec{t.g.place(start)}, end: -1})
	for n := start; ; {
		leaves[n] &^= 1 << w
		r.along(t, n, w)
		n += way[w][0] + t.g.NX*way[w][1]
		if n == start {
			break
		}
		turned := nextWay(leaves[n], w)
		if turned != w {
			r.last().points = append(r.last().points, t.g.place(n))
		}
		w = turned
	}
	if last := len(r.arcs) - 1; last > first { // it runs on into the first
		r.arcs[first].points = append(r.arcs[last].points, r.arcs[first].points...)
		r.nodes[len(r.nodes)-1].out = first
		r.arcs = r.arcs[:last]
	}
}

func (r *rim) last() *arc { return &r.arcs[len(r.arcs)-1] }

// firstWay returns the lowest way in the bits, of which there is one.
func firstWay(bits uint8) int {
	for w := range 4 {
		if bits>>w&1 != 0 {
			return w
		}
	}
	return 0
}

// nextWay returns the way on. Where two parts of the data touch at a point it turns left, which
// keeps them apart, as the contours do.
func nextWay(bits uint8, w int) int {
	for _, turn := range [...]int{1, 0, 3} {
		if v := (w + turn) % 4; bits>>v&1 != 0 {
			return v
		}
	}
	return w
}

// along starts a new arc at each contour that ends on the edge that leaves point n in way w.
func (r *rim) along(t *tracer, n, w int) {
	m := n + way[w][0] + t.g.NX*way[w][1]
	e := edge(2*min(n, m) + w&1) // odd ways run up or down
	from, to := int(t.class[n]), int(t.class[m])
	for c := from; c < to; c++ {
		r.cut(t, e, c, c+1)
	}
	for c := from; c > to; c-- {
		r.cut(t, e, c-1, c-1)
	}
}

// cut ends the last arc where level k crosses edge e, and starts one of the given class, which the next cut ends or which
// runs on into the first of its ring.
func (r *rim) cut(t *tracer, e edge, k, class int) {
	r.at[place{e, k}] = len(r.nodes)
	r.last().end = len(r.nodes)
	p, _ := t.crossing(e, k)
	r.nodes = append(r.nodes, node{place{e, k}, len(r.arcs) - 1, len(r.arcs)})
	r.arcs = append(r.arcs, arc{class: class, points: []r2.Vec{p}})
}

// join takes away the two neighbouring nodes a and b, a before b, and gives what lies between them
// the class of what lies on both sides.
func (r *rim) join(a, b int) {
	before, between, after := r.nodes[a].in, r.nodes[a].out, r.nodes[b].out
	points := append(r.arcs[before].points, r.arcs[between].points...)
	if before == after {
		r.arcs[before].points, r.arcs[before].end = points, -1
	} else {
		r.arcs[before].points = append(points, r.arcs[after].points...)
		r.arcs[before].end = r.arcs[after].end
		r.nodes[r.arcs[after].end].in = before
		r.arcs[after] = arc{class: -1, end: -1}
	}
	r.arcs[between] = arc{class: -1, end: -1}
}

// nodePoint returns where a node lies.
func (r *rim) nodePoint(i int) r2.Vec { return r.arcs[r.nodes[i].out].points[0] }
