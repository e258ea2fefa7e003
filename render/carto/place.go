package carto

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
)

// Place finds a place for every label: no box meets another box, a body, a hard obstacle, a
// leader or the rim of the area, and no leaders cross. What has no place on the map goes to the
// table. The same labels get the same places.
//
// Candidate positions and the conflicts between them are searched as Christensen, Marks & Shieber
// do (1995, "An empirical study of algorithms for point-feature label placement", ACM
// Transactions on Graphics 14(3), p. 203): a greedy start, then simulated annealing, their best
// method, over moves that keep every label clear: a label takes a place, whoever stands there
// looks for another.
func Place(labels []Label, opts PlaceOptions) []Placement {
	s := newSolver(labels, opts)
	s.greedy()
	s.anneal()
	s.descend()
	s.restore()
	out := make([]Placement, len(labels))
	for i := range labels {
		out[i] = s.now(i).Placement
	}
	return out
}

// solver is one run of Place.
type solver struct {
	labels    []Label
	opts      PlaceOptions
	bodies    []r2.Box
	bodyBins  *bins
	obstacles *obstacleIndex
	choices   [][]candidate // by label, cheapest first; the last is the table
	at        []int         // by label: its choice now
	conflicts *conflicts    // between the choices
	set       []uint64      // memory for a set of choices
	log       []moved       // what has changed since the last move began
	seed      uint64
}

// moved is a label and the choice that it had.
type moved struct{ label, was int }

func newSolver(labels []Label, opts PlaceOptions) *solver {
	if opts.Rounds <= 0 {
		opts.Rounds = 100
	}
	if opts.Gap <= 0 {
		opts.Gap = 1
	}
	s := &solver{labels: labels, opts: opts, at: make([]int, len(labels))}
	s.bodyBins = newBins(opts.Area, 8)
	s.obstacles = indexObstacles(opts.Obstacles, opts.Area)
	for i, l := range labels {
		body := l.Body
		if body == (r2.Box{}) {
			body = r2.Box{Min: l.Anchor, Max: l.Anchor}
		}
		s.bodies = append(s.bodies, body)
		s.bodyBins.put(i, body)
	}
	for i := range labels {
		choices := s.candidates(i)
		slices.SortStableFunc(choices, func(a, b candidate) int { return cmp.Compare(a.cost, b.cost) })
		s.choices = append(s.choices, cheaperThanTable(choices))
		s.at[i] = len(s.choices[i]) - 1
	}
	s.conflicts = newConflicts(s.choices, opts)
	return s
}

// cheaperThanTable leaves out what would be worse than the table.
func cheaperThanTable(choices []candidate) []candidate {
	return choices[:1+slices.IndexFunc(choices, func(c candidate) bool { return !c.On })]
}

func (s *solver) now(i int) *candidate { return &s.choices[i][s.at[i]] }

// choose gives label i a choice, and logs the one that it had.
func (s *solver) choose(i, to int) {
	if to == s.at[i] {
		return
	}
	s.log = append(s.log, moved{i, s.at[i]})
	s.at[i] = to
}

// undo takes back what the log holds.
func (s *solver) undo() {
	for n := len(s.log) - 1; n >= 0; n-- {
		s.choose(s.log[n].label, s.log[n].was)
	}
	s.log = s.log[:0]
}

// cheapest returns the first choice of label i that nobody stands in the way of.
func (s *solver) cheapest(i int) (n int) {
	n, s.set = s.conflicts.firstClear(i, s.at, s.set)
	return n
}

// greedy gives the labels their cheapest free places, those with the fewest choices first.
func (s *solver) greedy() {
	order := make([]int, len(s.labels))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(len(s.choices[a]), len(s.choices[b])) })
	for _, i := range order {
		s.choose(i, s.cheapest(i))
	}
}

