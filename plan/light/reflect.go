package light

import (
	"context"
	"slices"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/light/radiosity"
)

// reflect works out what comes back of the fresh lights from the surfaces of the set.
func (w *World) reflect(ctx context.Context, b *Basis, lamps []*readyLamp, fresh []int, p *progress) error {
	if w.direct || len(fresh) == 0 {
		return nil
	}
	if b.transport == nil {
		t, err := traceSet(ctx, w, w.radiosity, b.resolved, b.targets.Lattices)
		if err != nil {
			return err
		}
		b.transport = t
	}
	p.step(linksWork)
	if b.transport.Dark() {
		return nil
	}
	solution, read, err := w.solve(ctx, b, lamps, fresh)
	if err != nil {
		return err
	}
	p.step(solveWork)
	for k, i := range fresh {
		c := &b.columns[i]
		w.addReflected(c, b.Lights[i], read, k, len(b.resolved))
		for n := range b.resolved {
			c.rayError = append(c.rayError, read.Spread(n, k))
		}
	}
	if b.mix != nil {
		return b.mixReflected(ctx, solution, p)
	}
	return b.reflectedFields(ctx, solution, fresh, p)
}

// solve follows the light of the fresh lights from surface to surface. read is what receptors get of it.
func (w *World) solve(ctx context.Context, b *Basis, lamps []*readyLamp, fresh []int) (solution *radiosity.Solution, read *backAtReceptors, err error) {
	seen := make([]radiosity.Lamp, len(fresh))
	for k, i := range fresh {
		if lamps[i].surface == nil {
			lamps[i].surface = w.surfaceLampOf(lamps[i].lamp)
		}
		seen[k] = lamps[i].surface
	}
	if solution, err = b.transport.Solve(ctx, seen); err != nil {
		return nil, nil, err
	}
	read, err = w.refine(ctx, b, seen, fresh, solution)
	return solution, read, err
}

// reflectedFields reads the lattices.
func (b *Basis) reflectedFields(ctx context.Context, solution *radiosity.Solution, fresh []int, p *progress) error {
	for k := range b.targets.Lattices {
		planes, err := solution.Lattice(ctx, k)
		if err != nil {
			return err
		}
		for n, i := range fresh {
			b.columns[i].reflectedFields = append(b.columns[i].reflectedFields, planes[n])
		}
		p.step(1)
	}
	return nil
}

// mixReflected reads the lattices at fixed levels.
func (b *Basis) mixReflected(ctx context.Context, solution *radiosity.Solution, p *progress) error {
	if len(b.targets.Lattices) == 0 {
		return nil
	}
	levels := make([]colour.RGB, len(b.Lights))
	for i, name := range b.Lights {
		levels[i] = b.targets.Fixed[name]
	}
	mixed := solution.Mix(levels)
	for k := range b.targets.Lattices {
		planes, err := mixed.Lattice(ctx, k)
		if err != nil {
			return err
		}
		l := &b.targets.Lattices[k]
		b.mix.add(FromSurfaces, k, l.NU*l.NV, planes[0], colour.RGB{1, 1, 1})
		p.step(1)
	}
	return nil
}

// addReflected adds the terms of what comes back to receptors, by the surface it left last; what left a cloth is diffused,
// from whichever side of it.
func (w *World) addReflected(c *column, light string, s *backAtReceptors, lamp, receptors int) {
	direct := len(c.terms)
	for i := range receptors {
		for k, e := range s.Point(i, lamp) {
			if e == (colour.RGB{}) {
				continue
			}
			key := s.Keys(i)[k]
			n := slices.IndexFunc(c.terms[direct:], func(t Term) bool { return t.From == key.From && slices.Equal(t.Via, key.Via) })
			if n < 0 {
				n = len(c.terms) - direct
				path := Reflected
				if w.scattering[key.From] {
					path = Diffused
				}
				c.terms = append(c.terms, Term{Light: light, Path: path, Via: key.Via, From: key.From})
				c.points = append(c.points, make([]colour.RGB, receptors))
			}
			c.points[direct+n][i] = e
		}
	}
}
