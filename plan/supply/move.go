package supply

import (
	"math"
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
	r.short = func() float64 { return r.over(from) }
	r.to = func(*Load) bool { return true }
	return r.find()
}

// mostMoves bounds how many lights an advice moves: who has to move more begins anew. mostTried bounds how many moves are tried for it, so that no
// crowd of lights and circuits takes long: over a hundred lights that all differ come under it.
const (
	mostMoves = 3
	mostTried = 3_000_000
)

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
	short   func() float64        // by how much it is not enough yet, A
	reach   []float64             // by movable: the most of that which a move of it or of a later one takes away, A
	alike   []int                 // by movable: the last one before it that is one with it to a circuit; -1 none
	tried   int                   // moves so far
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
	r.prepare()
	for r.most = 1; r.most <= len(r.movable) && r.most <= mostMoves; r.most++ {
		if r.search(0, nil, 0); r.best != nil {
			return r.best
		}
	}
	return nil
}

// prepare finds of each light what a move of it can do, and which are one to a circuit. Moves add up, whatever was moved before.
func (r *relief) prepare() {
	n := len(r.movable)
	r.reach, r.alike = make([]float64, n+1), make([]int, n)
	last := map[movableKind]int{}
	for i, m := range r.movable {
		r.alike[i] = -1
		kind := movableKind{m.on, m.draw.Full, m.draw.Light.Mains}
		if before, known := last[kind]; known {
			r.alike[i] = before
		}
		last[kind] = i
	}
	for i := n - 1; i >= 0; i-- {
		r.reach[i] = r.reach[i+1]
		for k := range r.supply.Loads {
			if m, ok := r.moveTo(i, &r.supply.Loads[k]); ok {
				r.move(&m, 1)
				sum := 0.0
				for _, amps := range r.more[r.from] {
					sum += math.Abs(amps)
				}
				r.reach[i] = max(r.reach[i], sum)
				r.move(&m, -1)
			}
		}
	}
	for _, more := range r.more {
		*more = [3]float64{} // sums of moves there and back are nought but for their last digits
	}
}

// movableKind is what lights have in common that are one to a circuit.
type movableKind struct {
	on          *Load
	full, mains float64 // A, V
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
	left := float64(r.most - len(moved))
	if left == 0 || r.short() > left*r.reach[first]+2*slack || r.best != nil && away >= r.least-slack {
		return // what is left to move does not do, or not with less
	}
	r.each(first, func(i int, m Move) { r.search(i+1, append(moved, m), away+m.before) })
}

// each calls f with every light from the first on, moved to every other circuit that has room for it.
func (r *relief) each(first int, f func(i int, m Move)) {
	for i := first; i < len(r.movable); i++ {
		if r.alike[i] >= first {
			continue // one light is as good as another that is as large
		}
		r.place(i, f)
	}
}

// place tries a light on every other circuit that has room for it.
func (r *relief) place(i int, f func(i int, m Move)) {
	for k := range r.supply.Loads {
		move, ok := r.moveTo(i, &r.supply.Loads[k])
		if r.tried++; !ok || r.tried > mostTried {
			continue
		}
		r.move(&move, 1)
		if r.holds(move.To) {
			f(i, move)
		}
		r.move(&move, -1)
	}
}

// moveTo is the move of a light to a circuit; not ok where it is there already, or may not go there.
func (r *relief) moveTo(i int, to *Load) (m Move, ok bool) {
	of := &r.movable[i]
	if to == of.on || !r.to(to) || !to.takes(of.draw.Light) {
		return Move{}, false
	}
	return Move{of.draw.Light, of.on, to, drawOf(of.draw.Light, to.Circuit.Volts, to.Circuit.Direct).Full, of.draw.Full}, true
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
func (r *relief) within(l *Load) bool { return r.over(l) <= slack }

// over is by how much a circuit carries more than it may, with the moves, A.
func (r *relief) over(l *Load) (most float64) {
	for phase, amps := range r.more[l] {
		most = max(most, l.Flow.Amps[phase]+amps-l.Circuit.Limit())
	}
	return most
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
