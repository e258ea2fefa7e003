package solid

import (
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
)

// Mirror is a side of a flat sheet that mirrors light. Before it lies what it can show.
type Mirror struct {
	ID      ID
	Corners []r3.Vec   // m, counter-clockwise from before it
	Plane   Plane      // what lies behind it: N looks out of the mirror
	Factor  colour.RGB // what is mirrored of the light on it
}

// Specular is what a side of a sheet mirrors. What light passes straight does not mirror, and neither do prisms.
func (s *Skin) Specular() colour.RGB {
	if s.Mirror == 0 || s.Clear() {
		return colour.RGB{}
	}
	return s.Reflect.Scale(s.Mirror)
}

// Matt is what a side of a sheet reflects diffusely.
func (s *Skin) Matt() colour.RGB {
	if s.Mirror == 0 || s.Clear() {
		return s.Reflect
	}
	return s.Reflect.Scale(1 - s.Mirror)
}

// Mirrors returns the sides of sheets that mirror, in the order of the set.
func (s *Set) Mirrors() (all []Mirror) {
	for i := range s.Sheets {
		sheet := &s.Sheets[i]
		if f := sheet.Front.Specular(); f != (colour.RGB{}) {
			all = addMirror(all, sheet.ID, sheet.Corners, f)
		}
		if f := sheet.Back.Specular(); f != (colour.RGB{}) {
			all = addMirror(all, sheet.ID, reversed(sheet.Corners), f)
		}
	}
	return all
}

// addMirror adds a mirror, where its corners span one.
func addMirror(all []Mirror, id ID, corners []r3.Vec, factor colour.RGB) []Mirror {
	area := newell(corners)
	size := r3.Norm(area)
	if !(size > 0) {
		return all
	}
	n := r3.Scale(1/size, area)
	return append(all, Mirror{ID: id, Corners: corners, Plane: Plane{N: n, C: r3.Dot(n, Centre(corners))}, Factor: factor})
}

// Image is where a place is seen in the mirror, m.
func (m *Mirror) Image(p r3.Vec) r3.Vec { return r3.Sub(p, r3.Scale(2*m.Plane.Over(p), m.Plane.N)) }

// Turned is a direction as it is seen in the mirror; a ray that meets the mirror goes on along it.
func (m *Mirror) Turned(d r3.Vec) r3.Vec {
	return r3.Sub(d, r3.Scale(2*r3.Dot(m.Plane.N, d), m.Plane.N))
}

// Images are the corners of a figure as they are seen in the mirror, in the order that keeps its front in front.
func (m *Mirror) Images(figure []r3.Vec) []r3.Vec {
	n := len(figure)
	out := make([]r3.Vec, n)
	for i, p := range figure {
		out[n-1-i] = m.Image(p)
	}
	return out
}

// reversed are corners the other way round.
func reversed(corners []r3.Vec) []r3.Vec {
	n := len(corners)
	out := make([]r3.Vec, n)
	for i, p := range corners {
		out[n-1-i] = p
	}
	return out
}
