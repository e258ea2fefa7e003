package kit

import (
	"math"
	"slices"

	"scrimshaw/plan/photometry"
	"scrimshaw/plan/term"
)

// What scrims pass: a single takes half a stop, a double a whole one. Common practice.
var scrimPasses = map[term.Scrim]float64{
	term.SingleScrim: math.Sqrt2 / 2, term.HalfSingleScrim: math.Sqrt2 / 2,
	term.DoubleScrim: 0.5, term.HalfDoubleScrim: 0.5,
}

// narrowestField is the field angle, degrees, to which a head of the kind that takes scrims narrows its beam at full spot:
// common practice, 10 to 14.
const narrowestField = 12

// dropScrims puts the scrims of the choice before the head's light.
func (b *builder) dropScrims(u *Unit) {
	choice := b.choice.Scrims
	if choice == nil {
		return
	}
	h := &b.head
	if !h.TakesScrims() {
		b.fault(choice.Span, CodeNoScrims, "leave them out, dim it, or hang a net before it", "no scrims go into %s", nameWithModifier(u.Name, b.choice.Modifier))
		return
	}
	whole, half := 1.0, 1.0
	for _, s := range choice.Scrims {
		if s.Half() {
			half *= scrimPasses[s]
		} else {
			whole *= scrimPasses[s]
		}
	}
	before := h.Source.Flux
	h.open.light = h.Source.Distribution
	if half < 1 {
		across, _ := photometry.FieldAngle(h.Source.Distribution)
		d, share := photometry.NewHalfScrim(h.Source.Distribution, half, across, narrowestField)
		h.Source.Distribution = d
		whole *= share
	}
	h.Source.Flux *= whole
	h.Scrims, h.open.share = choice.Scrims, whole
	b.step("through its scrims", "flux x share that passes", "", h.Source.Flux, "lm", before, whole)
}

// openHead is what a head that has scrims in it is without them.
type openHead struct {
	light photometry.Distribution // where it goes
	share float64                 // of its flux that its scrims pass
}

// TakesScrims says whether wire scrims go into the head.
func (h *Head) TakesScrims() bool {
	return (h.Class == term.Lensed || h.Class == term.Bare) && h.Source.Opening.Form != photometry.Tube
}

// Unscrimmed is the head without its scrims.
func (h Head) Unscrimmed() Head {
	if len(h.Scrims) > 0 {
		h.Source.Flux /= h.open.share
		h.Source.Distribution, h.Scrims = h.open.light, nil
	}
	return h
}

// Scrimmed is the head with more whole scrims in it.
func (h Head) Scrimmed(more []term.Scrim) Head {
	if len(h.Scrims) == 0 {
		h.open = openHead{h.Source.Distribution, 1}
	}
	for _, s := range more {
		h.Source.Flux *= scrimPasses[s]
		h.open.share *= scrimPasses[s]
	}
	h.Scrims = slices.Concat(h.Scrims, more)
	return h
}
