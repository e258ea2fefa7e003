package kit_test

import (
	"math"
	"testing"

	"scrimshaw/plan/kit"
	"scrimshaw/plan/source"
)

// The level for a share of the light gives that share, and a tenth of a percent or a step less does not; a unit that does not dim stays up, and
// none gives more than all.
func TestLevelFor(t *testing.T) {
	c := shipped(t)
	for _, u := range c.Units {
		h, ok := c.Head(kit.Choice{Unit: u.Name}, &source.Log{})
		if !ok {
			t.Fatalf("%s makes no head", u.Name)
		}
		full := h.RelativeOutput(1).Y()
		for _, share := range []float64{0.0004, 0.01, 0.137, 0.5, 0.75, 1} {
			level, ok := h.LevelFor(share)
			if !ok {
				t.Errorf("%s has no level for %g of its light", u.Name, share)
				continue
			}
			if given := h.RelativeOutput(level).Y() / full; given < share*(1-1e-6) {
				t.Errorf("%s at %g gives %g, not %g", u.Name, level, given, share)
			}
			if _, ok := c.Head(kit.Choice{Unit: u.Name, Level: &level}, &source.Log{}); !ok {
				t.Errorf("%s cannot be set to %g", u.Name, level)
			}
			less := level - math.Max(0.001, h.Levels.Step)
			if less > 0 && less >= h.Levels.Least && h.RelativeOutput(less).Y()/full >= share*(1+1e-6) {
				t.Errorf("%s gives %g at %g already", u.Name, share, less)
			}
			if u.Levels.Least >= 1 && level != 1 {
				t.Errorf("%s does not dim, and is set to %g", u.Name, level)
			}
		}
		if level, ok := h.LevelFor(1.01); ok {
			t.Errorf("%s gives more than all at %g", u.Name, level)
		}
	}
}

// What a choice does not say of its modifier is the unit's own.
func TestDefaultModifier(t *testing.T) {
	c := shipped(t)
	own := c.Unit("led-point-600-bicolour").Modifier
	for _, x := range []struct{ unit, modifier, want string }{
		{"led-point-600-bicolour", "", own}, {"led-point-600-bicolour", "softbox-90 + grid-40", "softbox-90 + grid-40"}, {"led-point-600-bicolour", "bare", "bare"},
		{"led-tube-60", "", "bare"}, {"none such", "", "bare"},
	} {
		if got := c.DefaultModifier(kit.Choice{Unit: x.unit, Modifier: x.modifier}); got != x.want {
			t.Errorf("%s with %q: %q, want %q", x.unit, x.modifier, got, x.want)
		}
	}
	if own == "" {
		t.Fatal("the unit has no modifier of its own")
	}
}
