package supply

import (
	"slices"

	"scrimshaw/plan"
)

// Move is a light that goes from one circuit to another.
type Move struct {
	Light    *plan.Light
	From, To *Load
	Amps     float64 // that it takes there

	before float64 // that it took on the other, A
}

// Relief is the least that brings a circuit under its limit: the fewest lights of those that it feeds which find room on others, on them and on all that feeds
// them, and of as few those that take the least current away. It is nil where no lights do.
func (s *Supply) Relief(from *Load) []Move {
	r := s.newRelief(from)
	r.enough = func() bool { return r.within(from) }
	r.to = func(*Load) bool { return true }
	return r.find()
}

// mostMoves bounds how many lights an advice moves: who has to move more begins anew.
const mostMoves = 3

// movable is a light that a circuit feeds, and what it is on.
type movable struct {
	draw *Draw
	on   *Load
}

// relief looks for moves by trying all of them, a light after the other.
type relief struct {
	supply  *Supply
	from    *Load
	enough  func() bool      // whether the moves do what they are for
	to      func(*Load) bool // whether a light may go there
	movable []movable
	more    map[*Load]*[3]float64 // that the moves put on each circuit, by its phases, A; less than 0 is taken away
	most    int
	best    []Move
	least   float64 // the current that the best takes away, A
}

func (s *Supply) newRelief(from *Load) *relief {
	r := &relief{supply: s, from: from, more: map[*Load]*[3]float64{}}
	for i := range s.Loads {
		r.more[&s.Loads[i]] = &[3]float64{}
	}
	r.gather(from)
	return r
}

// find is the fewest moves that are enough; nil where no few are.
func (r *relief) find() []Move {
	for r.most = 1; r.most <= len(r.movable) && r.most <= mostMoves; r.most++ {
		if r.search(0, nil, 0); r.best != nil {
			return r.best
		}
	}
	return nil
}

// gather lists the lights that a circuit feeds and that draw something, the largest first.
func (r *relief) gather(l *Load) {
	for i := range l.Draws {
		if l.Draws[i].Full > 0 {
			r.movable = append(r.movable, movable{&l.Draws[i], l})
		}
	}
	for _, fed := range l.Feeds {
		r.gather(fed)
	}
}

func (r *relief) search(first int, moved []Move, away float64) {
	if r.enough() {
		if len(moved) > 0 && (r.best == nil || away < r.least-slack) {
			r.best, r.least = slices.Clone(moved), away
		}
		return
	}
	if len(moved) == r.most {
		return
	}
	r.each(first, func(i int, m Move) { r.search(i+1, append(moved, m), away+m.before) })
}

// each calls f with every light from the first on, moved to every other circuit that has room for it.
func (r *relief) each(first int, f func(i int, m Move)) {
	var tried []movable
	for i := first; i < len(r.movable); i++ {
		m := r.movable[i]
		if slices.ContainsFunc(tried, func(o movable) bool { return o.on == m.on && o.draw.alike(m.draw) }) {
			continue // one light is as good as another that is as large
		}
		tried = append(tried, m)
		r.place(i, f)
	}
}

// alike says whether two lights are one to a circuit.
func (d *Draw) alike(o *Draw) bool { return d.Full == o.Full && d.Light.Mains == o.Light.Mains }

// place tries a light on every other circuit that has room for it.
func (r *relief) place(i int, f func(i int, m Move)) {
	m := r.movable[i]
	for k := range r.supply.Loads {
		to := &r.supply.Loads[k]
		if to == m.on || !r.to(to) || !to.takes(m.draw.Light) {
			continue
		}
		move := Move{m.draw.Light, m.on, to, drawOf(m.draw.Light, to.Circuit.Volts, to.Circuit.Direct).Full, m.draw.Full}
		r.move(&move, 1)
		if r.holds(to) {
			f(i, move)
		}
		r.move(&move, -1)
	}
}

// move makes a move, and with -1 takes it back.
func (r *relief) move(m *Move, way float64) {
	r.shift(m.From, -way*m.before)
	r.shift(m.To, way*m.Amps)
}

// shift puts a current on a circuit and on all that feeds it.
func (r *relief) shift(l *Load, amps float64) {
	for phase := 0; l != nil; l = l.From {
		r.more[l][phase] += amps
		if l.From != nil {
			phase = phaseOf(l.Circuit)
			if l.Circuit.Volts > 0 && l.From.Circuit.Volts > 0 {
				amps *= l.Circuit.Volts / l.From.Circuit.Volts
			}
		}
	}
}

// within says whether a circuit carries no more than it may, with the moves.
func (r *relief) within(l *Load) bool {
	for phase, amps := range r.more[l] {
		if l.Flow.Amps[phase]+amps > l.Circuit.Limit()+slack {
			return false
		}
	}
	return true
}

// holds says whether a circuit and all that feeds it carry no more than they may; what the circuit that is relieved feeds too is judged in the end.
func (r *relief) holds(l *Load) bool {
	for phase := 0; l != nil; l = l.From {
		more := r.more[l][phase]
		if l != r.from && more > slack && l.Flow.Amps[phase]+more > l.Circuit.Limit()+slack {
			return false
		}
		phase = phaseOf(l.Circuit)
	}
	return true
}

// takes says whether a light can be on the circuit: it stays on the mains that it is on, off a battery, and off three phases.
func (l *Load) takes(light *plan.Light) bool {
	box := l.Circuit.ThreePhases || len(l.Feeds) > 0 && len(l.Draws) == 0
	return l.Known && !box && !l.Circuit.Direct && l.Circuit.Volts == light.Mains
}
