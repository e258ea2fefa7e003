package kit

import "math"

// printedLevel is what levels are rounded up to: a tenth of a percent, as they print.
const printedLevel = 0.001

// LevelFor gives the lowest level that the head can be set to at which it gives a share of its full light, or more; not ok where it has
// none. It is a tenth of a percent, or a step of the unit.
func (h Head) LevelFor(share float64) (level float64, ok bool) {
	if !(share <= h.LightAt(1)*(1+levelSlip)) {
		return 0, false
	}
	low, high := 0.0, 1.0
	const halvings = 50
	for range halvings {
		if middle := (low + high) / 2; h.LightAt(middle) < share*(1-levelSlip) {
			low = middle
		} else {
			high = middle
		}
	}
	level = min(1, math.Ceil(high/printedLevel-levelSlip/printedLevel)*printedLevel)
	if h.Levels.Least >= 1 {
		return 1, true
	}
	under, over := h.Levels.nearest(level)
	if under >= level-levelSlip {
		return under, true
	}
	return over, true
}

// StopsLeft gives how many stops a head at a level can go up to its full light, and down to the least that it can be set to: none where
// that is nothing.
func (h Head) StopsLeft(level float64) (up float64, down *float64) {
	now := h.LightAt(level)
	up = math.Log2(h.LightAt(1) / now)
	if least := h.LightAt(min(1, h.Levels.Least)); least > 0 {
		d := max(0, math.Log2(now/least))
		down = &d
	}
	return max(0, up), down
}

// DefaultModifier gives the modifier of a choice with the unit's own where it names none: a stack's name, or Unmodified.
func (c *Catalogue) DefaultModifier(ch Choice) string {
	if ch.Modifier != "" {
		return ch.Modifier
	}
	if u := c.Unit(ch.Unit); u != nil && u.Modifier != "" {
		return u.Modifier
	}
	return Unmodified
}
