// Package supply says what the circuits of a set-up carry: which lights, how many amps, and how much is left.
package supply

import (
	"math"
	"slices"

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

// Load is what one circuit carries.
type Load struct {
	Circuit *plan.Circuit
	Draws   []Draw
	Already float64 // what was on it before, amps
	Full    float64 // with every light at full, amps
	AsSet   float64 // with each at its level, amps: in the set-up, or after the cue that takes most
	Cue     string  // that cue; "": the set-up itself takes as much
	Inrush  float64 // sum of the peaks as each light is switched on, amps; of those whose peak is known
	Known   bool    // whether its voltage is known: without, no current is
}

// Draw is what one light takes, all units of it together.
type Draw struct {
	Light  *plan.Light
	Watts  float64 // at full; 0: not known
	Full   float64 // at full, amps; 0: not known
	AsSet  float64 // at its level, amps
	Inrush float64 // peak as it is switched on, amps; 0: not known
	Run    *Run    // its cable; nil: there is no way for one, or nobody says from where
}

// Of adds up the circuits of a set-up.
func Of(s *plan.Setup) (all Supply) {
	if len(s.Circuits) == 0 {
		return all
	}
	for i := range s.Circuits {
		all.Loads = append(all.Loads, loadOf(s, &s.Circuits[i]))
	}
	for i := range s.Lights {
		l := &s.Lights[i]
		if d := drawOf(l, l.Mains, false); l.Circuit == "" && d.Watts > 0 {
			all.Loose = append(all.Loose, d)
		}
	}
	return all
}

func loadOf(s *plan.Setup, c *plan.Circuit) Load {
	load := Load{Circuit: c, Known: c.Volts > 0}
	if load.Known {
		load.Already = power.Current(c.Already, c.Volts, 1)
	}
	load.Full = load.Already
	states := make([]float64, len(s.Cues)+1) // before the cues and after each, amps
	for i := range s.Lights {
		l := &s.Lights[i]
		if l.Circuit != c.Name {
			continue
		}
		d := drawOf(l, c.Volts, c.Direct)
		d.Run = runOf(s, c, &d)
		load.Draws = append(load.Draws, d)
		load.Full += d.Full
		load.Inrush += d.Inrush
		for k := range states {
			states[k] += d.Full * shareAtLevel(l, s.SettingAfter(l, k).Level)
		}
	}
	for k, amps := range states {
		if amps += load.Already; k == 0 || amps > load.AsSet+slack {
			load.AsSet, load.Cue = amps, cueName(s, k)
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
	d.AsSet = d.Full * shareAtLevel(l, l.Level)
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

// AmpsOver prints a load, rounded up.
func AmpsOver(amps float64) string { return unit.FormatAmps(RoundedUp(amps)) }

// RoundedUp is a load rounded up to a tenth of an ampere: a circuit that is full never looks as if it had room.
func RoundedUp(amps float64) float64 { return math.Ceil(10*amps-1e-6) / 10 }

// Unknown are the lights on the circuit of which nothing says what they draw.
func (l *Load) Unknown() (all []*plan.Light) {
	for _, d := range l.Draws {
		if d.Watts == 0 {
			all = append(all, d.Light)
		}
	}
	return all
}

// Move is a light that goes from one circuit to another.
type Move struct {
	Light *plan.Light
	To    *Load
	Amps  float64 // that it takes there
}

// Relief is the least that brings a circuit under its limit: the fewest lights that find room on others, and of as few those that take
// the least current away. It is nil where no lights do.
func (s *Supply) Relief(from *Load) []Move {
	for most := 1; most <= len(from.Draws) && most <= mostMoves; most++ {
		r := relief{from: from, most: most, rooms: make([]float64, len(s.Loads))}
		for i := range s.Loads {
			r.rooms[i] = s.Loads[i].Room()
		}
		if r.search(s.Loads, 0, nil, 0); r.best != nil {
			return r.best
		}
	}
	return nil
}

// mostMoves bounds how many lights an advice moves: who has to move more begins anew.
const mostMoves = 3

// relief looks for moves by trying all of them, a light after the other.
type relief struct {
	from  *Load
	most  int
	rooms []float64 // left on each circuit, A
	best  []Move
	least float64 // the current that the best takes away, A
}

func (r *relief) search(loads []Load, first int, moved []Move, away float64) {
	if r.from.Room()+away >= -slack {
		if len(moved) > 0 && (r.best == nil || away < r.least-slack) {
			r.best, r.least = slices.Clone(moved), away
		}
		return
	}
	if len(moved) == r.most {
		return
	}
	for i := first; i < len(r.from.Draws); i++ {
		r.place(loads, i, moved, away)
	}
}

// place tries a light on every other circuit that has room for it.
func (r *relief) place(loads []Load, i int, moved []Move, away float64) {
	d := &r.from.Draws[i]
	if d.Full == 0 {
		return
	}
	for k := range loads {
		to := &loads[k]
		if to.Circuit == r.from.Circuit || !to.takes(d.Light) {
			continue
		}
		amps := drawOf(d.Light, to.Circuit.Volts, to.Circuit.Direct).Full
		if amps > r.rooms[k]+slack {
			continue
		}
		r.rooms[k] -= amps
		r.search(loads, i+1, append(moved, Move{d.Light, to, amps}), away+d.Full)
		r.rooms[k] += amps
	}
}

// takes says whether a light can be on the circuit: it stays on the mains that it is on, and off a battery.
func (l *Load) takes(light *plan.Light) bool {
	return l.Known && !l.Circuit.Direct && l.Circuit.Volts == light.Mains
}
