package supply

import "slices"

// Spread is by how much the phase that carries most exceeds the one that carries least, A.
func (f *Flow) Spread() float64 { return spreadOf(f.Amps) }

func spreadOf(amps [3]float64) float64 { return slices.Max(amps[:]) - slices.Min(amps[:]) }

// EvenShare is the share of what a phase may carry by which three phases may differ, and still count as even: common practice, a quarter.
const EvenShare = 0.25

// OutOfBalance says whether the phases of a circuit differ by more than is even, with every light at full. Where those of what feeds it do too, only that one is out of balance.
func (l *Load) OutOfBalance() bool {
	return l.Circuit.ThreePhases && l.Known && l.Flow.Spread() > l.EvenWithin()+slack && (l.From == nil || !l.From.OutOfBalance())
}

// EvenWithin is what the phases of a circuit may differ by, A.
func (l *Load) EvenWithin() float64 { return EvenShare * l.Circuit.Limit() }

// Balance is what makes the phases of a circuit even: the fewest lights that go to another of the circuits that it feeds, and of as few those with
// the least current. Where no few lights do, it is the one that leaves the least between the phases; nil where none makes it less.
func (s *Supply) Balance(of *Load) (moves []Move, left [3]float64) {
	r := s.newRelief(of)
	r.enough = func() bool { return r.short() <= slack }
	r.short = func() float64 { return r.spread() - of.EvenWithin() }
	r.to = of.feeds
	if moves = r.find(); moves == nil {
		moves = r.leastSpread()
	}
	left = of.Flow.Amps
	for _, m := range moves {
		r.move(&m, 1)
	}
	for p := range left {
		left[p] += r.more[of][p]
	}
	return moves, left
}

// feeds says whether a circuit is one that this one feeds, near or far.
func (l *Load) feeds(to *Load) bool {
	for from := to.From; from != nil; from = from.From {
		if from == l {
			return true
		}
	}
	return false
}

// spread is that of the circuit that is looked at, with the moves, A.
func (r *relief) spread() float64 {
	amps := r.from.Flow.Amps
	for p := range amps {
		amps[p] += r.more[r.from][p]
	}
	return spreadOf(amps)
}

// leastSpread is the one move that leaves the least between the phases; nil where none makes it less.
func (r *relief) leastSpread() (best []Move) {
	least := r.spread()
	r.tried = 0
	r.each(0, func(_ int, m Move) {
		if now := r.spread(); now < least-slack {
			least, best = now, []Move{m}
		}
	})
	return best
}
