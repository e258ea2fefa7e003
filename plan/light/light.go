// Package light carries light from the lamps to where it is read: the set once (World), each
// light once (Basis), levels and colours last (Levels). A basis is lux for levels of {1, 1, 1},
// so that a level, a gel or a colour never costs more than a sum.
//
// There are two ways to the same figures. A receptor sees a part of a lamp's opening past all solids: package solid finds
// that part exactly, as polygons (solid.Viewer), and a closed form sums it where there is one (trace.go, cubature.go).
// On a lattice, level or not, each of some points of the opening draws the shadows of all solids as bit masks, and the
// masks say for the whole floor which points see which (rasteriser.go, shadows.go, field.go). Where a point sees more than
// half of an opening, a field takes what is hidden from the whole, which is exact; else it adds up what is seen; and where a point
// sees little of a lamp, it traces as a receptor does (hidden.go). Shadows are drawn where they may differ from point to point of
// the opening: its corners tell where (umbras.go). Neighbouring points of an opening share
// one evaluation of its distribution (bundle.go).
//
// Package radiosity works out what comes back from surfaces, for receptors and lattices alike. It stands beside the direct
// light in the same basis (reflect.go).
//
// A new kind of emitter needs no change here: its distribution says the intensity in a direction (photometry.Distribution),
// and may bring a kernel for rows of receptors (photometry.RowSummed); its opening may vary over its face (Profile).
package light

import (
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/light/receptor"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/solid"
)

// Response is how a receptor weighs light by its angle.
type Response = receptor.Response

// The responses.
const (
	Cosine   = receptor.Cosine   // illuminance on a plane, lx
	Dome     = receptor.Dome     // the incident dome, lx
	Radiance = receptor.Radiance // the luminance of the first surface along the axis, cd/m2
)

// Receptor is one place to read light at.
type Receptor = receptor.Receptor

// Lattice is a grid of receptors.
type Lattice = receptor.Lattice

// Targets is what a Basis is wanted for.
type Targets struct {
	Points   []Receptor
	Lattices []Lattice
	Fixed    Levels // where it is not nil, fields are summed at these levels, and not kept light by light
}

// Path says how light came.
type Path uint8

// The paths: what comes off a cloth is diffused, from whichever side the cloth is lit. What is mirrored comes from a lamp by
// a mirror.
const (
	Direct Path = iota
	Diffused
	Mirrored
	Reflected
)

// String returns the word that prints: "direct", "diffused", "mirrored", "reflected".
func (p Path) String() string { return [...]string{"direct", "diffused", "mirrored", "reflected"}[p] }

// Straight says whether light meets nothing on its path but what passes it on whole: panes and mirrors.
func (p Path) Straight() bool { return p == Direct || p == Mirrored }

// Term is one column of a Basis: light by a path, through panes or cloths, from a last surface.
type Term struct {
	Light string
	Path  Path
	Via   []solid.ID // panes passed, in order from the lamp; of reflected light mirrors, too
	From  solid.ID   // the last surface, of reflected and diffused light; the mirror of mirrored light
}

// Emitter is one light as transport sees it.
type Emitter struct {
	Name    string
	Frame   plan.Frame
	Source  photometry.Source
	Profile Profile    // of the luminance over the opening; nil where that is even
	Screens [][]r3.Vec // flat convex figures that stop this light and no other, as leaves before a lens do, m
}

// Profile is how the luminance of an opening varies over it: of a rectangle, a disc or a tube.
type Profile interface {
	// Relative is the luminance at a place so many metres to the right of the middle and over it, by the mean over the
	// opening.
	Relative(right, up float64) float64
}

// Levels is what each light's basis is multiplied by: level, gels and colour, AP1. A light that
// is not in it is off.
type Levels map[string]colour.RGB

// Emitters returns the lights of a set-up, in its order.
func Emitters(s *plan.Setup) []Emitter {
	all := make([]Emitter, len(s.Lights))
	for i := range s.Lights {
		l := &s.Lights[i]
		all[i] = Emitter{Name: l.Name, Frame: l.Frame, Source: l.Head.Source, Screens: l.Leaves()}
	}
	return all
}

// LevelsOf returns the levels of the lights of a set-up.
func LevelsOf(lights []plan.Light) Levels {
	d := make(Levels, len(lights))
	for i := range lights {
		d[lights[i].Name] = lights[i].RelativeOutput
	}
	return d
}
