package kit_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/kit"
)

// A skirt lets out what is seen of its globe from below: straight down the globe is as bright as without, and beyond the line
// from its rim past that of the skirt there is nothing. A longer way down for the light of a wider globe leaves a wider pool.
func TestSkirtsCutByTheirDepth(t *testing.T) {
	const hangs = 0.45
	for modifier, globe := range map[string]float64{"lantern-60": 0.6, "lantern-90": 0.9} {
		bare := head(t, kit.Choice{Unit: "led-point-300-bicolour", Modifier: modifier})
		h := head(t, kit.Choice{Unit: "led-point-300-bicolour", Modifier: modifier + " + skirt"})
		along := func(degrees float64) float64 {
			sin, cos := math.Sincos(degrees * math.Pi / 180)
			return h.Source.Intensity(r3.Vec{X: sin, Z: -cos})
		}
		within(t, modifier+": cd straight down over those of the globe", along(0)/bare.Source.Peak(), 1, 1e-9)
		within(t, modifier+": flux of a disc at the same brightness, through its cell", h.Source.Flux/bare.Source.Flux, 0.25*passed(globe/hangs), 1e-3*h.Source.Flux/bare.Source.Flux)
		edge := math.Atan(globe/hangs) * 180 / math.Pi
		if along(edge-1) <= 0 || along(edge+1e-6) > 0 || along(180) > 0 {
			t.Errorf("%s: the light ends elsewhere than at %.1f°", modifier, edge)
		}
		if !h.HangsDown || bare.HangsDown {
			t.Errorf("%s: it is the skirt that makes it shine down", modifier)
		}
	}
}

// passed is the share of a Lambertian disc's light that a round cell of a cut-off passes, whose tangent is given: of rays
// about the axis, summed by rings, what of the one mouth is seen through the other.
func passed(cutOff float64) float64 {
	const rings = 20000
	sum := 0.0
	for i := range rings {
		a := math.Atan(cutOff) * (float64(i) + 0.5) / rings
		x := math.Tan(a) / cutOff
		lens := 2 / math.Pi * (math.Acos(x) - x*math.Sqrt(1-x*x))
		sum += lens * 2 * math.Sin(a) * math.Cos(a) * math.Atan(cutOff) / rings
	}
	return sum
}
