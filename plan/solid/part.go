package solid

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// parallel is the sine below which a ray runs along a face: over 100 m it leaves the face by
// less than the thickness of an atom.
const parallel = 1e-12

// side is one bounding plane n·p = c with the solid where n·p < c; n is a unit vector. An owned
// side belongs to the solid (see Ties).
type side struct {
	n     r3.Vec
	c     float64
	owned bool
}

// outside says whether a point at height h over the side is out of the solid, within eps by
// the rule of ties.
func (s *side) outside(h, eps float64) bool { return h > eps || h >= -eps && !s.owned }

// part is a prism or a sheet made ready for rays.
type part struct {
	id     ID
	index  int  // in the set: prisms, then sheets
	sheet  bool // else a prism
	sides  []side
	bounds box
	n      r3.Vec // of a sheet: the front normal
	c      float64
	z0, z1 float64 // of a prism
	skins  [2]*Skin

	corners []r3.Vec // of a sheet: its ring; of a prism: where each side begins, at its foot, and again at its top
	middle  r3.Vec   // of the corners: inside
}

// owns is the rule of ties for an outward normal. The tolerance lets two neighbours that were
// turned by the same angle agree although their normals were rounded apart.
func owns(n r3.Vec) bool {
	const flat = 1e-9
	switch {
	case math.Abs(n.X) > flat:
		return n.X < 0
	case math.Abs(n.Y) > flat:
		return n.Y < 0
	}
	return n.Z < 0
}

// newSide is the plane through a and b whose outward normal is (b - a) x up, up a unit vector
// square to it. Both directions of an edge give the same plane to the last bit, apart from its
// sign, so that neighbours fit without a gap.
func newSide(a, b, up r3.Vec) (side, bool) {
	sign := 1.0
	if less(b, a) {
		a, b, sign = b, a, -1
	}
	n := r3.Cross(r3.Sub(b, a), up)
	length := r3.Norm(n)
	if !(length > 0) {
		return side{}, false
	}
	n = r3.Scale(1/length, n)
	c := sign * r3.Dot(n, a)
	n = r3.Scale(sign, n)
	return side{n: n, c: c, owned: owns(n)}, true
}

// less orders points by x, then y, then z.
func less(a, b r3.Vec) bool {
	switch {
	case a.X != b.X:
		return a.X < b.X
	case a.Y != b.Y:
		return a.Y < b.Y
	}
	return a.Z < b.Z
}

// ring makes the sides of a convex ring that runs counter-clockwise about up, and gives the corners where they
// begin: a corner that stands twice begins one side.
func ring(corners []r3.Vec, up r3.Vec) (sides []side, begins []r3.Vec) {
	for i, a := range corners {
		if s, ok := newSide(a, corners[(i+1)%len(corners)], up); ok {
			sides, begins = append(sides, s), append(begins, a)
		}
	}
	return sides, begins
}

// newell is the area vector of a polygon: its length is the area, its direction the side from
// which the corners run counter-clockwise.
func newell(corners []r3.Vec) r3.Vec {
	var sum r3.Vec
	for i := 1; i+1 < len(corners); i++ {
		sum = r3.Add(sum, r3.Cross(r3.Sub(corners[i], corners[0]), r3.Sub(corners[i+1], corners[0])))
	}
	return r3.Scale(0.5, sum)
}

// newPrism prepares p; not ok where it has no volume or is not a number.
func newPrism(p *Prism, index int) (part, bool) {
	t := part{id: p.ID, index: index, z0: p.Z0, z1: p.Z1, skins: [2]*Skin{&p.Skin, &p.Skin}, bounds: emptyBox()}
	corners := lift(p.Base)
	up := r3.Vec{Z: 1}
	if newell(corners).Z < 0 {
		up.Z = -1
	}
	var begins []r3.Vec
	t.sides, begins = ring(corners, up)
	for _, z := range [2]float64{p.Z0, p.Z1} {
		for _, c := range begins {
			t.corners = append(t.corners, r3.Vec{X: c.X, Y: c.Y, Z: z})
		}
	}
	t.span()
	return t, newell(corners).Z != 0 && p.Z0 < p.Z1 && finite(&t.bounds)
}

