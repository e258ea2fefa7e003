package body

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// Two convex bodies are apart where some plane parts them, and such a plane lies along a face of one, or along an edge of each
// (the theorem of separating axes, S. Gottschalk, M. C. Lin and D. Manocha, OBBTree, 1996). Over all those axes the least overlap is
// the least move that parts them. A ball is met by the nearest place of the other.

// Hull is a piece made ready to be met: its corners, and the directions of its faces and edges.
type Hull struct {
	Piece
	Box     r3.Box // that holds it, m
	corners []r3.Vec
	normals []r3.Vec
	edges   []r3.Vec
}

// HullOf makes a piece ready.
func HullOf(p Piece) Hull {
	h := Hull{Piece: p, corners: p.Corners()}
	inf := math.Inf(1)
	h.Box = r3.Box{Min: r3.Vec{X: inf, Y: inf, Z: inf}, Max: r3.Vec{X: -inf, Y: -inf, Z: -inf}}
	for _, c := range h.corners {
		h.Box.Min = r3.Vec{X: min(h.Box.Min.X, c.X), Y: min(h.Box.Min.Y, c.Y), Z: min(h.Box.Min.Z, c.Z)}
		h.Box.Max = r3.Vec{X: max(h.Box.Max.X, c.X), Y: max(h.Box.Max.Y, c.Y), Z: max(h.Box.Max.Z, c.Z)}
	}
	for _, f := range p.Faces {
		h.normals = withAxis(h.normals, normalOf(f))
		for i, c := range f {
			h.edges = withAxis(h.edges, r3.Sub(f[(i+1)%len(f)], c))
		}
	}
	return h
}

// withAxis adds a direction, unless the list has it either way round, or it has no length.
func withAxis(all []r3.Vec, d r3.Vec) []r3.Vec {
	const same = 1 - 1e-12
	n := r3.Norm(d)
	if n < 1e-12 {
		return all
	}
	d = r3.Scale(1/n, d)
	for _, a := range all {
		if math.Abs(r3.Dot(a, d)) > same {
			return all
		}
	}
	return append(all, d)
}

// Apart says whether the boxes of two pieces are farther apart than a tolerance, m: below nought they overlap by less than that.
func (h *Hull) Apart(o *Hull, within float64) bool { return BoxesApart(&h.Box, &o.Box, within) }

// BoxesApart says whether two boxes are farther apart than so much, m.
func BoxesApart(a, b *r3.Box, within float64) bool {
	return a.Max.X < b.Min.X-within || b.Max.X < a.Min.X-within || a.Max.Y < b.Min.Y-within || b.Max.Y < a.Min.Y-within ||
		a.Max.Z < b.Min.Z-within || b.Max.Z < a.Min.Z-within
}

// Meeting is how one body lies in another.
type Meeting struct {
	Deep float64 // the least move that parts them, m; 0 or less: they are apart, by at most that
	Away r3.Vec  // the direction of that move of the first, a unit vector
}

// Meet says how one body lies in another.
func (h *Hull) Meet(o *Hull) Meeting {
	best := Meeting{Deep: math.Inf(1)}
	h.overlaps(o, func(axis r3.Vec, deep float64) bool {
		if deep < best.Deep {
			best = Meeting{deep, axis}
		}
		return deep > 0
	})
	return best
}

// Exit is how far the first of two bodies that lie in each other goes along a direction until it is out, m.
func (h *Hull) Exit(o *Hull, way r3.Vec) float64 {
	least := math.Inf(1)
	h.overlaps(o, func(axis r3.Vec, deep float64) bool {
		if deep <= 0 {
			least = 0
			return false
		}
		if speed := r3.Dot(axis, way); speed > 1e-9 {
			least = min(least, deep/speed)
		}
		return true
	})
	return least
}

// overlaps calls each with the directions that could part two bodies, and how far the first must go along one to be out, until it
// returns false.
func (h *Hull) overlaps(o *Hull, each func(axis r3.Vec, deep float64) bool) {
	try := func(axis r3.Vec) bool {
		a0, a1 := h.along(axis)
		b0, b1 := o.along(axis)
		return each(axis, b1-a0) && each(r3.Scale(-1, axis), a1-b0)
	}
	for _, axis := range h.axes(o) {
		if !try(axis) {
			return
		}
	}
}

