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

// What is remembered of a choice is what Equal finds, whatever was asked before; choices that differ in one word are not taken for each other.
func TestEqualsRemembersWhatEqualFinds(t *testing.T) {
	c := shipped(t)
	var e kit.Equals
	spot, flood := 0.0, 1.0
	asked := 0
	for range 2 {
		for _, name := range []string{"led-point-300-bicolour", "fresnel-650", "led-panel-100", "practical-table"} {
			for _, ch := range []kit.Choice{
				{Unit: name}, {Unit: name, Modifier: kit.Unmodified}, {Unit: name, Modifier: "softbox-90"},
				{Unit: name, Focus: &spot}, {Unit: name, Focus: &flood}, {Unit: name, White: &colour.White{Kelvin: 3200}},
				{Unit: name, Doors: &kit.Opened{Top: 40, Bottom: 40, Left: 40, Right: 40}}, {Unit: name, Tint: 0.01}, {Unit: name, Level: &spot},
				{Unit: name, Bulb: &kit.BulbChoice{Name: "led-470"}}, {Unit: name, Shade: &kit.ShadeChoice{Cloth: "linen"}},
			} {
				if got, want := e.Of(c, ch), c.Equal(ch); got != want {
					t.Errorf("%+v: %v is remembered, and %v found", ch, got, want)
				} else if got != nil {
					asked++
				}
			}
		}
	}
	if asked < 10 {
		t.Errorf("%d choices have one that does: too few", asked)
	}
}
