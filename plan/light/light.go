// Package light carries light from the lamps to where it is read: the set once (World), each
// light once (Basis), levels and colours last (Drive). A basis is lux for a drive of {1, 1, 1},
// so that a level, a gel or a colour never costs more than a sum.
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
// is a point without data: inside a solid, or outside every room.
type Lattice struct {
	Origin, U, V r3.Vec
	Normal       r3.Vec // the receptors' axis, unit
	NU, NV       int
	Weight       Weight
	Mask         []uint64
	Skip         []solid.ID
}

// Targets is what a Basis is wanted for.
type Targets struct {
	Points   []Receptor
	Lattices []Lattice
}

// Path says how light came.
type Path uint8

// The paths. Only Direct is computed today.
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
	Light string
	Path  Path
	Via   []solid.ID // panes passed, in order from the lamp
	From  solid.ID   // the last surface, of reflected light
}

// Emitter is one light as transport sees it.
type Emitter struct {
	Name   string
	Frame  plan.Frame
	Source photometry.Source
}

// Drive is what each light's basis is multiplied by: level, gels and colour, AP1.
type Drive map[string]colour.RGB

// Basis holds lux (or cd/m2) at Drive {1, 1, 1}. Points[t][i] is term t at receptor i. A field
// sums the terms of one light: Fields[l][k][n] is light l (in the order of the emitters), lattice k,
// point n.
type Basis struct {
	Lights []string
	Terms  []Term
	Points [][]float64
	Fields [][][]float32
}