// axes are the directions that could part two bodies.
func (h *Hull) axes(o *Hull) []r3.Vec {
	all := append(append([]r3.Vec(nil), h.normals...), o.normals...)
	for _, a := range h.edges {
		for _, b := range o.edges {
			all = withCross(all, a, b)
		}
	}
	for _, pair := range [2][2]*Hull{{h, o}, {o, h}} {
		if ball := pair[0]; ball.Radius > 0 {
			all = withAxis(all, r3.Sub(ball.Middle, pair[1].nearest(ball.Middle)))
		}
	}
	for _, flat := range [2]*Hull{h, o} { // sheets in one plane part along their edges
		if flat.Sheet && len(flat.normals) > 0 {
			for _, e := range flat.edges {
				all = withCross(all, e, flat.normals[0])
			}
		}
	}
	return all
}

// withCross adds the direction square to two others, unless they are parallel.
func withCross(all []r3.Vec, a, b r3.Vec) []r3.Vec {
	const parallel = 1e-6
	d := r3.Cross(a, b)
	n := r3.Norm(d)
	if n < parallel {
		return all
	}
	return append(all, r3.Scale(1/n, d))
}

// Gap is about how far two bodies are apart, m: from a corner, a middle or a face's middle of one to the nearest place of the other. Two edges
// that pass each other crosswise may be nearer. 0: they lie in each other.
func (h *Hull) Gap(o *Hull) float64 {
	if h.Meet(o).Deep > 0 {
		return 0
	}
	least := math.Inf(1)
	for _, pair := range [2][2]*Hull{{h, o}, {o, h}} {
		for _, p := range append(pair[0].corners, pair[0].Middle) {
			least = min(least, r3.Norm(r3.Sub(p, pair[1].nearest(p)))-pair[1].Radius)
		}
	}
	return max(0, least)
}

// along is from where to where a body reaches along a direction.
func (h *Hull) along(axis r3.Vec) (low, high float64) {
	if h.Radius > 0 {
		at := r3.Dot(axis, h.Middle)
		return at - h.Radius, at + h.Radius
	}
	low, high = math.Inf(1), math.Inf(-1)
	for _, c := range h.corners {
		d := r3.Dot(axis, c)
		low, high = min(low, d), max(high, d)
	}
	return low, high
}

// nearest is the place of a body's surface that is nearest to a point; of a ball its middle.
func (h *Hull) nearest(p r3.Vec) r3.Vec {
	if h.Radius > 0 {
		return h.Middle
	}
	best, least := p, math.Inf(1)
	for _, f := range h.Faces {
		at := nearestOn(f, p)
		if d := r3.Norm2(r3.Sub(at, p)); d < least {
			best, least = at, d
		}
	}
	return best
}

// nearestOn is the place of a flat convex face that is nearest to a point.
func nearestOn(face []r3.Vec, p r3.Vec) r3.Vec {
	n := normalOf(face)
	if size := r3.Norm(n); size > 0 {
		n = r3.Scale(1/size, n)
	}
	foot := r3.Sub(p, r3.Scale(r3.Dot(n, r3.Sub(p, face[0])), n))
	best, least, within := foot, math.Inf(1), true
	for i, a := range face {
		way := r3.Sub(face[(i+1)%len(face)], a)
		within = within && r3.Dot(n, r3.Cross(way, r3.Sub(foot, a))) >= 0
		t := 0.0
		if long := r3.Norm2(way); long > 0 {
			t = min(1, max(0, r3.Dot(way, r3.Sub(p, a))/long))
		}
		at := r3.Add(a, r3.Scale(t, way))
		if d := r3.Norm2(r3.Sub(at, p)); d < least {
			best, least = at, d
		}
	}
	if within {
		return foot
	}
	return best
}

// Moved is the same piece elsewhere.
func (h *Hull) Moved(by r3.Vec) Hull {
	out := *h
	out.Middle = r3.Add(h.Middle, by)
	out.Box = r3.Box{Min: r3.Add(h.Box.Min, by), Max: r3.Add(h.Box.Max, by)}
	out.corners = moved(h.corners, by)
	out.Faces = make([][]r3.Vec, len(h.Faces))
	for i := range h.Faces {
		out.Faces[i] = moved(h.Faces[i], by)
	}
	return out
}

func moved(all []r3.Vec, by r3.Vec) []r3.Vec {
	out := make([]r3.Vec, len(all))
	for i := range all {
		out[i] = r3.Add(all[i], by)
	}
	return out
}

// Around is the box that holds two boxes.
func Around(a, b r3.Box) r3.Box {
	return r3.Box{
		Min: r3.Vec{X: min(a.Min.X, b.Min.X), Y: min(a.Min.Y, b.Min.Y), Z: min(a.Min.Z, b.Min.Z)},
		Max: r3.Vec{X: max(a.Max.X, b.Max.X), Y: max(a.Max.Y, b.Max.Y), Z: max(a.Max.Z, b.Max.Z)},
	}
}
