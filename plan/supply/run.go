package supply

import (
	"scrimshaw/plan"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/power"
)

// Run is the cable from an outlet to a light or to another circuit, and what is lost in it.
type Run struct {
	*plan.Run
	Section float64 // of each core, mm²; 0: no cable of the kit carries as much
	Drop    float64 // share of the voltage that is lost in it with all that it feeds at full
	InAll   float64 // share of it that is lost with what is lost in all cables before it
}

// layCables finds what is lost in the cables of a circuit, from its feed and to its lights.
func (l *Load) layCables(s *plan.Setup) {
	for i := range l.Draws {
		d := &l.Draws[i]
		if d.Light.Cable == nil {
			continue
		}
		d.Run = l.cable(s, d.Light.Cable, l.Circuit.Breaker, 1)
		if d.Run.Section > 0 && l.Known {
			d.Run.Drop = power.CableDrop(d.Run.Length, d.Run.Section, d.Full/float64(d.Light.Count)) / l.Circuit.Volts
		}
		d.Run.InAll = d.Run.Drop + l.before(s)
	}
	l.Feeder = l.feeder(s)
}

// feeder is the cable from what feeds a circuit; nil where nobody knows it.
func (l *Load) feeder(s *plan.Setup) *Run {
	if l.Circuit.Feeder == nil || l.From == nil {
		return nil
	}
	phases := 1
	if l.Circuit.ThreePhases {
		phases = 3
	}
	r := l.cable(s, l.Circuit.Feeder, l.FeederAmps(s), phases)
	switch {
	case r.Section == 0 || !l.Known:
	case l.Circuit.ThreePhases:
		r.Drop = power.PhaseDrop(r.Length, r.Section, l.Full, l.Flow.Neutral()) / l.Circuit.Volts
	default:
		r.Drop = power.CableDrop(r.Length, r.Section, l.Full) / l.Circuit.Volts
	}
	r.InAll = r.Drop + l.From.before(s)
	return r
}

// before is the share of the voltage that is lost in the cables up to a circuit.
func (l *Load) before(s *plan.Setup) float64 {
	if l == nil || l.From == nil {
		return 0
	}
	if r := l.feeder(s); r != nil {
		return r.InAll
	}
	return l.From.before(s)
}

// cable is a run of the least section of the kit that stands what a breaker lets through, A.
func (l *Load) cable(s *plan.Setup, run *plan.Run, amps float64, phases int) *Run {
	return &Run{Run: run, Section: sectionFor(s.Kit, amps, phases)}
}

// FeederAmps is the breaker before the cable that feeds a circuit, A: a box has its breakers behind that cable, so what an outlet of its feed carries
// counts; else the circuit's own is at the near end.
func (l *Load) FeederAmps(s *plan.Setup) float64 {
	if l.Circuit.Item == "" || l.From == nil {
		return l.Circuit.Breaker
	}
	if s.Kit != nil && !l.Circuit.ThreePhases {
		if item := s.Kit.ItemOf(l.From.Circuit.Item); item != nil && item.Breakers > 0 {
			return item.Breakers
		}
	}
	return l.From.Circuit.Breaker
}

// PhaseCores is how many cores a cable of three phases has, with the neutral and the earth.
const PhaseCores = 5

// sectionFor is the least section of a cable of the kit for one or three phases that carries what a breaker lets through, mm²; 0 where none does.
func sectionFor(k *kit.Catalogue, breaker float64, phases int) (least float64) {
	if k == nil {
		return 0
	}
	for _, item := range k.Items {
		if item.Section > 0 && (phases > 1) == (item.Cores >= PhaseCores) && item.Amps >= breaker && (least == 0 || item.Section < least) {
			least = item.Section
		}
	}
	return least
}
