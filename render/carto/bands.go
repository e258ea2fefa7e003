package carto

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// Band is the region where the field is at least Low and less than High. Its rings are to be
// filled by the non-zero rule: outer ones run counter-clockwise, holes clockwise. Where lines
// bound it, it has their very points.
type Band struct {
	Low, High float64    // levels, lx, or in whatever unit the field has; -Inf and +Inf at the ends
	Rings     [][]r2.Vec // in units of the lattice, or mm once they are on paper
}

// Steps returns, lowest first, the regions at or over each band's Low, one inside the other. When
// they are painted in order no seam shows between two tints, which edges that merely touch leave
// in renderers that smooth edges.
func (r *Relief) Steps() []Band {
	steps := make([]Band, 0, len(r.Levels)+1)
	for c := range len(r.Levels) + 1 {
		low, _ := r.limits(c)
		steps = append(steps, Band{Low: low, High: math.Inf(1), Rings: r.region(c, len(r.Levels))})
	}
	return steps
}

// limits returns the values between which class c lies.
func (r *Relief) limits(c int) (low, high float64) {
	low, high = math.Inf(-1), math.Inf(1)
	if c > 0 {
		low = r.Levels[c-1]
	}
	if c < len(r.Levels) {
		high = r.Levels[c]
	}
	return low, high
}

// region returns the rings around classes from to to.
func (r *Relief) region(from, to int) [][]r2.Vec {
	if r.t == nil {
		return nil
	}
	r.makeRim()
	w := walk{relief: r, from: from, to: to, seen: make([]bool, len(r.rim.arcs)), line: r.lineEnds()}
	var rings [][]r2.Vec
	for a := range r.rim.arcs {
		if ring := w.ring(a); len(ring) >= 3 {
			rings = append(rings, ring)
		}
	}
	for _, l := range r.Lines {
		switch {
		case l.Closed && l.Index == from-1:
			rings = append(rings, l.Points)
		case l.Closed && l.Index == to:
			rings = append(rings, reversed(l.Points))
		}
	}
	return rings
}

// lineEnds returns the line that has an end at each node of the rim.
func (r *Relief) lineEnds() []int {
	at := make([]int, len(r.rim.nodes))
	for i, l := range r.Lines {
		if edges := r.chain[i].edges; !l.Closed {
			at[r.rim.at[place{edges[0], l.Index}]] = i
			at[r.rim.at[place{edges[len(edges)-1], l.Index}]] = i
		}
	}
	return at
}

// walk goes round a region of classes from to to, with the region on its left: along the rim, and
// where that leaves the region, along the contour that ends there.
//
// Where the rim is walked with the region on the left, a contour of level from-1 starts where the
// rim leaves the region, and is followed forward; one of level to ends there, and is followed back.
type walk struct {
	relief   *Relief
	from, to int
	seen     []bool // arcs
	line     []int  // by node
}

// ring returns the ring of the region that passes along arc a, nil where there is none or it was
// walked before.
func (w *walk) ring(a int) (ring []r2.Vec) {
	rim := w.relief.rim
	for class := rim.arcs[a].class; !w.seen[a] && class >= w.from && class <= w.to; {
		w.seen[a] = true
		ring = append(ring, rim.arcs[a].points...)
		if rim.arcs[a].end < 0 {
			break
		}
		at := rim.arcs[a].end
		if k := rim.nodes[at].k; k == w.from-1 || k == w.to {
			var points []r2.Vec
			points, at = w.across(at)
			ring = append(ring, points...)
		}
		a = rim.nodes[at].out
	}
	return ring
}

// across returns the points of the contour that ends at a node, away from it and without its far
// end, and the node at that end.
func (w *walk) across(at int) ([]r2.Vec, int) {
	r := w.relief
	i := w.line[at]
	l, edges := r.Lines[i], r.chain[i].edges
	points, far := l.Points, edges[len(edges)-1]
	if l.Index == w.to {
		points, far = reversed(points), edges[0]
	}
	return points[:len(points)-1], r.rim.at[place{far, l.Index}]
}

func reversed(points []r2.Vec) []r2.Vec {
	out := make([]r2.Vec, len(points))
	for i, p := range points {
		out[len(points)-1-i] = p
	}
	return out
}
