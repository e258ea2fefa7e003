package resolve

import (
	"math"
	"slices"

	"scrimshaw/plan"
	"scrimshaw/plan/internal/report"
	"scrimshaw/plan/lens"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/unit"
)

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
		case r.isDirect(c):
			all = append(all, 0)
		default:
			if hertz := r.ofSource(c, func(c *scene.Circuit) scene.Given[float64] { return c.Hertz }); hertz.Set {
				all = append(all, hertz.Value)
			}
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