// anneal moves labels at random, ever less often to where the whole becomes worse, and keeps the
// best that was met.
func (s *solver) anneal() {
	best, cost := slices.Clone(s.at), s.total()
	now := cost
	rounds := s.rounds()
	for n := range rounds {
		heat := heatAt(float64(n) / float64(rounds))
		i := int(s.random() * float64(len(s.labels)))
		to := favouringFirst(s.random(), len(s.choices[i]))
		if s.choices[i][to].cost-s.now(i).cost > 10*heat || to == s.at[i] {
			continue // hardly ever accepted, whoever moves away
		}
		if change := s.move(i, to); s.accepts(change, heat) {
			now += change
		} else {
			s.undo()
		}
		if now < cost-1e-9 {
			copy(best, s.at)
			cost = now
		}
	}
	for i, n := range best {
		s.choose(i, n)
	}
}

// favouringFirst picks one of n by a number in [0, 1): its square favours the first, which is cheap.
func favouringFirst(r float64, n int) int { return int(r * r * float64(n)) }

// heatAt is what a move may cost more and be taken in a third of all cases, after a share of the moves: from half a step of the
// ladder down to a mm of leader.
func heatAt(share float64) float64 {
	return formCost / 2 * math.Pow(2/float64(formCost), share)
}

// accepts says whether a move that costs so much more is taken: one that costs no more always, another by chance (Metropolis et al.
// 1953, "Equation of state calculations by fast computing machines", J. Chem. Phys. 21(6), p. 1087).
func (s *solver) accepts(change, heat float64) bool {
	return change <= 0 || s.random() < math.Exp(-change/heat)
}

// rounds is how many moves are tried. In a crowd they are fewer for each label: most of it finds no place, however
// long one looks.
func (s *solver) rounds() int {
	const enough, least = 36000, 30 // moves in all; moves of each label
	n := len(s.labels)
	return min(s.opts.Rounds*n, max(enough, least*n))
}

// move gives label i a choice, lets whoever stands there find another place, and returns what
// that costs more.
func (s *solver) move(i, to int) (change float64) {
	s.log = s.log[:0]
	change = -s.now(i).cost
	s.choose(i, to)
	change += s.now(i).cost
	driven := s.conflicts.conflicting(i, s.at)
	for _, j := range driven {
		change -= s.now(j).cost
		s.choose(j, len(s.choices[j])-1)
	}
	for _, j := range driven {
		s.choose(j, s.cheapest(j))
		change += s.now(j).cost
	}
	return change
}

// descend lets each label take a cheaper place that is free, until none has one.
func (s *solver) descend() {
	for again := true; again; {
		again = false
		for i := range s.labels {
			if n := s.cheapest(i); n < s.at[i] {
				s.choose(i, n)
				again = true
			}
		}
	}
}

// restore gives labels that say less than they could each of their better places in turn, whoever stands there looking for
// another, where the whole is the better for it. What chance passed by it finds; among many it would look for long, and in
// vain.
func (s *solver) restore() {
	const mostShort, most = 5, 160 // labels; places of one label
	var short []int
	for i := range s.labels {
		if s.now(i).Form > 0 {
			short = append(short, i)
		}
	}
	if len(short) > mostShort {
		return
	}
	for _, i := range short {
		for to := 0; s.now(i).Form > 0 && to < min(s.at[i], most); to++ {
			if s.move(i, to) >= 0 {
				s.undo()
			}
		}
	}
	s.descend()
}

func (s *solver) total() (cost float64) {
	for i := range s.labels {
		cost += s.now(i).cost
	}
	return cost
}

// random returns the next of a fixed series of numbers in [0, 1) (splitmix64: Steele, Lea & Flood
// 2014, "Fast splittable pseudorandom number generators", Proc. OOPSLA, p. 453).
func (s *solver) random() float64 {
	s.seed += 0x9e3779b97f4a7c15
	z := s.seed
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return float64((z^z>>31)>>11) / (1 << 53)
}
