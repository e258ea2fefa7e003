package meter

import (
	"scrimshaw/plan"
	"scrimshaw/plan/frame"
)

// Reflection is what a camera sees of equipment in a mirror, or of the light of a lamp in glass.
type Reflection struct {
	frame.Reflection
	Luminance float64 // in glass: of the lamp as it is seen there, cd/m²; 0 where nothing says how large it is
	Behind    float64 // in glass: of what is seen through it there, cd/m²
	Surface   string  // in glass: what that is; "" where nothing stands behind it

	Uncomputed []plan.Uncomputed // keys that could change what is seen in glass, and that nothing computes yet
}

// Flare is the light of a lamp that comes straight onto the lens of a camera.
type Flare struct {
	frame.Glare
	Lux float64 // on the plane of the entrance of the lens, lx

	Uncomputed []plan.Uncomputed // keys that could change it, and that nothing computes yet
}
