package resolve

import (
	"math"
	"slices"

	"scrimshaw/plan"
	"scrimshaw/plan/internal/report"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/lens"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
)

// circuitPass takes the circuits.
type circuitPass struct{ *placer }

// feed resolves every circuit.
func (r *circuitPass) feed() {
	for i := range r.s.Circuits {
		c := &r.s.Circuits[i]
		volts := r.circuitVolts(c)
		leave := r.About(c.Path)
		if volts == 0 {
			r.Warnf(c.Span, CodeNoVoltage, "add volts:, as volts: 24", "nothing says the voltage of %s, and so not its amps", c.Name)
		}
		if !c.Volts.Set && volts > 0 {
			r.assume(c.Path, "volts", unit.FormatNumber(volts)+" V")
		}
		circuit := plan.Circuit{
			Name: c.Name, Path: c.Path, Kind: c.Kind.Or(scene.DefaultFeed), Volts: volts, Breaker: c.Breaker.Value,
			Rule: c.Rule.Or(scene.DefaultRule), Already: c.Already.Value, Direct: isDirect(c), Span: c.Span,
		}
		if c.At.Set {
			if spot, ok := r.placed(c.Span, c.At, nil); ok {
				circuit.Outlet = &spot.At
			}
		}
		r.out.Circuits = append(r.out.Circuits, circuit)
		leave()
	}
}

// isDirect says whether a circuit gives direct current.
func isDirect(c *scene.Circuit) bool {
	return c.Kind.Value == term.Battery || c.Hertz.Set && c.Hertz.Value == 0
}

// circuitVolts is the voltage of a circuit: as it is written, else by the frequency of its mains. Of direct current it is not
// known, and 0.
func (r *circuitPass) circuitVolts(c *scene.Circuit) float64 {
	const between = 55 // Hz
	switch {
	case c.Volts.Set:
		return c.Volts.Value
	case isDirect(c):
		return 0
	case c.Hertz.Set && c.Hertz.Value > between, !c.Hertz.Set && r.s.Feet:
		return kit.MainsLow
	}
	return kit.MainsHigh
}

// mainsSlack is how far a frequency may be from 50 or 60 Hz and still be that of the mains, Hz: a small
// generator drifts by a few per cent (common practice). What is further off, as direct current or the 400 Hz
// of an aircraft, says nothing of the mains.
const mainsSlack = 3

// sixtyHertz reports whether the mains of the scene run at 60 Hz: as its circuits say, else as
// they do where lengths are in feet.
func (r *draft) sixtyHertz() bool {
	for i := range r.s.Circuits {
		hertz := r.s.Circuits[i].Hertz
		for _, mains := range [...]float64{mains50, mains60} {
			if hertz.Set && math.Abs(hertz.Value-mains) <= mainsSlack {
				return mains == mains60
			}
		}
	}
	return r.s.Feet
}

// mainsOf is the voltage that a light gets: that of its circuit; of one that names none that of all circuits, where they
// agree. It is 0 where nothing says it.
func (r *lightPass) mainsOf(l *scene.Light) float64 {
	var all []float64
	for i := range r.out.Circuits {
		if c := &r.out.Circuits[i]; !l.Circuit.Set || c.Name == l.Circuit.Value {
			all = append(all, c.Volts)
		}
	}
	if all = slices.Compact(all); len(all) == 1 {
		return all[0]
	}
	return 0
}

// hertzOf is the frequency of the mains that a light is on: that of its circuit, or of all where it names none and they agree; 0 on
// direct current. Where nothing says it, told is false, and the mains are those of the scene.
func (r *lightPass) hertzOf(l *scene.Light) (hertz float64, told bool) {
	var all []float64
	for i := range r.s.Circuits {
		c := &r.s.Circuits[i]
		switch {
		case l.Circuit.Set && c.Name != l.Circuit.Value:
		case isDirect(c):
			all = append(all, 0)
		case c.Hertz.Set:
			all = append(all, c.Hertz.Value)
		}
	}
	if all = slices.Compact(all); len(all) == 1 {
		return all[0], true
	}
	return report.Either(r.sixtyHertz(), mains60, mains50), false
}

// The mains of the world, 1/s.
const (
	mains50 = 50.0
	mains60 = 60.0
)

// ripple is how a light goes up and down on its mains, at its level, behind its dimmer.
func (r *lightPass) ripple(written *scene.Light, l *plan.Light) {
	l.Hertz, _ = r.hertzOf(written)
	l.Dimming = written.Dimmer.Value
	l.Ripple = l.RippleAt(l.Setting())
	r.assumeMains(written, l.Ripple)
}

// assumeMains lists the mains of a light that goes up and down on them, where nothing says them.
func (r *lightPass) assumeMains(written *scene.Light, ripple lens.Ripple) {
	if hertz, told := r.hertzOf(written); !told && !ripple.Steady() {
		r.assumeOnce("", "mains", unit.FormatNumber(hertz)+" Hz")
	}
}
