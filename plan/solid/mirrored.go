package solid

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// Light that comes to a place by a mirror comes straight to the image of the place, through the mirror as through a hole:
// past what lies before the mirror, up to it, and past the images of the same behind it.

// MirrorReach is how far from a mirror, m, what it shows may lie: so far its plane is shut all round it.
const MirrorReach = 200.0

// frameID is that of what shuts the plane of a mirror; no other solid has it.
const frameID ID = math.MinInt32

// atMirror is how far, m, a corner may lie before a mirror and still count as in its plane.
const atMirror = 1e-7

// Through is the set as light meets it that comes to images of places by a mirror.
func (m *Mirror) Through(set *Set) *Set {
	out := &Set{}
	for i := range set.Prisms {
		m.addPrism(out, &set.Prisms[i])
	}
	for i := range set.Sheets {
		m.addSheet(out, &set.Sheets[i])
	}
	m.frame(out)
	return out
}

// addPrism adds what of a prism lies before the mirror, and the image of that.
func (m *Mirror) addPrism(out *Set, p *Prism) {
	low, high := m.reach(p)
	if high <= atMirror {
		return
	}
	upright, level := math.Abs(m.Plane.N.Z) < parallel, math.Abs(m.Plane.N.Z) > 1-parallel
	switch {
	case low >= -atMirror:
		out.Prisms = append(out.Prisms, *p)
	case upright:
		part := *p
		part.Base = m.cutBase(p.Base)
		p = &part
		out.Prisms = append(out.Prisms, part)
	default:
		m.addFaces(out, p)
		return
	}
	if !upright && !level {
		m.addFaceImages(out, p)
		return
	}
	image := *p
	if upright {
		image.Base = m.imageBase(p.Base)
	} else {
		image.Z0, image.Z1 = 2*m.Plane.C*m.Plane.N.Z-p.Z1, 2*m.Plane.C*m.Plane.N.Z-p.Z0
	}
	out.Prisms = append(out.Prisms, image)
}

// reach is how far a prism lies before the mirror, at least and at most.
func (m *Mirror) reach(p *Prism) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, corner := range lift(p.Base) {
		for _, z := range [2]float64{p.Z0, p.Z1} {
			over := m.Plane.Over(r3.Vec{X: corner.X, Y: corner.Y, Z: z})
			low, high = min(low, over), max(high, over)
		}
	}
	return low, high
}

// cutBase is what of the base of a prism lies before an upright mirror.
func (m *Mirror) cutBase(base []r2.Vec) (cut []r2.Vec) {
	for _, p := range m.Before(lift(base)) {
		cut = append(cut, r2.Vec{X: p.X, Y: p.Y})
	}
	return cut
}

// imageBase is the image of the base of a prism in an upright mirror.
func (m *Mirror) imageBase(base []r2.Vec) (image []r2.Vec) {
	for _, p := range m.Images(lift(base)) {
		image = append(image, r2.Vec{X: p.X, Y: p.Y})
	}
	return image
}

// addFaces adds the faces of a prism that a leaning mirror cuts: what is left of it is no prism.
func (m *Mirror) addFaces(out *Set, p *Prism) {
	for _, s := range facesOf(p) {
		m.addSheet(out, &s)
	}
}

// addFaceImages adds the images of the faces of a prism before a leaning mirror.
func (m *Mirror) addFaceImages(out *Set, p *Prism) {
	for _, s := range facesOf(p) {
		s.Corners = m.Images(s.Corners)
		out.Sheets = append(out.Sheets, s)
	}
}

// facesOf are the faces of a prism as sheets.
func facesOf(p *Prism) (all []Sheet) {
	n := len(p.Base)
	low, high := lift(p.Base), lift(p.Base)
	for i := range n {
		low[i].Z, high[i].Z = p.Z0, p.Z1
	}
	skin := Skin{Reflect: p.Skin.Reflect}
	add := func(corners []r3.Vec) {
		all = append(all, Sheet{ID: p.ID, Name: p.Name, Corners: corners, Front: skin, Back: skin})
	}
	for i := range n {
		k := (i + 1) % n
		add([]r3.Vec{low[i], low[k], high[k], high[i]})
	}
	add(high)
	add(reversed(low))
	return all
}

// addSheet adds what of a sheet lies before the mirror, and the image of that.
func (m *Mirror) addSheet(out *Set, s *Sheet) {
	part := *s
	if part.Corners = m.Before(s.Corners); part.Corners == nil {
		return
	}
	out.Sheets = append(out.Sheets, part)
	part.Corners = m.Images(part.Corners)
	out.Sheets = append(out.Sheets, part)
}

// Before is what of a figure lies before the mirror; nil where nothing does.
func (m *Mirror) Before(figure []r3.Vec) []r3.Vec {
	cut, far := clip(nil, figure, &m.Plane, 1)
	if far <= atMirror {
		return nil
	}
	return cut
}

// frame shuts the plane of the mirror all round it: what lies outside of any of its sides, as far as it reaches.
func (m *Mirror) frame(out *Set) {
	for i, a := range m.Corners {
		b := m.Corners[(i+1)%len(m.Corners)]
		side := r3.Sub(b, a)
		length := r3.Norm(side)
		if length == 0 {
			continue
		}
		along := r3.Scale(MirrorReach/length, side)
		outward := r3.Cross(along, m.Plane.N)
		a, b = r3.Sub(a, along), r3.Add(b, along)
		out.Sheets = append(out.Sheets, Sheet{ID: frameID, Name: "frame", Corners: []r3.Vec{a, r3.Add(a, outward), r3.Add(b, outward), b}})
	}
}
