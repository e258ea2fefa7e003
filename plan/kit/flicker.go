package kit

import (
	"math"

	"scrimshaw/plan/lens"
	"scrimshaw/plan/term"
)

// Dimming is what a lamp is dimmed by.
type Dimming struct {
	Kind  term.Dimmer // "" nothing says it
	Hertz float64     // of what it switches, 1/s; 0: twice the mains
}

// Phase says whether a filament is dimmed by what cuts half-waves: hand dimmers do, and where nothing is said it is one of them.
func (d Dimming) Phase() bool { return d.Kind == "" || d.Kind == term.PhaseDimmer }

// DefaultReadout is how much later the last row of a frame is read than its first, ms, where the catalogue does not say: common
// practice, of sensors that take a frame in 5 to 20 ms.
const DefaultReadout = 12.0

// halfCycles is how often in a cycle of the mains a lamp on them goes up and down.
const halfCycles = 2

// Ripple is how the light of a head goes up and down on mains of so many hertz, 0 for direct current, where it gives a share of its
// full light.
//
// A phase dimmer lets the last part of each half cycle through, which makes a filament ripple as much more as the power that it
// gets does, and a driver go out; pulses switch all but a filament, which follows the less the faster they are. What an
// electronic supply sends on is steady.
func (h *Head) Ripple(mains, level float64, by Dimming) lens.Ripple {
	own := lens.Ripple{Hertz: halfCycles * mains, Depth: h.Flicker}
	filament := h.Technology == term.Tungsten
	hertz := by.Hertz
	if hertz == 0 {
		hertz = halfCycles * mains
	}
	switch {
	case by.Kind == term.CurrentDimmer:
		return lens.Ripple{}
	case level >= 1 || !(level > 0):
		return own
	case by.Kind == term.PhaseDimmer && filament:
		own.Depth = min(1, own.Depth*phaseRipple(level))
	case by.Kind == term.PulseDimmer && filament && hertz > 0 && own.Hertz > 0:
		return lens.Ripple{Hertz: hertz, Depth: min(1, own.Depth*own.Hertz/hertz)}
	case (by.Kind == term.PhaseDimmer || by.Kind == term.PulseDimmer) && !filament:
		return lens.Ripple{Hertz: hertz, Duty: level}
	}
	return own
}

// filamentPower is the power of the power of a filament by which its light goes: light goes as the voltage to the 3.4, and power to
// the 1.55 (common exponents of gas-filled lamps; from memory of lighting handbooks).
const filamentPower = 3.4 / 1.55

// phaseRipple is how much deeper the light of a filament ripples behind a phase dimmer that lets so much of it through, by its ripple
// at full: the ratio of the wave of power at twice the mains to its mean. From an angle a of the half cycle on, power goes as
// sin²; its mean is (pi - a + sin 2a/2)/2 pi, and its wave the length of ((pi - a) + sin 2a - sin 4a/4, sin⁴ a ...)/pi, here
// integrated.
func phaseRipple(level float64) float64 {
	power := math.Pow(level, 1/filamentPower)
	low, high := 0.0, math.Pi
	for range 60 {
		if a := (low + high) / 2; (math.Pi-a+math.Sin(2*a)/2)/math.Pi > power {
			low = a
		} else {
			high = a
		}
	}
	return cutWave(high)
}

// cutWave is the amplitude of the wave at twice the mains of what a phase dimmer lets through from an angle on, by its mean: 1 of the
// whole, 2 of the last flick. The integrals of sin² x, sin² x cos 2x and sin² x sin 2x run from the angle to pi.
func cutWave(from float64) float64 {
	mean := (math.Pi - from + math.Sin(2*from)/2) / 2
	if mean < 1e-9 {
		return 2
	}
	cos := -math.Sin(2*from)/4 - (math.Pi-from)/4 + math.Sin(4*from)/16
	sin := -math.Pow(math.Sin(from), 4) / 2
	return 2 * math.Hypot(cos, sin) / mean
}
