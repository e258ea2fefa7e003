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
	if len(t.receptors) > 0 {
		if err = s.readReceptors(ctx, lamps); err != nil {
			return nil, err
		}
	}
	s.setWithoutHot()
	s.bright, s.brightest, s.rest, s.cells = nil, nil, nil, nil
	s.direct, s.fromHot, s.halfDifferences, s.uneven = nil, nil, nil, nil
	return s, nil
}

// readReceptors reads all receptors.
func (s *Solution) readReceptors(ctx context.Context, lamps []Lamp) (err error) {
	if err = s.setLuminous(ctx); err != nil {
		return err
	}
	if s.cells, err = s.lightCells(ctx, lamps); err != nil {
		return err
	}
	return s.read(ctx, lamps)
}

// illuminate finds what comes straight from the lamps, what is hot by it, and what patches get of that.
func (s *Solution) illuminate(ctx context.Context, lamps []Lamp) (err error) {
	t := s.t
	if s.direct, s.uneven, err = t.directLight(ctx, lamps); err != nil {
		return err
	}
	s.hot = make([]hotParts, len(lamps))
	if err = parallel.For(ctx, t.workers, len(lamps), func(worker, i int) { s.hot[i] = t.findHot(worker, lamps[i], s.direct[i]) }); err != nil {
		return err
	}
	shareLooks(s.hot)
	return s.lightFromHot(ctx)
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
		s.blocks[i] = solvers[worker].run(ctx, s.direct[i*each:end], s.hot[i*each:end], s.fromHot[i*each:end])
	})
	for i := range s.blocks {
		s.passes = max(s.passes, s.blocks[i].passes)
	}
	return err
}
