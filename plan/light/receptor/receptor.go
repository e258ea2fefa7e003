// Package receptor says where light is read and how it is weighed there: by single receptors and by lattices of them. Direct
// and reflected light share these types.
package receptor

import (
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/solid"
)

// Response is how a receptor weighs light by the angle t between its axis and where the light comes from.
type Response uint8

// The responses.
const (
	Cosine Response = iota // cos t, none from behind: illuminance on a plane, lx
	Dome                   // (1 + cos t)/2: the incident dome, lx
	// Radiance is the luminance of the first surface along the axis, cd/m²; what falls on it is weighed by the cosine. Where
	// reflected light is read, a receptor of Radiance looks past all surfaces, and gets the exitance of what is there, lm/m².
	Radiance
)

// To is the response to light by the cosine of its angle from the axis.
func (r Response) To(cos float64) float64 {
	if r == Dome {
		cos = (1 + cos) / 2
	}
	if cos <= 0 {
		return 0
	}
	return cos
}

// Integral is that of the response over all directions by pi: the light, lx, that a receptor gets of surfaces all round that
// each send out 1 lm/m².
func (r Response) Integral() float64 {
	if r == Dome {
		return 2
	}
	return 1
}

// Receptor is one place to read light at, in metres; Axis is a unit vector. Solids in Skip neither shade nor are seen by
// it.
type Receptor struct {
	At, Axis r3.Vec
	Response Response
	Skip     []solid.ID
}

// Lattice is a grid of receptors: point (i, j) is Origin + i U + j V, in metres. A set bit of Mask (j*NU+i)
// is a point without data: inside a solid, or outside every room; its field is 0. Response is Cosine
// or Dome.
type Lattice struct {
	Origin, U, V r3.Vec
	Normal       r3.Vec  // the receptors' axis, a unit vector; a dome's need not stand on the lattice
	Toward       *r3.Vec // where it is set, the place that each dome is turned to, in place of Normal
	NU, NV       int
	Response     Response
	Mask         []uint64
	Skip         []solid.ID
}

// At is the place of point (i, j).
func (l *Lattice) At(i, j int) r3.Vec {
	u, v := float64(i), float64(j)
	return r3.Vec{
		X: l.Origin.X + u*l.U.X + v*l.V.X,
		Y: l.Origin.Y + u*l.U.Y + v*l.V.Y,
		Z: l.Origin.Z + u*l.U.Z + v*l.V.Z,
	}
}

// Axis is that of the receptor at a point. A dome in the very place that the domes are turned to is turned
// nowhere: its axis is no direction, and it takes half of what comes from anywhere.
func (l *Lattice) Axis(at r3.Vec) r3.Vec {
	if l.Toward == nil {
		return l.Normal
	}
	return r3.Scale(l.InverseDistance(at), r3.Sub(*l.Toward, at))
}

// InverseDistance is 1 over the distance of a point from the place that the domes are turned to, and 0 in that place.
func (l *Lattice) InverseDistance(at r3.Vec) float64 {
	distance := r3.Norm(r3.Sub(*l.Toward, at))
	if distance == 0 {
		return 0
	}
	return 1 / distance
}

// Receptor is the one at point (i, j).
func (l *Lattice) Receptor(i, j int) Receptor {
	at := l.At(i, j)
	return Receptor{At: at, Axis: l.Axis(at), Response: l.Response, Skip: l.Skip}
}

// Masked says whether point (i, j) has no data.
func (l *Lattice) Masked(i, j int) bool {
	n := j*l.NU + i
	return n>>6 < len(l.Mask) && l.Mask[n>>6]>>(n&63)&1 != 0
}
