package solid

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"
)

// Plane is a half-space: the points p with N·p <= C. N is a unit vector.
type Plane struct {
	N r3.Vec
	C float64
}

// Over is the height of a point over the plane, out of the half-space, m.
func (h *Plane) Over(p r3.Vec) float64 { return h.N.X*p.X + h.N.Y*p.Y + h.N.Z*p.Z - h.C }

// span is how far the lowest and the highest corner of a figure lie over the plane, m.
func (h *Plane) span(corners []r3.Vec) (low, high float64) {
	low = h.Over(corners[0])
	high = low
	for _, c := range corners[1:] {
		over := h.Over(c)
		if over < low {
			low = over
		}
		if over > high {
			high = over
		}
	}
	return low, high
}

// mostPlanes is how many planes can bound the shaft between two polygons of four corners.
const mostPlanes = 20

// Shaft is the convex hull of two small convex polygons, either of which may be a single point, as an
// intersection of half-spaces: what lies outside of it cannot come between them.
type Shaft struct {
	planes [mostPlanes]Plane
	count  int
	box    box
}

// NewShaft makes the shaft between two convex polygons.
func NewShaft(a, c []r3.Vec) (s Shaft) {
	s = NewBoxShaft(a, c)
	s.support(a, c)
	s.support(c, a)
	return s
}

// NewBoxShaft is a shaft of which nothing is known but that it lies in the box round some points.
func NewBoxShaft(points ...[]r3.Vec) (s Shaft) {
	s.box = emptyBox()
	for _, some := range points {
		for _, p := range some {
			s.box.add(p)
		}
	}
	return s
}

// Bound leaves out what lies wholly outside of one more half-space.
func (s *Shaft) Bound(h Plane) {
	if s.count < mostPlanes {
		s.planes[s.count] = h
		s.count++
	}
}

// support finds the planes through an edge of one polygon and a corner of the other that have both polygons
// on one side.
func (s *Shaft) support(edges, corners []r3.Vec) {
	if len(edges) < 2 {
		return
	}
	for i, a := range edges {
		along := r3.Sub(edges[(i+1)%len(edges)], a)
		for _, c := range corners {
			n := r3.Cross(along, r3.Sub(c, a))
			length := math.Sqrt(r3.Norm2(n))
			if !(length > 1e-12) {
				continue
			}
			n = r3.Scale(1/length, n)
			if s.boundBySupport(Plane{n, r3.Dot(n, a)}, edges, corners) {
				break
			}
		}
	}
}

// boundBySupport bounds the shaft by a plane that has two polygons on one side. Where they lie on both sides it does not,
// and says so.
func (s *Shaft) boundBySupport(h Plane, a, c []r3.Vec) bool {
	low, high := h.span(a)
	otherLow, otherHigh := h.span(c)
	switch low, high = min(low, otherLow), max(high, otherHigh); {
	case high <= touching:
		s.Bound(h)
	case low >= -touching:
		s.Bound(Plane{r3.Scale(-1, h.N), -h.C})
	default:
		return false
	}
	return true
}

// touching is the distance, m, within which a corner counts as lying in a plane.
const touching = 1e-9

// Between appends the parts of the set that may reach into a shaft, those in skip left out, in the order of the
// set. A part is a number by which Shadow and Passing know a solid.
func (b *BVH) Between(s *Shaft, skip []ID, found []int32) []int32 {
	if len(b.nodes) == 0 {
		return found
	}
	first := len(found)
	var todo [stack]int32
	top := 1
	for top > 0 {
		top--
		at := todo[top]
		n := &b.nodes[at]
		if !s.box.touches(&n.bounds) || s.misses(&n.bounds) {
			continue
		}
		if n.count == 0 {
			todo[top], todo[top+1] = n.first, at+1
			top += 2
			continue
		}
		found = b.leafBetween(n, s, skip, found)
	}
	b.sortByIndex(found[first:])
	return found
}

// Among appends those of some parts of the set whose boxes touch the box of a shaft. It is for many shafts inside of one that
// Between was asked for.
func (b *BVH) Among(s *Shaft, parts, found []int32) []int32 {
	for _, i := range parts {
		if s.box.touches(&b.parts[i].bounds) {
			found = append(found, i)
		}
	}
	return found
}

// leafBetween is Between for the parts of one leaf.
func (b *BVH) leafBetween(n *node, s *Shaft, skip []ID, found []int32) []int32 {
	for i := n.first; i < n.first+n.count; i++ {
		if p := &b.parts[i]; s.box.touches(&p.bounds) && !s.missesPart(p) && !slices.Contains(skip, p.id) {
			found = append(found, i)
		}
	}
	return found
}

// sortByIndex puts parts in the order of the set: they are few, and often in order already.
func (b *BVH) sortByIndex(parts []int32) {
	for i := 1; i < len(parts); i++ {
		for k := i; k > 0 && b.parts[parts[k]].index < b.parts[parts[k-1]].index; k-- {
			parts[k], parts[k-1] = parts[k-1], parts[k]
		}
	}
}

// touches says whether two boxes share a point.
func (b *box) touches(c *box) bool {
	return b.lo[0] <= c.hi[0] && c.lo[0] <= b.hi[0] && b.lo[1] <= c.hi[1] && c.lo[1] <= b.hi[1] && b.lo[2] <= c.hi[2] && c.lo[2] <= b.hi[2]
}

// misses says whether a box lies wholly outside of one of the planes.
func (s *Shaft) misses(b *box) bool {
	for i := range s.count {
		h := &s.planes[i]
		x, y, z := b.lo[0], b.lo[1], b.lo[2] // the corner that lies deepest
		if h.N.X < 0 {
			x = b.hi[0]
		}
		if h.N.Y < 0 {
			y = b.hi[1]
		}
		if h.N.Z < 0 {
			z = b.hi[2]
		}
		if h.N.X*x+h.N.Y*y+h.N.Z*z >= h.C {
			return true
		}
	}
	return false
}

// missesPart says whether a part lies wholly outside of one of the planes.
func (s *Shaft) missesPart(p *part) bool {
	for i := range s.count {
		h := &s.planes[i]
		if !slices.ContainsFunc(p.corners, func(c r3.Vec) bool { return h.Over(c) < -touching }) {
			return true
		}
	}
	return false
}
