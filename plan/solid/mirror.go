package solid

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
)

// Mirror is a side of a flat sheet that mirrors light, sharply or in a lobe. Before it lies what it can show.
type Mirror struct {
	ID      ID
	Corners []r3.Vec   // m, counter-clockwise from before it
	Plane   Plane      // what lies behind it: N looks out of the mirror
	Factor  colour.RGB // what is mirrored of the light on it
	Power   float64    // of the cosine by which its lobe falls, a ratio of logarithms; 0 of a flat mirror
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

// LobePower is the power of the cosine, of the angle from the mirrored direction, by which light leaves a surface in a lobe
// (B. T. Phong, Illumination for Computer Generated Pictures, 1975); 0 of a flat mirror. By (power + 1)/2 pi over the greater of the
// cosines at which light comes and leaves, as metal does, no more leaves than comes, and little less (L. Neumann and others,
// Compact Metallic Reflectance Models, 1999).
func (s *Skin) LobePower() float64 {
	if s.Lobe == 0 {
		return 0
	}
	return math.Log(0.5) / math.Log(math.Cos(s.Lobe/2*math.Pi/180))
}

// Mirrors returns the sides of sheets that mirror, in the order of the set.
func (s *Set) Mirrors() (all []Mirror) {
	for i := range s.Sheets {
		for _, front := range [...]bool{true, false} {
			if m, ok := s.Sheets[i].Side(front); ok && m.Factor != (colour.RGB{}) {
				all = append(all, m)
			}
		}
	}
	return all
}

// Side is the front of a sheet, or its back, as a mirror; not ok where its corners span none.
func (s *Sheet) Side(front bool) (Mirror, bool) {
	corners, skin := s.Corners, &s.Front
	if !front {
		corners, skin = reversed(corners), &s.Back
	}
	area := newell(corners)
	size := r3.Norm(area)
	if !(size > 0) {
		return Mirror{}, false
	}
	n := r3.Scale(1/size, area)
	return Mirror{ID: s.ID, Corners: corners, Plane: Plane{N: n, C: r3.Dot(n, Centre(corners))}, Factor: skin.Specular(), Power: skin.LobePower()}, true
}

// Image is where a place is seen in the mirror, m.
func (m *Mirror) Image(p r3.Vec) r3.Vec { return r3.Sub(p, r3.Scale(2*m.Plane.Over(p), m.Plane.N)) }

// Turned is a direction as it is seen in the mirror; a ray that meets the mirror goes on along it.
func (m *Mirror) Turned(d r3.Vec) r3.Vec { return Mirrored(d, m.Plane.N) }

// Mirrored is a direction along which a ray goes on that meets a flat mirror, by the unit normal of that.
func Mirrored(d, normal r3.Vec) r3.Vec {
	return r3.Sub(d, r3.Scale(2*r3.Dot(d, normal), normal))
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
