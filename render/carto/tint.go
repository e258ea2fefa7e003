package carto

import (
	"math"

	"scrimshaw/plan/colour"
	"scrimshaw/symbols/ink"
)

// Ramp is a run of tints from the darkest band to the lightest: data, to be put into a theme. More
// light is always the lighter tint, and the hue hardly changes, so that the order shows by
// lightness alone: it lives through a grey printer and any deficiency of colour vision.
type Ramp struct {
	Name        string
	Dark, Light colour.LCH // CIELAB lightness, chroma, hue in degrees
}

// Day is a topographic map's warm greys on white paper.
func Day() Ramp {
	return Ramp{"day", colour.LCH{L: 73, C: 5, H: 85}, colour.LCH{L: 98.5, C: 5, H: 92}}
}

// Ink is neutral greys, which a photocopier keeps.
func Ink() Ramp {
	return Ramp{"ink", colour.LCH{L: 74, C: 0, H: 0}, colour.LCH{L: 100, C: 0, H: 0}}
}

// Night is dim reds, which leave the eye used to the dark.
func Night() Ramp {
	return Ramp{"night", colour.LCH{L: 1, C: 3, H: 32}, colour.LCH{L: 25.7, C: 16, H: 32}}
}

// minStep is the least step of lightness between two tints that are to be told apart side by
// side; a little more than the 2 that is promised, for the rounding to 8 bits.
const minStep = 2.45

// MaxTints returns how many tints the ramp holds with a step of lightness of 2 or more between them.
func (r Ramp) MaxTints() int { return int(math.Abs(r.Light.L-r.Dark.L)/minStep) + 1 }

// Tints returns n tints, darkest first, even in CIELAB lightness. Where n is more than Most, the
// darkest bands share a tint.
func (r Ramp) Tints(n int) []ink.Colour {
	out := make([]ink.Colour, 0, max(n, 0))
	shared := max(n-r.MaxTints(), 0)
	for i := range n {
		out = append(out, r.at(float64(max(i-shared, 0)), float64(n-shared-1)))
	}
	return out
}

// At returns the tint at a share of the ramp, 0 the darkest and 1 the lightest, for a continuous
// tint.
func (r Ramp) At(share float64) ink.Colour { return r.at(share, 1) }

// at returns the tint at i of last; a single one is the lightest.
func (r Ramp) at(i, last float64) ink.Colour {
	share := 1.0
	if last > 0 {
		share = min(max(i/last, 0), 1)
	}
	mix := func(a, b float64) float64 { return a + share*(b-a) }
	p := colour.LCH{L: mix(r.Dark.L, r.Light.L), C: mix(r.Dark.C, r.Light.C), H: mix(r.Dark.H, r.Light.H)}.Pixel()
	return ink.Colour{R: p.R, G: p.G, B: p.B}
}
