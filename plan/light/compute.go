package light

import (
	"cmp"
	"context"
	"fmt"
	"slices"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/light/internal/parallel"
	"scrimshaw/plan/photometry"
)

// Basis computes what each light gives to the targets at levels of {1, 1, 1}. Names of lights
// must differ. It stops early, with the context's error, when that is cancelled.
func (w *World) Basis(ctx context.Context, lights []Emitter, to Targets) (*Basis, error) {
	return w.basis(ctx, nil, lights, to, nil)
}

// Rebase computes a basis again for the same targets after some lights have moved or changed, or
// are new. Lights that are not named in moved and were in the old basis keep their columns, unless levels are fixed.
func (w *World) Rebase(ctx context.Context, old *Basis, lights []Emitter, moved ...string) (*Basis, error) {
	return w.basis(ctx, old, lights, old.targets, moved)
}

func (w *World) basis(ctx context.Context, old *Basis, lights []Emitter, to Targets, moved []string) (*Basis, error) {
	if err := check(lights, &to); err != nil {
		return nil, err
	}
	b := &Basis{targets: to, columns: make([]column, len(lights)), errorModel: w.errorModel}
	if to.Fixed != nil {
		b.mix = newMix(len(to.Lattices))
	}
	if old != nil {
		b.resolved, b.Gains, b.transport, b.finer = old.resolved, old.Gains, old.transport, old.finer
	} else {
		w.resolveSpots(b)
	}
	fresh := b.keep(old, lights, moved)
	lamps, err := w.lamps(ctx, lights, fresh, len(to.Lattices) > 0)
	if err != nil {
		return nil, err
	}
	p := w.progress(len(fresh), &to)
	if err := w.tracePoints(ctx, b, lamps, fresh); err != nil {
		return nil, err
	}
	p.step(1)
	if err := w.computeFields(ctx, b, lamps, fresh, p); err != nil {
		return nil, err
	}
	if err := w.reflect(ctx, b, lamps, fresh, p); err != nil {
		return nil, err
	}
	b.assemble()
	return b, nil
}

// keep takes over the columns of an old basis, and lists the lights that have to be computed.
func (b *Basis) keep(old *Basis, lights []Emitter, moved []string) (fresh []int) {
	for i := range lights {
		b.Lights = append(b.Lights, lights[i].Name)
		if k := old.column(lights[i].Name); k >= 0 && b.mix == nil && !slices.Contains(moved, lights[i].Name) {
			b.columns[i] = old.columns[k]
		} else {
			fresh = append(fresh, i)
		}
	}
	return fresh
}

// lamps prepares the fresh lights, by their places among all; fields says whether lattices are computed.
func (w *World) lamps(ctx context.Context, lights []Emitter, fresh []int, fields bool) ([]*readyLamp, error) {
	lamps := w.memory.lampsOf(lights, fresh)
	err := parallel.For(ctx, w.workers, len(fresh), func(_, k int) {
		i := fresh[k]
		if lamps[i] == nil {
			lamps[i] = &readyLamp{emitter: lights[i], lamp: w.newLamp(&lights[i])}
		}
		if l := lamps[i].lamp; fields && l.kernel == nil {
			l.kernel = photometry.RowKernel(photometry.Source{Flux: l.flux, Distribution: l.shape, Opening: l.opening}, l.onesided)
			for i := range l.images {
				l.images[i].l.kernel = l.kernel
			}
		}
	})
	if err == nil {
		w.memory.keepLamps(lamps, fresh)
	}
	return lamps, err
}

// check finds what would make a basis meaningless.
func check(lights []Emitter, to *Targets) error {
	seen := map[string]bool{}
	for i := range lights {
		if seen[lights[i].Name] {
			return fmt.Errorf("light: two lights are named %q", lights[i].Name)
		}
		seen[lights[i].Name] = true
	}
	for i := range to.Lattices {
		l := &to.Lattices[i]
		if l.NU <= 0 || l.NV <= 0 || l.Response == Radiance {
			return fmt.Errorf("light: lattice %d has %d by %d points of response %d", i, l.NU, l.NV, l.Response)
		}
		if l.Toward != nil && l.Response != Dome {
			return fmt.Errorf("light: lattice %d is turned to a place; only domes are", i)
		}
	}
	return nil
}

// resolveSpots finds the surfaces that spot meters look at.
func (w *World) resolveSpots(b *Basis) {
	for i := range b.targets.Points {
		r, gain := b.targets.Points[i], colour.RGB{1, 1, 1}
		if r.Response == Radiance {
			r, gain = w.surface(&r)
		}
		b.resolved, b.Gains = append(b.resolved, r), append(b.Gains, gain)
	}
}

// tracePoints traces the fresh lights to the receptors.
func (w *World) tracePoints(ctx context.Context, b *Basis, lamps []*readyLamp, fresh []int) error {
	n := len(b.resolved)
	traced := make([][]share, len(fresh)*n)
	tracers := make([]tracer, parallel.Workers(w.workers, len(traced)))
	err := parallel.For(ctx, w.workers, len(traced), func(worker, i int) {
		l, r := lamps[fresh[i/n]], &b.resolved[i%n]
		if shares, known := l.sharesAt(r); known {
			traced[i] = shares
			return
		}
		t := &tracers[worker]
		t.BVH = w.bvh
		traced[i] = slices.Clone(t.all(l.lamp, r))
	})
	if err != nil {
		return err
	}
	for k, i := range fresh {
		of := traced[k*n : (k+1)*n]
		w.memory.keepShares(lamps[i], b.resolved, of)
		b.columns[i].collect(b.Lights[i], of)
	}
	return nil
}

// collect makes terms of the shares of each receptor.
func (c *column) collect(light string, traced [][]share) {
	for _, shares := range traced {
		for _, s := range shares {
			if c.find(&s) < 0 {
				c.terms = append(c.terms, s.term(light))
			}
		}
	}
	slices.SortFunc(c.terms, func(a, b Term) int {
		return cmp.Or(cmp.Compare(a.Path, b.Path), cmp.Compare(a.From, b.From), cmp.Compare(len(a.Via), len(b.Via)), slices.Compare(a.Via, b.Via))
	})
	c.points = make([][]colour.RGB, len(c.terms))
	for t := range c.points {
		c.points[t] = make([]colour.RGB, len(traced))
	}
	for i, shares := range traced {
		for _, s := range shares {
			c.points[c.find(&s)][i] = s.filter.Scale(s.value)
		}
	}
}
