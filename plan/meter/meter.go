// Package meter takes named readings of a lit set-up: flat, dome and spot meters and the
// planes of every face, each with the share that every light gives.
package meter

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/term"
)

// Reading is one figure that a person acts on. A nil pointer has no meaning for its kind: the
// stop of no light, the lux of a spot.
type Reading struct {
	Name                        string // "ines.key", or the meter's own name
	Person                      string // "" for a meter
	Receptor                    int    // its place among the requests, and so among the points of the basis
	Kind                        term.Meter
	At                          r3.Vec // m
	Facing                      r3.Vec // unit
	Lux, Luminance, Footcandles *float64
	Stop                        *float64 // N = sqrt(E S t / C)
	Over                        *float64 // stops over the working stop
	CCT                         *float64 // K; nil where |Duv| > 0.05 or there is no light
	Duv                         *float64
	XY                          *[2]float64
	Error                       *float64 // standard error of the light that the engine states, as a share of it
	Shares                      []Share  // in the order of the lights
	Sees                        *Sees    // of a spot: what it reads; nil until a study looks

	Uncomputed []plan.Uncomputed // keys that could change it and that nothing computes yet: its light, or its stops alone
}

// Struck says whether a key that is not computed yet could change the light of the reading, and so every figure
// of it.
func (r *Reading) Struck() bool { return slices.ContainsFunc(r.Uncomputed, altersLight) }

// StopsStruck says whether such a key could change its stops.
func (r *Reading) StopsStruck() bool { return len(r.Uncomputed) > 0 }

func altersLight(u plan.Uncomputed) bool { return u.AltersLight() }

// Share is the part that one light gives by one path.
type Share struct {
	Light    string
	Numbered string   // the light as the crew reads it: "3 lamp"
	Path     string   // direct, diffused, mirrored, reflected
	Via      []string // names of panes or cloths passed, and of mirrors that show the last surface
	Mirrors  []bool   // of those: which are mirrors
	From     string   // name of the last surface, of reflected light; of the mirror, of mirrored
	Lux      float64  // lx, or cd/m2 for a spot
}

// minLight is the light, lx or cd/m², below which there is only rounding: a plane that stands
// edge-on to a lamp.
const minLight = 1e-9

// FiniteOrNil is nil for a figure that has none: the logarithm of no light.
func FiniteOrNil(v float64) *float64 {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return nil
	}
	return &v
}

// contributions is what each light gives to a reading.
func (reading *Reading) contributions() map[string]float64 {
	given := map[string]float64{}
	for i := range reading.Shares {
		given[reading.Shares[i].Light] += reading.Shares[i].Lux
	}
	return given
}
