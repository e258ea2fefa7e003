// Package supply says what the circuits of a set-up carry: which lights, how many amps, and how much is left.
package supply

import (
	"math"

	"scrimshaw/plan"
	"scrimshaw/plan/power"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
)

// Supply is what feeds a set-up. The zero Supply is of one that names no circuits.
type Supply struct {
	Loads []Load // one a circuit, in their order
	Loose []Draw // the lights on none of them that draw power
}

// Load is what one circuit carries, with all that it feeds.
type Load struct {
	Circuit *plan.Circuit
	From    *Load   // what feeds it; nil: nothing of the scene
	Feeds   []*Load // what it feeds
	Draws   []Draw  // the lights on it itself
	Full    float64 // with every light at full, amps; of three phases on the one that carries most
	AsSet   float64 // with each at its level, amps: in the set-up, or after the cue that takes most
	Cue     string  // that cue; "": the set-up itself takes as much
	Inrush  float64 // sum of the peaks as each light on it is switched on, amps; of those whose peak is known
	Known   bool    // whether its voltage is known: without, no current is
	Leakage float64 // that flows down the earth, mA
	Feeder  *Run    // the cable from what feeds it; nil: none that is known

	Flow Flow // with every light at full
	Set  Flow // with each at its level, in the state that AsSet is of

	below []*Draw // the lights on it and on what it feeds, as they stand in the scene
}

// Draw is what one light takes, all units of it together.
type Draw struct {
	Light   *plan.Light
	Watts   float64 // at full; 0: not known
	Full    float64 // at full, amps; 0: not known
	Inrush  float64 // peak as it is switched on, amps; 0: not known
	Leakage float64 // down the earth, mA
	Run     *Run    // its cable; nil: there is no way for one, or nobody says from where
}

// Of adds up the circuits of a set-up.
func Of(s *plan.Setup) (all Supply) {
	if len(s.Circuits) == 0 {
		return all
	}
	for i := range s.Circuits {
		all.Loads = append(all.Loads, loadOf(s, &s.Circuits[i]))
	}
	all.join()
	all.gather(s)
	for i := range all.Loads {
		if all.Loads[i].From == nil {
			all.Loads[i].sum(s)
		}
	}
	for i := range all.Loads {
		all.Loads[i].layCables(s)
	}
	for i := range s.Lights {
		l := &s.Lights[i]
		if d := drawOf(l, l.Mains, false); l.Circuit == "" && d.Watts > 0 {
			all.Loose = append(all.Loose, d)
		}
	}
	return all
}

// join links circuits to those that feed them.
func (s *Supply) join() {
	for i := range s.Loads {
		l := &s.Loads[i]
		if from := s.Of(l.Circuit.From); from != nil {
			l.From, from.Feeds = from, append(from.Feeds, l)
		}
	}
}

// gather gives each light to its circuit and to all that feeds that.
func (s *Supply) gather(setup *plan.Setup) {
	for i := range setup.Lights {
		load, d := s.DrawOf(&setup.Lights[i])
		for ; load != nil; load = load.From {
			load.below = append(load.below, d)
		}
	}
}

// DrawOf is what a light takes, and the circuit that it is on; nil where it is on none.
func (s *Supply) DrawOf(l *plan.Light) (*Load, *Draw) {
	load := s.Of(l.Circuit)
	if load == nil {
		return nil, nil
	}
	for i := range load.Draws {
		if load.Draws[i].Light == l {
			return load, &load.Draws[i]
		}
	}
	return nil, nil
}

// loadOf gathers what is on one circuit itself.
func loadOf(s *plan.Setup, c *plan.Circuit) Load {
	load := Load{Circuit: c, Known: c.Volts > 0}
	for i := range s.Lights {
		if l := &s.Lights[i]; l.Circuit == c.Name {
			load.Draws = append(load.Draws, drawOf(l, c.Volts, c.Direct))
		}
	}
	return load
}

// cueName is the name of the cue that leads to a state; "" of the first.
func cueName(s *plan.Setup, state int) string {
	if state == 0 {
		return ""
	}
	return s.Cues[state-1].Name
}

