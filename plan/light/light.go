// Package light carries light from the lamps to where it is read: the set once (World), each
// light once (Basis), levels and colours last (Drive). A basis is lux for a drive of {1, 1, 1},
// so that a level, a gel or a colour never costs more than a sum.
//
// There are two ways to the same figures. At a receptor, what is seen of a lamp's opening past all solids is found
// exactly, as polygons (solid.Viewer), and summed by closed form where there is one (trace.go, cubature.go). On lattices,
// level or not, the shadows of all solids are drawn as bit masks, one for each of some points of the opening, which tells
// of a whole floor who sees what (shadow.go, field.go). Where more than half of an opening is seen, a field takes what is
// hidden from the whole, which is exact, else it adds up what is seen, and where much of a floor sees little of a lamp
// it asks as a receptor does (hidden.go). Neighbouring points of an opening share one evaluation of its distribution
// (bundle.go).
//
// What comes back from surfaces is worked out by package radiosity, for receptors and lattices alike,
// and stands beside the direct light in the same basis (reflect.go).
package light

import (
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/solid"
)

// Weight is how a receptor weighs light by its angle to the receptor's axis.
type Weight uint8

// The weights.
const (
	Flat     Weight = iota // cos t, none from behind: illuminance on a plane, lx
	Dome                   // (1 + cos t)/2: the incident dome, lx
	Radiance               // the luminance of the first surface along the axis, cd/m2
)

// Receptor is one place to read light at. Solids in Skip neither shade nor are seen by it.
type Receptor struct {
	At, Axis r3.Vec // Axis is a unit vector
	Weight   Weight
	Skip     []solid.ID
}

// Lattice is a grid of receptors: point (i, j) is Origin + i U + j V. A set bit of Mask (j*NU+i)
// is a point without data: inside a solid, or outside every room; its field is 0. Weight is Flat
// or Dome.
type Lattice struct {
	Origin, U, V r3.Vec
	Normal       r3.Vec  // the receptors' axis, unit; a dome's need not stand on the lattice
	Toward       *r3.Vec // where it is set, the place that each dome is turned to, in place of Normal
	NU, NV       int
	Weight       Weight
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
	way := r3.Sub(*l.Toward, at)
	return r3.Scale(inverse(r3.Norm(way)), way)
}

// receptor is the one at point (i, j).
func (l *Lattice) receptor(i, j int) Receptor {
	at := l.At(i, j)
	return Receptor{At: at, Axis: l.Axis(at), Weight: l.Weight, Skip: l.Skip}
}

// inverse is 1/x, and 0 for 0.
func inverse(x float64) float64 {
	if x == 0 {
		return 0
	}
	return 1 / x
}

// Masked says whether point (i, j) has no data.
func (l *Lattice) Masked(i, j int) bool {
	n := j*l.NU + i
	return n>>6 < len(l.Mask) && l.Mask[n>>6]>>(n&63)&1 != 0
}

// Targets is what a Basis is wanted for.
type Targets struct {
	Points   []Receptor
	Lattices []Lattice
}

// Path says how light came.
type Path uint8

// The paths. Diffused and Mirrored are not computed yet.
const (
	Direct Path = iota
	Diffused
	Mirrored
	Reflected
)

// String returns the word that prints: "direct", "diffused", "mirrored", "reflected".
func (p Path) String() string { return [...]string{"direct", "diffused", "mirrored", "reflected"}[p] }

// Term is one column of a Basis: light by a path, through panes or cloths, from a last surface.
type Term struct {
	Light  string
	Path   Path
	Via    []solid.ID // panes passed, in order from the lamp
	From   solid.ID   // the last surface, of reflected light
	Filter colour.RGB // what the panes leave of direct light; {1, 1, 1} without panes
}

// Emitter is one light as transport sees it.
type Emitter struct {
	Name   string
	Frame  plan.Frame
	Source photometry.Source
}

// Drive is what each light's basis is multiplied by: level, gels and colour, AP1. A light that
// is not in it is off.
type Drive map[string]colour.RGB

// Emitters returns the lights of a set-up, in its order.
func Emitters(s *plan.Setup) []Emitter {
	all := make([]Emitter, len(s.Lights))
	for i := range s.Lights {
		l := &s.Lights[i]
		all[i] = Emitter{Name: l.Name, Frame: l.Frame, Source: l.Head.Source}
	}
	return all
}

// DriveOf returns the drive of the lights of a set-up.
func DriveOf(lights []plan.Light) Drive {
	d := make(Drive, len(lights))
	for i := range lights {
		d[lights[i].Name] = lights[i].Drive
	}
	return d
}
