package light

import (
	"context"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/light/internal/parallel"
)

// shadows is the first round.
func (f *field) shadows(ctx context.Context, workers int) error {
	tallies := make([]*shadowTally, parallel.Workers(workers, len(f.points)))
	for i := range tallies {
		tallies[i] = newShadowTally(f)
	}
	err := parallel.For(ctx, len(tallies), len(f.points), func(worker, k int) { tallies[worker].count(f, k) })
	for _, t := range tallies {
		union(f.some, t.some)
		intersect(f.all, t.all)
		for i := range f.panes {
			union(f.panes[i].some, t.panes[i].some)
			intersect(f.panes[i].all, t.panes[i].all)
		}
	}
	f.prune()
	return err
}

// prune drops the panes that no point is seen through.
func (f *field) prune() {
	var used []int
	for i := range f.panes {
		for n, w := range f.panes[i].some {
			if w&^f.all[n] != 0 {
				used = append(used, i)
				break
			}
		}
	}
	panes := make([]pane, len(used))
	for k, i := range used {
		panes[k] = f.panes[i]
	}
	for s, c := range f.occluders {
		some := make([]*shape, len(used))
		for k, i := range used {
			if i < len(c.panes) {
				some[k] = c.panes[i]
			}
		}
		f.occluders[s] = occluders{c.opaque, some}
	}
	f.panes = panes
}

// shadowTally is what one goroutine has seen of the shadows.
type shadowTally struct {
	rasteriser *rasteriser
	some, all  []uint64 // points hidden from some and all points of the opening so far
	panes      []pane
	through    []uint64
}

func newShadowTally(f *field) *shadowTally {
	size := len(f.g.blank)
	t := &shadowTally{rasteriser: newRasteriser(f.g), some: make([]uint64, size), all: ones(size), through: make([]uint64, size)}
	for range f.panes {
		t.panes = append(t.panes, pane{some: make([]uint64, size), all: ones(size)})
	}
	return t
}

// count draws the shadows from point k of the opening.
func (t *shadowTally) count(f *field, k int) {
	m := f.mask(k)
	f.castShadows(t.rasteriser, m, k)
	union(t.some, m)
	intersect(t.all, m)
	for i := range t.panes {
		clear(t.through)
		f.through(t.rasteriser, t.through, k, i, 0, f.g.nv)
		some, all := t.panes[i].some, t.panes[i].all
		for n, through := range t.through {
			some[n] |= through &^ m[n]
			all[n] &= through | m[n]
		}
	}
}

// castShadows draws all shadows from point k of the opening.
func (f *field) castShadows(b *rasteriser, m []uint64, k int) {
	copy(m, f.blank)
	p := &f.points[k]
	c := f.occluders[p.side]
	for _, s := range c.opaque {
		f.castShadow(b, m, s, p)
	}
	for _, s := range c.panes {
		if s != nil && s.caster.transmittance(p.at) == (colour.RGB{}) {
			f.castShadow(b, m, s, p)
		}
	}
}

func (f *field) castShadow(b *rasteriser, m []uint64, s *shape, p *lampPoint) {
	if !p.inside && s.caster.facesAway(p.at) {
		return
	}
	if lo, hi, any := s.reach(p.local); any && !b.covered(m, lo, hi) {
		b.paint(m, b.shadow(s, p.local), 0, f.g.nv)
	}
}

// through sets, in rows from up to to, the points that see point k of the opening through pane i.
func (f *field) through(b *rasteriser, m []uint64, k, i, from, to int) {
	p := &f.points[k]
	panes := f.occluders[p.side].panes
	if i >= len(panes) || panes[i] == nil || panes[i].caster.transmittance(p.at) == (colour.RGB{}) {
		return
	}
	b.paint(m, b.shadow(panes[i], p.local), from, to)
}

func union(to, from []uint64) {
	for i, w := range from {
		to[i] |= w
	}
}

func intersect(to, from []uint64) {
	for i, w := range from {
		to[i] &= w
	}
}