// newSheet prepares s; not ok where it has no area or is not a number.
func newSheet(s *Sheet, index int) (part, bool) {
	t := part{id: s.ID, index: index, sheet: true, skins: [2]*Skin{&s.Front, &s.Back}, bounds: emptyBox()}
	area := newell(s.Corners)
	size := r3.Norm(area)
	if !(size > 0) {
		return t, false
	}
	t.n = r3.Scale(1/size, area)
	t.c = r3.Dot(t.n, s.Corners[0])
	t.sides, t.corners = ring(s.Corners, t.n)
	t.span()
	return t, finite(&t.bounds)
}

// span finds the box and the middle of the corners.
func (p *part) span() {
	for _, c := range p.corners {
		p.bounds.add(c)
		p.middle = r3.Add(p.middle, r3.Scale(1/float64(len(p.corners)), c))
	}
}

// lift puts a ring of the plan at z = 0.
func lift(base []r2.Vec) []r3.Vec {
	up := make([]r3.Vec, len(base))
	for i, p := range base {
		up[i] = r3.Vec{X: p.X, Y: p.Y}
	}
	return up
}

// finite says whether a box has finite faces.
func finite(b *box) bool {
	for k := range b.lo {
		if d := b.hi[k] - b.lo[k]; math.IsNaN(d) || math.IsInf(d, 0) {
			return false
		}
	}
	return true
}

// clip returns the stretch of the ray, within 0..far, that lies inside the prism, and the normal
// of the face it enters by (nought where it starts inside). Only a stretch longer than eps is ok.
func (p *part) clip(r *ray, far, eps float64) (enter, leave float64, normal r3.Vec, ok bool) {
	leave = far
	if math.Abs(r.d.Z) <= parallel {
		if !(r.o.Z >= p.z0-eps && r.o.Z < p.z1-eps) {
			return 0, 0, normal, false
		}
	} else {
		inv := 1 / r.d.Z
		in, out := (p.z0-r.o.Z)*inv, (p.z1-r.o.Z)*inv
		face := r3.Vec{Z: -1}
		if in > out {
			in, out, face.Z = out, in, 1
		}
		if in > 0 {
			enter, normal = in, face
		}
		leave = min(leave, out)
	}
	for i := range p.sides {
		s := &p.sides[i]
		height := s.n.X*r.o.X + s.n.Y*r.o.Y - s.c
		slope := s.n.X*r.d.X + s.n.Y*r.d.Y
		switch {
		case math.Abs(slope) <= parallel:
			if s.outside(height, eps) {
				return 0, 0, normal, false
			}
		case slope < 0:
			if t := -height / slope; t > enter {
				enter, normal = t, s.n
			}
		default:
			leave = min(leave, -height/slope)
		}
		if leave-enter <= eps {
			return 0, 0, normal, false
		}
	}
	return enter, leave, normal, true
}

// cross returns the distance at which the ray passes through the sheet, strictly between its
// ends 0 and far, and whether it meets the front.
func (p *part) cross(r *ray, far, eps float64) (t float64, front, ok bool) {
	slope := r3.Dot(p.n, r.d)
	if math.Abs(slope) <= parallel {
		return 0, false, false
	}
	t = (p.c - r3.Dot(p.n, r.o)) / slope
	if !(t > eps && t < far-eps) {
		return 0, false, false
	}
	at := r.at(t)
	for i := range p.sides {
		s := &p.sides[i]
		if s.outside(r3.Dot(s.n, at)-s.c, eps) {
			return 0, false, false
		}
	}
	return t, slope < 0, true
}
