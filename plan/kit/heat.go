package kit

import "scrimshaw/plan/term"

// radiation is what becomes of the power of a lamp: the share that leaves it as light and heat rays, and the light, lm,
// in a watt of those.
type radiation struct{ share, lumens float64 }

// radiations are those of each technology: a filament at 3200 K sends out nine tenths and 28 lm to the watt of it, the heat of
// an LED stays in its body, a discharge lamp lies between. Common practice, from textbook balances of lamps.
var radiations = map[term.Technology]radiation{
	term.Tungsten: {0.9, 28}, term.Discharge: {0.75, 125}, term.LED: {0.35, 320}, term.Fluorescent: {0.45, 200},
}

// FilamentWatts is the power of a filament lamp that heats what is around it or before it as much as the head does, W; 0
// where nothing says what makes its light.
func (h *Head) FilamentWatts() float64 {
	return h.Watts * radiations[h.Technology].share / radiations[term.Tungsten].share
}

// Heat is the power, W/m², that comes with so much of the head's light, lx; 0 where nothing says what makes it.
func (h *Head) Heat(lux float64) float64 {
	r, known := radiations[h.Technology]
	if !known {
		return 0
	}
	return lux / r.lumens
}
