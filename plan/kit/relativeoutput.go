package kit

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/photometry/files"
)

// RelativeOutput gives all that a level, the gels and the colour do to the head's light: linear AP1, by
// which light of the full lamp is multiplied. Its Y is the light at this level times the
// transmittance of the gels. level is held to 0..1.
func (h Head) RelativeOutput(level float64) colour.RGB {
	light := h.LightAt(level)
	if !(light > 0) {
		return colour.RGB{}
	}
	rgb := h.RGB
	if h.whiteChangesAt(level) {
		rgb = h.dimmed(level).RGB
	}
	return rgb.Scale(light * h.Filter)
}

// WhiteAt gives the white of the light after gels at a level.
func (h Head) WhiteAt(level float64) colour.White {
	if !h.whiteChangesAt(level) {
		return h.White
	}
	return h.dimmed(level).White
}

// whiteChangesAt reports whether the head's colour at a level differs from that at full.
func (h Head) whiteChangesAt(level float64) bool {
	return (h.WarmsWhenDimmed || h.Levels.Kelvin > 0) && level < 1
}

// LightAt is the share of the full light at a level, 0 to 1: linear, or by the unit's curve.
func (h Head) LightAt(level float64) float64 {
	level = math.Min(math.Max(level, 0), 1)
	steps := len(h.Curve) - 1
	if steps < 1 {
		return level
	}
	i := min(int(level*float64(steps)), steps-1)
	part := level*float64(steps) - float64(i)
	return h.Curve[i] + part*(h.Curve[i+1]-h.Curve[i])
}

// dimmed is the light of a lamp that changes its white as it is dimmed, after its gels. A filament's depends on the light it
// has left, by the law of colour.Dimmed; that of a lamp on a ballast on its level.
func (h Head) dimmed(level float64) colour.Filtered {
	native, stack := h.native, h.stack
	if native.Kelvin == 0 { // a head made by hand: its white is that after gels
		native, stack = h.White, nil
	}
	native = native.OnPlanck()
	if h.WarmsWhenDimmed {
		native.Kelvin = colour.Dimmed(native.Kelvin, h.LightAt(level))
	} else {
		native.Kelvin = h.Levels.kelvinAt(native.Kelvin, level)
	}
	return colour.ThroughGels(native, stack)
}

// levelSlack is how far the lamp's right may rise and count as level, as a sine.
const levelSlack = 1e-9

// ApplyTilt sets the head's light to what its lamp gives as it hangs: right, up and axis are those of the lamp
// frame in the scene. known is false where the file has factors and does not say which of them holds: a
// lamp that is level in the design position lies this way or that after a roll, and the format does not
// say along which side of the luminaire it was.
func (h *Head) ApplyTilt(right, up, axis r3.Vec) (known bool) {
	h.keepShadeUpright(axis)
	t := h.Tilt
	if t == nil {
		return true
	}
	if t.table.Geometry != files.LampUpright && math.Abs(right.Z) > levelSlack {
		return false
	}
	down := r3.Vec{X: -right.Z, Y: -up.Z, Z: axis.Z}
	tilt := math.Acos(math.Min(1, math.Max(-1, r3.Dot(down, t.zero)))) * 180 / math.Pi
	factor := t.table.Factor(tilt)
	h.Source.Flux *= factor
	h.Steps = append(h.Steps[:len(h.Steps):len(h.Steps)], Step{
		What: "tilted from its design position", Formula: "flux x factor at this tilt",
		In: []float64{tilt, factor}, Out: h.Source.Flux, Unit: "lm",
	})
	return true
}
