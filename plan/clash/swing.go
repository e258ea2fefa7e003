package clash

import (
	"math"

	"scrimshaw/plan"
)

// Swings is how far the leaf of an opening shuts and opens with a piece of equipment in its way, degrees, rounded to whole ones on
// the side of less room. It is asked of what Find says is in its way.
func Swings(s *plan.Setup, of Side, o *plan.Opening) (shuts, opens float64) {
	for _, t := range equipment(s) {
		if t.Side != of {
			continue
		}
		free := func(from, to float64) bool {
			return t.meets(thingOf(Side{Swing, o.Name}, plan.Mount{}, swingPieces(o, from, to))) == nil
		}
		at := min(o.Ajar, widestSwing)
		for shuts = at; shuts > 0 && free(shuts-1, shuts); shuts-- {
		}
		for opens = at; opens < widestSwing && free(opens, opens+1); opens++ {
		}
	}
	return math.Ceil(max(0, shuts)), math.Floor(opens)
}
