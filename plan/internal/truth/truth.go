// Package truth is an independent reference for the light of a set-up: a plain, slow path tracer that tests hold
// every reading to. It shares no code with the light engine: it makes its own polygons of the solids, has its
// own tree over them and its own rays, samples lamps by its own rules, and follows light bounce by bounce until
// it dies. What it gives is unbiased, and says how far off it may be.
//
// The rules are those that DEVELOPERS.md and the packages write down: prisms are opaque, a clear sheet lets pass
// what its skin says and reflects nothing, a cloth lets pass, scatters and reflects its shares from either side, a mirror sends on what it mirrors, all else
// reflects diffusely, and every point of an opening sends out the same distribution.
//
// The points are Sobol's, scrambled by Owen's rule for each batch anew: the spread of the batches tells the
// standard error.
package truth

import (
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/solid"
)

// Response is how a receptor weighs light by its angle to the receptor's axis.
type Response uint8

// The responses.
const (
	Flat Response = iota // the cosine, nothing from behind
	Dome                 // (1 + cos t)/2
	Spot                 // the luminance of the first surface along the axis
)

// Receptor is one place to read light at. Solids in Skip are not there for it.
type Receptor struct {
	At, Axis r3.Vec // m; a unit vector
	Response Response
	Skip     []solid.ID
}

// Options say how close the tracing comes to the truth.
type Options struct {
	Seed    uint64
	Workers int     // goroutines; 0: one a core. The results are the same bits for any number
	Error   float64 // the standard error of a total at which it stops, of that; 0 means aimedError
	Dark    float64 // lx below which nobody cares how close it is
	Most    int     // paths of a receptor at most; 0 means maxPaths
}

// The defaults of Options.
const (
	aimedError = 1.5e-3
	maxPaths   = 1 << 20
)

// Part is an estimate with its standard error, in AP1, and those of its luminous quantity.
type Part struct {
	RGB, SE colour.RGB
	Y, YSE  float64 // lx, or cd/m² for a spot
}

// Value is the light at a receptor.
type Value struct {
	Direct, Reflected, Total Part
	Paths                    int // that were followed for the reflected part
}

// Trace finds the light of a set-up at the receptors.
func Trace(s *plan.Setup, receptors []Receptor, o Options) []Value {
	if o.Error == 0 {
		o.Error = aimedError
	}
	if o.Most == 0 {
		o.Most = maxPaths
	}
	set := newSet(s)
	all := make([]Value, len(receptors))
	each(o.Workers, len(receptors), func(i int) {
		all[i] = set.read(receptors[i], o, uint64(i))
	})
	return all
}
