package photometry

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// HalfScrim is light behind a scrim over the lower half of a head's opening. The beam comes out as if from behind the
// lens: what goes down has passed its lower half. Toward each direction shines a patch of the lens, which is as much of
// it as the narrowest beam that the lens can throw is of this one: a wide beam keeps its halves apart, with a seam as broad as
// the narrowest beam, and of the narrowest each direction gets light of all of the lens.
type HalfScrim struct {
	base   Distribution
	passes float64 // the lower half, share
	field  float64 // of the head, degrees, and the narrowest that it could throw
	narrow float64
	slope  float64 // of the patch's middle, in halves of the lens, by the tangent of the angle over the axis
	patch  float64 // in halves of the lens, above and below its middle
	gain   float64
	peak   float64
}

// NewHalfScrim puts a scrim that passes a share before the lower half of a head that sends its light out in a field of an
// angle, and could do so in one of narrowest, degrees. It gives the share of the flux that passes.
func NewHalfScrim(base Distribution, passes, field, narrowest float64) (HalfScrim, float64) {
	patch := math.Min(1, narrowest/field)
	h := HalfScrim{base: base, passes: passes, field: field, narrow: narrowest, patch: patch, gain: 1,
		slope: (1 - patch) / math.Tan(math.Min(field, widestField)/2*math.Pi/180)}
	share := (1 + passes) / 2 // of light that is as much below as above
	if _, axial := base.(Axial); !axial {
		share = integrateEvenly(func(turn float64) float64 {
			return integrateEvenly(func(t float64) float64 { return math.Sin(t) * h.Candela(direction(turn, t)) }, 0, math.Pi)
		}, 0, 2*math.Pi)
	}
	h.gain = 1 / share
	h.peak = scanPeak(h)
	return h, share
}

// Parts gives what is behind the scrim, the share that the lower half passes, and the fields of the head as it is set and at
// its narrowest, degrees, for those who reckon it their own way.
func (h HalfScrim) Parts() (base Distribution, passes, field, narrowest float64) {
	return h.base, h.passes, h.field, h.narrow
}

// widestField bounds the field that a lens is taken to have, degrees: a tangent has no end.
const widestField = 170

// below is the share of the light toward a direction that comes from the lower half.
func (h HalfScrim) below(dir r3.Vec) float64 {
	over := math.Copysign(math.Inf(1), dir.Y)
	if dir.Z < 0 {
		over = dir.Y / -dir.Z
	}
	middle := 0.0
	if h.slope > 0 {
		middle = h.slope * over
	}
	return math.Min(1, math.Max(0, (h.patch-middle)/(2*h.patch)))
}

// Candela gives the intensity, cd/lm of what has passed.
func (h HalfScrim) Candela(dir r3.Vec) float64 {
	return h.gain * h.base.Candela(dir) * (1 - (1-h.passes)*h.below(dir))
}

// Peak gives the greatest intensity on a grid of one degree, cd/lm.
func (h HalfScrim) Peak() float64 { return h.peak }
