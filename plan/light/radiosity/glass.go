package radiosity

import (
	"math"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/solid"
)

// What passes glass depends on the angle, and what is seen of an element through glass would be another thing for each ray. So a
// ray counts as one of a few steps of it, the one above or the one below, by turns as often as is right in the mean.

// glassSteps are the steps of what passes from aside by what passes from straight ahead.
var glassSteps = [...]float64{1, 0.9, 0.75, 0.5, 0.25, 0}

// glassTurns is the number of the prime whose root these turns go on by: no cloth and no mirror gets so far.
const glassTurns = 400

// settle makes of clear sheets what they count as for a ray, by its number.
func settle(panes []solid.Pane, cloth veils, glass veil, number int) {
	cloth.weigh(panes)
	for i := range panes {
		if p := &panes[i]; p.Ratio < 1 && p.Ratio > 0 {
			p.Ratio = stepOf(p.Ratio, glass.at(number+i))
		}
	}
}

// stepOf is the step that a ratio counts as, by a turn from 0 to 1.
func stepOf(ratio, turn float64) float64 {
	k := 0
	for glassSteps[k+1] > ratio {
		k++
	}
	above, below := glassSteps[k], glassSteps[k+1]
	if turn < (ratio-below)/(above-below) {
		return above
	}
	return below
}

// ratioOf is what passes some clear sheets by what would from straight ahead. Whatever the order of the steps, it is the same to
// the last bit, for by it rays that see the same alike find each other.
func ratioOf(panes []solid.Pane) float32 {
	ratio := 1.0
	for i := range panes {
		if panes[i].Ahead == (colour.RGB{}) {
			return 0
		}
		ratio *= panes[i].Ratio
	}
	return float32(ratio)
}

// newGlassTurns are the turns by which rays count at glass.
func newGlassTurns() veil { return veil{turn: math.Sqrt(prime(glassTurns))} }
