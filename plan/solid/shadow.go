package solid

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
)

// Shade says how much a solid hides from a point.
type Shade uint8

// The shades.
const (
	NoShade    Shade = iota
	SomeShade        // what lies within all planes
	WholeShade       // everything: the point lies inside
)

// Shadow appends to dst the half-spaces whose intersection is the shadow that a part of Between throws from a
// point: all places that the part hides from it. They are the planes through the point and the edges of the
// outline that the part shows, and those of the faces that it shows.
func (b *BVH) Shadow(number int32, from r3.Vec, dst []Plane) ([]Plane, Shade) {
	p := &b.parts[number]
	if p.sheet {
		return p.behindSheet(from, b.epsilon, dst)
	}
	return p.behindPrism(from, b.epsilon, dst)
}

// Opaque says whether a part stops all light on its way between a point and its far side: away from the point, or
// toward it.
func (b *BVH) Opaque(number int32, at r3.Vec, toward bool) bool {
	p := &b.parts[number]
	if !p.sheet {
		return true
	}
	front := r3.Dot(p.n, at) > p.c
	return p.skin(front != toward).Direct == colour.RGB{}
}

// behindSheet is the shadow of a sheet.
func (p *part) behindSheet(from r3.Vec, eps float64, dst []Plane) ([]Plane, Shade) {
	n, c := p.n, p.c
	height := r3.Dot(n, from) - c
	switch {
	case height > eps: // the far side lies below
	case height < -eps:
		n, c = r3.Scale(-1, n), -c
	default:
		return dst, NoShade
	}
	for i, a := range p.corners {
		dst = edgePlane(dst, from, a, p.corners[(i+1)%len(p.corners)], p.middle)
	}
	return append(dst, Plane{n, c}), SomeShade
}

// behindPrism is the shadow of a prism. A face in whose plane the point lies counts as shown, so that a
// point on a prism is not taken to lie inside.
func (p *part) behindPrism(from r3.Vec, eps float64, dst []Plane) ([]Plane, Shade) {
	first := len(dst)
	n := len(p.sides)
	top, foot := from.Z >= p.z1-eps, from.Z <= p.z0+eps
	was := p.sides[n-1].shows(from, eps)
	for i := range n {
		is := p.sides[i].shows(from, eps)
		a, c := p.corners[i], p.corners[(i+1)%n]
		up, over := p.corners[n+i], p.corners[n+(i+1)%n]
		if is != was {
			dst = edgePlane(dst, from, a, up, p.middle)
		}
		if is != top {
			dst = edgePlane(dst, from, up, over, p.middle)
		}
		if is != foot {
			dst = edgePlane(dst, from, a, c, p.middle)
		}
		if is {
			dst = append(dst, Plane{p.sides[i].n, p.sides[i].c})
		}
		was = is
	}
	if top {
		dst = append(dst, Plane{r3.Vec{Z: 1}, p.z1})
	}
	if foot {
		dst = append(dst, Plane{r3.Vec{Z: -1}, -p.z0})
	}
	if len(dst) == first {
		return dst, WholeShade
	}
	return dst, SomeShade
}

// shows says whether a point lies before an upright side, or in its plane.
func (s *side) shows(from r3.Vec, eps float64) bool { return s.n.X*from.X+s.n.Y*from.Y-s.c >= -eps }

// edgePlane appends the plane through a point and an edge, with a place inside the solid within. It appends nothing
// where the point lies on the line of the edge.
func edgePlane(dst []Plane, from, a, c, inside r3.Vec) []Plane {
	n := r3.Cross(r3.Sub(a, from), r3.Sub(c, from))
	length := math.Sqrt(r3.Norm2(n))
	if !(length > 1e-14) {
		return dst
	}
	n = r3.Scale(1/length, n)
	if r3.Dot(n, r3.Sub(inside, from)) > 0 {
		n = r3.Scale(-1, n)
	}
	return append(dst, Plane{n, r3.Dot(n, from)})
}

// Body appends to dst the half-spaces whose intersection is the part itself; not ok for a sheet, which has no
// inside.
func (b *BVH) Body(number int32, dst []Plane) ([]Plane, bool) {
	p := &b.parts[number]
	if p.sheet {
		return dst, false
	}
	for i := range p.sides {
		dst = append(dst, Plane{p.sides[i].n, p.sides[i].c})
	}
	return append(dst, Plane{r3.Vec{Z: 1}, p.z1}, Plane{r3.Vec{Z: -1}, -p.z0}), true
}
