package light

import (
	"context"
	"math"
	"slices"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/light/radiosity"
)

// reflect works out what comes back of the fresh lights from the surfaces of the set.
func (w *World) reflect(ctx context.Context, b *Basis, lamps []*lamp, fresh []int, p *progress) error {
	if w.direct || len(fresh) == 0 {
		return nil
	}
	if b.returns == nil {
		t, err := radiosity.Trace(ctx, w.set, w.bvh, w.bounces, w.workers, places(b.resolve), grounds(b.targets.Lattices))
		if err != nil {
			return err
		}
		b.returns = t
	}
	p.step(linksWork)
	if b.returns.Dark() {
		return nil
	}
	seen := make([]radiosity.Lamp, len(fresh))
	for k, i := range fresh {
		seen[k] = w.newBounced(lamps[i])
	}
	solution, err := b.returns.Solve(ctx, seen)
	if err != nil {
		return err
	}
	read, err := w.closer(ctx, b, seen, fresh, solution)
	if err != nil {
		return err
	}
	p.step(solveWork)
	for k, i := range fresh {
		c := &b.columns[i]
		c.reflected(b.Lights[i], read, k, len(b.resolve))
		for n := range b.resolve {
			c.spread = append(c.spread, read.Spread(n, k))
		}
	}
	for k := range b.targets.Lattices {
		planes, err := solution.Lattice(ctx, k)
		if err != nil {
			return err
		}
		for n, i := range fresh {
			b.columns[i].back = append(b.columns[i].back, planes[n])
		}
		p.step(1)
	}
	return nil
}

// closer solves once more, with smaller patches and more rays, for the receptors alone where some of them are off by more
// than the quality allows by their own word: light that comes round a corner is met by few rays, and falls off within a
// patch.
func (w *World) closer(ctx context.Context, b *Basis, seen []radiosity.Lamp, fresh []int, rough *radiosity.Solution) (*radiosity.Solution, error) {
	if !w.unsure(b, fresh, rough) {
		return rough, nil
	}
	if b.closer == nil {
		t, err := radiosity.Trace(ctx, w.set, w.bvh, w.bounces.Closer(), w.workers, places(b.resolve), nil)
		if err != nil {
			return nil, err
		}
		b.closer = t
	}
	return b.closer.Solve(ctx, seen)
}

// unsure says whether the rays leave a receptor off by more than the quality allows, all lights at a drive of 1.
func (w *World) unsure(b *Basis, fresh []int, rough *radiosity.Solution) bool {
	for n := range b.resolve {
		square, all := 0.0, 0.0
		for k, i := range fresh {
			off := rough.Spread(n, k)
			square += off * off
			for _, e := range rough.Point(n, k) {
				all += e.Y()
			}
			for _, points := range b.columns[i].points {
				all += points[n].Y()
			}
		}
		if math.Sqrt(square) > w.allowed*all {
			return true
		}
	}
	return false
}

// reflected adds the terms of what comes back to receptors, by the surface it left last.
func (c *column) reflected(light string, s *radiosity.Solution, lamp, receptors int) {
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
				c.terms = append(c.terms, Term{Light: light, Path: Reflected, Via: key.Via, From: key.From, Filter: colour.RGB{1, 1, 1}})
				c.points = append(c.points, make([]colour.RGB, receptors))
			}
			c.points[direct+n][i] = e
		}
	}
}

// places are receptors as radiosity knows them.
func places(receptors []Receptor) []radiosity.Receptor {
	all := make([]radiosity.Receptor, len(receptors))
	for i, r := range receptors {
		all[i] = radiosity.Receptor{At: r.At, Axis: r.Axis, Pattern: pattern(r.Weight), Skip: r.Skip}
	}
	return all
}

// grounds are lattices as radiosity knows them.
func grounds(lattices []Lattice) []radiosity.Lattice {
	all := make([]radiosity.Lattice, len(lattices))
	for i, l := range lattices {
		all[i] = radiosity.Lattice{Origin: l.Origin, U: l.U, V: l.V, Axis: l.Normal, Toward: l.Toward, NU: l.NU, NV: l.NV,
			Pattern: pattern(l.Weight), Mask: l.Mask, Skip: l.Skip}
	}
	return all
}

// pattern is a weight as radiosity knows it; spot meters have been resolved to planes.
func pattern(w Weight) radiosity.Pattern {
	if w == Dome {
		return radiosity.Dome
	}
	return radiosity.Cosine
}
