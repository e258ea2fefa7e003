package supply

import (
	"math"

	"scrimshaw/plan"
	"scrimshaw/plan/power"
	"scrimshaw/plan/term"
)

// Flow is what flows through a circuit in one state of its lights. A circuit of one phase has its current in the first of the three.
type Flow struct {
	Amps     [3]float64 // of each phase, added up as if all were in step: the safe side
	Thirds   float64    // of all phases: the most third harmonic that their supplies and dimmers make, amps
	Watts    float64    // real power, W
	VoltAmps float64    // apparent power, VA
}

// Most is the current of the phase that carries most, A.
func (f *Flow) Most() float64 { return math.Max(f.Amps[0], math.Max(f.Amps[1], f.Amps[2])) }

// Neutral is the current in the neutral of three phases without harmonics, A.
func (f *Flow) Neutral() float64 { return power.Neutral(f.Amps) }

// WorstNeutral is that with all third harmonics in it, A.
func (f *Flow) WorstNeutral() float64 { return power.WithThirds(f.Neutral(), f.Thirds) }

// ThirdShare is the third harmonic as a share of the current of all phases.
func (f *Flow) ThirdShare() float64 {
	if all := f.Amps[0] + f.Amps[1] + f.Amps[2]; all > 0 {
		return f.Thirds / all
	}
	return 0
}

// Uneven is how much more than the mean the phase that carries most does, as a share of the mean.
func (f *Flow) Uneven() float64 {
	if mean := (f.Amps[0] + f.Amps[1] + f.Amps[2]) / 3; mean > 0 {
		return f.Most()/mean - 1
	}
	return 0
}

// add adds a current on one phase.
func (f *Flow) add(phase int, amps, thirds, watts, volts float64) {
	f.Amps[phase] += amps
	f.Thirds += thirds
	f.Watts += watts
	f.VoltAmps += amps * volts
}

// sum adds up a circuit after all that it feeds, in every state of the lights: as they are set, and after each cue.
func (l *Load) sum(s *plan.Setup) (full Flow, states []Flow) {
	states = make([]Flow, len(s.Cues)+1)
	l.own(s, &full, states)
	for _, fed := range l.Feeds {
		fullOf, statesOf := fed.sum(s)
		l.take(fed, &full, &fullOf)
		for k := range states {
			l.take(fed, &states[k], &statesOf[k])
		}
		l.Leakage += fed.Leakage
	}
	l.Flow, l.Full = full, full.Most()
	for k := range states {
		if amps := states[k].Most(); k == 0 || amps > l.AsSet+slack {
			l.Set, l.AsSet, l.Cue = states[k], amps, cueName(s, k)
		}
	}
	return full, states
}

// own adds what is on the circuit itself.
func (l *Load) own(s *plan.Setup, full *Flow, states []Flow) {
	c := l.Circuit
	already := func(f *Flow) {
		phases, amps := 1, 0.0
		if c.ThreePhases {
			phases = 3
		}
		if c.Volts > 0 {
			amps = power.Current(c.Already, c.Volts, 1)
		}
		for p := range phases {
			f.add(p, amps/float64(phases), 0, c.Already/float64(phases), c.Volts)
		}
	}
	already(full)
	for k := range states {
		already(&states[k])
	}
	for i := range l.Draws {
		d := &l.Draws[i]
		l.Inrush += d.Inrush
		l.Leakage += d.Leakage
		full.add(0, d.Full, d.thirds(s, c), d.Watts, c.Volts)
		for k := range states {
			level := s.SettingAfter(d.Light, k).Level
			share := shareAtLevel(d.Light, level)
			states[k].add(0, d.Full*share, d.thirds(s, c)*share, d.Watts*powerAtLevel(d.Light, level), c.Volts)
		}
	}
}

// take adds what a circuit that this one feeds carries: on its phase, and by the ratio of the voltages where there is a transformer between them.
func (l *Load) take(fed *Load, into, of *Flow) {
	ratio := 1.0
	if l.Circuit.Volts > 0 && fed.Circuit.Volts > 0 {
		ratio = fed.Circuit.Volts / l.Circuit.Volts
	}
	into.Thirds += of.Thirds * ratio
	into.Watts += of.Watts
	into.VoltAmps += of.VoltAmps
	if fed.Circuit.ThreePhases {
		for p := range into.Amps {
			into.Amps[p] += of.Amps[p] * ratio
		}
		return
	}
	into.Amps[phaseOf(fed.Circuit)] += of.Amps[0] * ratio
}

// phaseOf is the place of a circuit's phase among the three of what feeds it; the first of a feed that has one.
func phaseOf(c *plan.Circuit) int {
	for p, name := range term.Phases {
		if c.Phase == name {
			return p
		}
	}
	return 0
}

// thirds is the most third harmonic in the current of a light at full, A.
func (d *Draw) thirds(s *plan.Setup, c *plan.Circuit) float64 {
	h := &d.Light.Head
	switch {
	case c.Direct:
		return 0
	case h.Technology != term.Tungsten:
		return d.Full * power.ThirdOfSupply(h.Watts, h.PowerFactor)
	case s.Dims(d.Light) && d.Light.Dimming.Phase():
		return d.Full * power.ThirdOfDimmed
	}
	return 0
}

// powerAtLevel is the share of its full power that a light takes at a level.
func powerAtLevel(l *plan.Light, level float64) float64 {
	if l.Head.Technology == term.Tungsten && level > 0 {
		return power.DimmedFilamentPower(l.Head.LightAt(level))
	}
	return shareAtLevel(l, level)
}
