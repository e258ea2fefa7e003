package kit_test

import (
	"testing"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
)

// The unit that does in the place of another gives at least as much there, is used alike and has its whites; none of less power does, by trying all.
func TestEqualIsTheSmallestThatDoes(t *testing.T) {
	c := shipped(t)
	does := func(ch kit.Choice, own, u *kit.Unit) bool {
		is, ok := c.Head(ch, &source.Log{})
		ch.Unit = u.Name
		head, fits := c.Head(ch, &source.Log{})
		return ok && fits && u != own && u.Class == own.Class && u.Technology == own.Technology && u.Kelvin[0] <= own.Kelvin[0] && u.Kelvin[1] >= own.Kelvin[1] &&
			is.UsedLike(&head, false) && head.Source.AxisLux(3) >= is.Source.AxisLux(3)*(1-1e-12)
	}
	found, none := 0, 0
	for _, own := range c.Units {
		if own.Class == term.Practical {
			continue
		}
		all := c.Fitting(own)
		for _, modifier := range all[:min(2, len(all))] {
			ch := kit.Choice{Unit: own.Name, Modifier: modifier, White: &colour.White{Kelvin: own.Native}}
			best := c.Equal(ch)
			if best != nil {
				found++
			} else {
				none++
			}
			if best != nil && !does(ch, own, best) {
				t.Errorf("%s with %s: %s does not do", own.Name, modifier, best.Name)
			}
			for _, u := range c.Units {
				if (best == nil || u.Watts < best.Watts) && does(ch, own, u) {
					t.Errorf("%s with %s: %s does, and found was %v", own.Name, modifier, u.Name, best)
				}
			}
		}
	}
	if found < 20 || none < 20 {
		t.Errorf("%d have one that does and %d have none: too few", found, none)
	}
	if got := c.Equal(kit.Choice{Unit: "practical-table"}); got != nil {
		t.Errorf("in the place of a lamp of the set does %s", got.Name)
	}
}
