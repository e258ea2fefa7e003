package radiosity

import (
	"scrimshaw/plan/colour"
	"scrimshaw/plan/solid"
)

// What passes glass depends on the angle, and what is seen of an element through glass would be another thing for each ray. So a
// ray counts as one of a few steps of it, the one above or the one below, by turns as often as is right in the mean.

// glassSteps are the steps of what passes from aside by what passes from straight ahead.
var glassSteps = [...]float64{1, 0.9, 0.75, 0.5, 0.25, 0}

// settle makes of clear sheets what they count as for a ray.
func settle(panes []solid.Pane, cloth veils, glass veil, now moment) {
	cloth.weigh(panes)
	for i := range panes {
		if p := &panes[i]; p.Ratio < 1 && p.Ratio > 0 {
			step := stepOf(p.Ratio, glass.at(moment{now.number + i, now.stretch}))
			p.Factor, p.Ratio = p.Factor.Scale(step/p.Ratio), step
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

// ratioOf is what passes some clear sheets by what would from straight ahead.
func ratioOf(panes []solid.Pane) float64 {
	ratio := 1.0
	for i := range panes {
		switch p := &panes[i]; {
		case p.Factor == colour.RGB{}:
			return 0
		case p.Ratio > 0: // and not a mirror
			ratio *= p.Ratio
		}
	}
	return ratio
}
