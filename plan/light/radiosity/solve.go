package radiosity

import (
	"context"

	"scrimshaw/plan/light/internal/parallel"
)

// Solve follows the light of lamps, each at levels of {1, 1, 1}.
func (t *Transport) Solve(ctx context.Context, lamps []Lamp) (*Solution, error) {
	s := &Solution{t: t, lamps: len(lamps)}
	if t.Dark() || len(t.patches) <= 1 {
		return s, nil
	}
	err := s.illuminate(ctx, lamps)
	if err != nil {
		return nil, err
	}
	if err = s.solveBlocks(ctx); err != nil {
		return nil, err
	}
	s.setLuminous()
	if s.cells, err = s.lightCells(ctx, lamps); err != nil {
		return nil, err
	}
	if err = s.read(ctx, lamps); err != nil {
		return nil, err
	}
	s.setWithoutHot()
	s.bright, s.brightest, s.rest, s.cells = nil, nil, nil, nil
	s.direct, s.halfDifferences, s.uneven = nil, nil, nil
	return s, nil
}

// illuminate finds what comes straight from the lamps, and what is hot by it.
func (s *Solution) illuminate(ctx context.Context, lamps []Lamp) (err error) {
	t := s.t
	s.direct, s.uneven = make([]directLux, len(lamps)), make([][]bool, len(lamps))
	for i, lamp := range lamps {
		if s.direct[i], s.uneven[i], err = t.directLight(ctx, lamp); err != nil {
			return err
		}
	}
	s.hot, s.halfDifferences = make([]hotParts, len(lamps)), make([][]float32, len(lamps))
	err = parallel.For(ctx, t.workers, len(lamps), func(worker, i int) {
		s.hot[i], s.halfDifferences[i] = t.findHot(worker, lamps[i], s.direct[i]), make([]float32, len(t.patches))
	})
	shareLooks(s.hot)
	return err
}

// solveBlocks solves the blocks of all lamps.
func (s *Solution) solveBlocks(ctx context.Context) error {
	t := s.t
	each := width / t.Channels()
	s.blocks = make([]block, (s.lamps+each-1)/each)
	solvers := make([]*solver, parallel.Workers(t.workers, len(s.blocks)))
	err := parallel.For(ctx, t.workers, len(s.blocks), func(worker, i int) {
		if solvers[worker] == nil {
			solvers[worker] = newSolver(t)
		}
		end := min((i+1)*each, s.lamps)
		s.blocks[i] = solvers[worker].run(ctx, s.direct[i*each:end], s.hot[i*each:end], s.halfDifferences[i*each:end])
	})
	for i := range s.blocks {
		s.passes = max(s.passes, s.blocks[i].passes)
	}
	return err
}
