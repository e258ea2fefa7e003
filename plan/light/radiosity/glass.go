package radiosity

import (
	"scrimshaw/plan/colour"
	"scrimshaw/plan/solid"
)

// What passes glass depends on the angle, and what is seen of an element through glass would be another thing for each ray. So a
// ray counts as one of a few steps of it, the one above or the one below, by turns as often as is right in the mean.

// glassSteps are the steps of what passes from aside by what passes from straight ahead.
var glassSteps = [...]float64{1, 0.9, 0.75, 0.5, 0.25, 0}

// glassTurns are the turns of rays at glass, by how many clear sheets a ray has passed since it last met a mirror: what two panes
// one behind the other count as knows nothing of each other.
type glassTurns []veil

// newGlassTurns are those of a set that has so many clear sheets.
func newGlassTurns(t *turns, sheets int) (all glassTurns) {
	for range max(sheets, 1) {
		all = append(all, veil{turn: t.nextBeyond(beforeGlass)})
	}
	return all
}

// of are the turns at a pane that comes after so many clear sheets. Only where a ray meets the seam of two parts of a sheet are
// there more than the set has.
func (g glassTurns) of(passed int) veil { return g[passed%len(g)] }

// settle makes of clear sheets, all that a ray passes between two mirrors, what they count as for it.
func settle(panes []solid.Pane, cloth veils, glass glassTurns, now moment) {
	cloth.weigh(panes)
	for i := range panes {
		if p := &panes[i]; p.Ratio < 1 && p.Ratio > 0 {
			p.Ratio = stepOf(p.Ratio, glass.of(i).at(now))
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
