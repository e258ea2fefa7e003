package radiosity

import (
	"context"

	"scrimshaw/plan/light/internal/parallel"
)

// Solve follows the light of lamps, each at a drive of {1, 1, 1}.
func (t *Transport) Solve(ctx context.Context, lamps []Lamp) (*Solution, error) {
	s := &Solution{t: t, lamps: len(lamps)}
	if t.Dark() || len(t.patches) <= 1 {
		return s, nil
	}
	err := s.illuminate(ctx, lamps)
	if err != nil {
		return nil, err
	}
	if err = s.passOn(ctx); err != nil {
		return nil, err
	}
	s.brighten()
	if s.cells, err = s.nearby(ctx, lamps); err != nil {
		return nil, err
	}
	err = s.read(ctx, lamps)
	s.bright, s.rest, s.cells, s.firsts, s.halves, s.uneven, s.hot = nil, nil, nil, nil, nil, nil, nil
	return s, err
}

// illuminate finds what comes straight from the lamps, and what is hot by it.
func (s *Solution) illuminate(ctx context.Context, lamps []Lamp) (err error) {
	t := s.t
	s.firsts, s.uneven = make([]first, len(lamps)), make([][]bool, len(lamps))
	for i, lamp := range lamps {
		if s.firsts[i], s.uneven[i], err = t.straight(ctx, lamp); err != nil {
			return err
		}
	}
	s.hot, s.halves = make([]spotted, len(lamps)), make([][]float32, len(lamps))
	for i, lamp := range lamps {
		s.hot[i], s.halves[i] = t.spots(lamp, s.firsts[i]), make([]float32, len(t.patches))
	}
	return nil
}

// passOn solves the blocks of all lamps.
func (s *Solution) passOn(ctx context.Context) error {
	t := s.t
	each := width / t.Channels()
	s.blocks = make([]block, (s.lamps+each-1)/each)
	solvers := make([]*solver, parallel.Workers(t.workers, len(s.blocks)))
	err := parallel.For(ctx, t.workers, len(s.blocks), func(worker, i int) {
		if solvers[worker] == nil {
			solvers[worker] = newSolver(t)
		}
		end := min((i+1)*each, s.lamps)
		s.blocks[i] = solvers[worker].run(ctx, s.firsts[i*each:end], s.hot[i*each:end], s.halves[i*each:end])
	})
	for i := range s.blocks {
		s.passes = max(s.passes, s.blocks[i].passes)
	}
	return err
}