// drawOf is what a light takes at a voltage. On direct current there is no power factor.
func drawOf(l *plan.Light, volts float64, direct bool) Draw {
	count := float64(l.Count)
	d := Draw{Light: l, Watts: l.Head.Watts * count, Inrush: l.Head.Inrush * count}
	if !(d.Watts > 0 && volts > 0) {
		return d
	}
	factor := l.Head.PowerFactor
	if direct {
		factor = 1
	}
	d.Full = power.Current(d.Watts, volts, factor)
	if !direct {
		d.Leakage = count * leakageOf(l)
	}
	return d
}

// shareAtLevel is the share of its full current that a light takes at a level. Drivers of LED take current as they give light; a ballast
// is reckoned at full, since nothing that is published says how its current falls. Common practice.
func shareAtLevel(l *plan.Light, level float64) float64 {
	switch {
	case level <= 0:
		return 0
	case l.Head.Technology == term.LED:
		return l.Head.LightAt(level)
	case l.Head.Technology == term.Tungsten:
		return power.DimmedFilament(l.Head.LightAt(level))
	}
	return 1
}

// leakageOf is what one unit of a light sends down its earth, mA: as the kit says, else what an electronic supply usually does. A filament and a bulb
// have no earth to speak of.
func leakageOf(l *plan.Light) float64 {
	switch u := l.Head.Unit; {
	case u != nil && u.Leakage != nil:
		return *u.Leakage
	case l.Head.Technology == term.Tungsten, l.Head.Bulb != nil:
		return 0
	}
	return power.SupplyLeakage
}

// Of is what a circuit carries; nil where there is none of that name.
func (s *Supply) Of(circuit string) *Load {
	for i := range s.Loads {
		if s.Loads[i].Circuit.Name == circuit {
			return &s.Loads[i]
		}
	}
	return nil
}

// Room is the current that is left with every light at full, A; negative where there is too much.
func (l *Load) Room() float64 { return l.Circuit.Limit() - l.Full }

// slack is how far over its limit a circuit may be by rounding, A.
const slack = 1e-9

// Overloaded says whether it carries more than it may with every light at full.
func (l *Load) Overloaded() bool { return l.Known && l.Room() < -slack }

// OverPower says whether a generator or a battery has to give more watts or volt-amperes than it can, with every light at full.
func (l *Load) OverPower() bool {
	c := l.Circuit
	return c.Watts > 0 && l.Flow.Watts > c.Watts+slack || c.VoltAmps > 0 && l.Flow.VoltAmps > c.VoltAmps+slack
}

// Leaks says whether more flows down the earth all the time than the protection of the circuit should stand.
func (l *Load) Leaks() bool {
	return l.Circuit.Residual > 0 && l.Leakage > power.StandingShare*l.Circuit.Residual+slack
}

// Hours is how long a battery, or the fuel in a generator, lasts, h; 0 where nobody knows. A battery feeds the lights as they are set, and a generator
// burns what it does at its full load.
func (l *Load) Hours() float64 {
	switch c := l.Circuit; {
	case c.Energy > 0 && l.Set.Watts > 0:
		return c.Energy * c.Usable / l.Set.Watts
	case c.Tank > 0 && c.Burn > 0:
		return c.Tank / c.Burn
	}
	return 0
}

// AmpsOver prints a load, rounded up.
func AmpsOver(amps float64) string { return unit.FormatAmps(RoundedUp(amps)) }

// RoundedUp is a load rounded up to a tenth of an ampere: a circuit that is full never looks as if it had room.
func RoundedUp(amps float64) float64 { return math.Ceil(10*amps-1e-6) / 10 }

// Unknown are the lights on the circuit, and on what it feeds, of which nothing says what they draw.
func (l *Load) Unknown() (all []*plan.Light) {
	for _, d := range l.below {
		if d.Watts == 0 {
			all = append(all, d.Light)
		}
	}
	return all
}

// Numbers are the numbers of the lights on the circuit and on what it feeds, as they stand on the plan, in the order of the scene.
func (l *Load) Numbers() (all []string) {
	for _, d := range l.below {
		all = append(all, d.Light.Tag)
	}
	return all
}
