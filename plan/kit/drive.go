package kit

import (
	"math"

	"scrimshaw/plan/colour"
)

// Drive gives all that a level, the gels and the colour do to the head's light: linear AP1, by
// which light for a drive of {1, 1, 1} is multiplied. Its Y is the light at this level times the
// transmittance of the gels. level is held to 0..1.
func (h Head) Drive(level float64) colour.RGB {
	light := h.light(level)
	if !(light > 0) {
		return colour.RGB{}
	}
	rgb := h.RGB
	if h.warmed(level) {
		rgb = h.at(level).RGB
	}
	return rgb.Scale(light * h.Filter)
}

// WhiteAt gives the white of the light after gels at a level.
func (h Head) WhiteAt(level float64) colour.White {
	if !h.warmed(level) {
		return h.White
	}
	return h.at(level).White
}

// warmed reports whether the head's colour at a level differs from that at full.
func (h Head) warmed(level float64) bool { return h.Warms && level < 1 }

// light is the share of the full light at a level: linear, or by the unit's curve.
func (h Head) light(level float64) float64 {
	level = math.Min(math.Max(level, 0), 1)
	steps := len(h.Curve) - 1
	if steps < 1 {
		return level
	}
	i := min(int(level*float64(steps)), steps-1)
	part := level*float64(steps) - float64(i)
	return h.Curve[i] + part*(h.Curve[i+1]-h.Curve[i])
}

// at is the light of a filament, dimmed to a level, after its gels: its white depends on the light it has left.
func (h Head) at(level float64) colour.Filtered {
	native, stack := h.native, h.stack
	if native.Kelvin == 0 { // a head made by hand: its white is that after gels
		native, stack = h.White, nil
	}
	native = native.OnPlanck()
	native.Kelvin = colour.Dimmed(native.Kelvin, h.light(level))
	return colour.Through(native, stack)
}
