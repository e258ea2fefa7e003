package meter

import (
	"scrimshaw/plan"
	"scrimshaw/plan/frame"
)

// Reflection is what a camera sees of equipment in a mirror, or of the light of a lamp and of what light falls on in glass.
type Reflection struct {
	frame.Reflection
	Luminance float64 // in glass: of what is seen there, where it stands out most, cd/m²; 0 of a lamp that nothing says how large it is
	Behind    float64 // in glass: of what is seen through it there, cd/m²
	Surface   string  // in glass: what that is; "" where nothing stands behind it

	Uncomputed []plan.Uncomputed // keys that could change what is seen in glass, and that nothing computes yet
}

// LeastGlint is how much brightness something adds in glass at least that is seen there, by what is behind it: a tenth, a seventh of a stop. It is a
// judgement of the trade (common practice, from memory).
const LeastGlint = 0.1

// StandsOut says whether it is bright enough to be seen against what is behind it.
func (r *Reflection) StandsOut() bool { return r.Luminance > LeastGlint*r.Behind }

// Flare is the light of a lamp that comes straight onto the lens of a camera.
type Flare struct {
	frame.Glare
	Lux float64 // on the plane of the entrance of the lens, lx

	Uncomputed []plan.Uncomputed // keys that could change it, and that nothing computes yet
}
