package fit

import (
	"math"

	"scrimshaw/plan"
	"scrimshaw/plan/power"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
)

// bulbSlack is how far the mains may be from what a bulb is made for, as a share of that: EN 50160 lets those of a house
// stray as far.
const bulbSlack = 0.1

// mainsFit warns of a bulb or a supply that is made for other mains than those of its circuit.
func (r *checker) mainsFit(l *plan.Light) bool {
	h := &l.Head
	volts := func(v float64) string { return unit.FormatNumber(v) + " V" }
	switch {
	case l.Mains == 0:
	case onBattery(l):
		if share := h.Unit.Battery.Share; l.Level > share {
			r.Warnf(l.Span, CodeMains, "write level: "+unit.FormatPercent(share)+" or less, or feed it from mains", "%s gives %s of its light at most on batteries of %s, and is at %s",
				l.Numbered(), unit.FormatPercent(share), volts(h.Unit.Battery.Volts), unit.FormatPercent(l.Level))
		}
	case h.BulbVolts > 0 && math.Abs(l.Mains/h.BulbVolts-1) > bulbSlack:
		what := "fails or burns out"
		if l.Mains < h.BulbVolts {
			what = "does not light"
			if h.Technology == term.Tungsten {
				what = "gives " + unit.FormatPercent(math.Round(100*power.FilamentLight(l.Mains/h.BulbVolts))/100) + " of its light, and that redder"
			}
		}
		r.Warnf(l.Span, CodeMains, "put one in that is made for "+volts(l.Mains)+"; `scrimshaw kit bulbs` lists some", "%s has a bulb for %s on a circuit of %s, where it %s",
			l.Numbered(), volts(h.BulbVolts), volts(l.Mains), what)
	case h.BulbVolts == 0 && h.Mains[1] > 0 && (l.Mains < h.Mains[0] || l.Mains > h.Mains[1]):
		r.Warnf(l.Span, CodeMains, "put it on another circuit, or take a unit for those mains", "%s takes mains of %s to %s, and its circuit has %s",
			l.Numbered(), unit.FormatNumber(h.Mains[0]), volts(h.Mains[1]), volts(l.Mains))
	}
	return true
}

// onBattery says whether a light is on direct current of about the volts that its unit takes from batteries: a tenth and a half off is their range
// from full to empty (common practice).
func onBattery(l *plan.Light) bool {
	const full = 0.15
	u := l.Head.Unit
	return u != nil && u.Battery.Runs() && math.Abs(l.Mains/u.Battery.Volts-1) <= full
}
