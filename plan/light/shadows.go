package light

import (
	"context"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/light/internal/parallel"
)

// shadows is the first round.
func (f *field) shadows(ctx context.Context, workers int) error {
	f.narrow()
	f.lit = f.g.litRows(f.blank)
	f.some, f.all = slices.Clone(f.blank), ones(len(f.blank))
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
	hidden     []uint64 // points hidden from the point of the opening at hand
	some, all  []uint64 // those hidden from some and all points of the opening so far
	panes      []pane
	through    []uint64
}

func newShadowTally(f *field) *shadowTally {
	size := len(f.g.blank)
	t := &shadowTally{
		rasteriser: newRasteriser(f.g), hidden: slices.Clone(f.blank), some: make([]uint64, size), all: ones(size), through: make([]uint64, size),
	}
	for range f.panes {
		t.panes = append(t.panes, pane{some: make([]uint64, size), all: ones(size)})
	}
	return t
}

// count draws the shadows from point k of the opening.
func (t *shadowTally) count(f *field, k int) {
	g, p := f.g, &f.points[k]
	lit := func(mask []uint64) []uint64 { return g.of(f.lit, mask) }
	m := lit(t.hidden)
	copy(m, lit(f.blank))
	f.castShadows(t.rasteriser, t.hidden, p)
	union(lit(t.some), m)
	intersect(lit(t.all), m)
	for n := f.lit.first / band; n*band < f.lit.last; n++ {
		copy(f.bandMask(n, k), t.hidden[n*band*g.words:])
	}
	for i := range t.panes {
		if s := f.paneBefore(p, i); s == nil || !t.seeThrough(f, s, p.local, &t.panes[i]) {
			intersect(lit(t.panes[i].all), m)
		}
	}
}

// seeThrough counts what sees a point of the opening through a pane, and says whether anything may.
func (t *shadowTally) seeThrough(f *field, s *shape, point r3.Vec, to *pane) bool {
	if whole := f.g.anywhere(s); !t.rasteriser.shows(t.hidden, &whole, point) {
		return false
	}
	lit := func(mask []uint64) []uint64 { return f.g.of(f.lit, mask) }
	some, all, through, hidden := lit(to.some), lit(to.all), lit(t.through), lit(t.hidden)
	clear(through)
	t.rasteriser.paint(through, t.rasteriser.shadow(s, point), f.lit.first, f.lit.last)
	for n, w := range through {
		some[n] |= w &^ hidden[n]
		all[n] &= w | hidden[n]
	}
	return true
}

// castShadows draws all shadows from a point of the opening.
func (f *field) castShadows(b *rasteriser, m []uint64, p *lampPoint) {
	c := f.occluders[p.side]
	for i := range c.opaque {
		f.castShadow(b, m, &c.opaque[i], p)
	}
	for _, s := range c.panes {
		if s != nil && s.caster.transmittance(p.at) == (colour.RGB{}) {
			whole := f.g.anywhere(s)
			f.castShadow(b, m, &whole, p)
		}
	}
}

func (f *field) castShadow(b *rasteriser, m []uint64, s *shading, p *lampPoint) {
	if !p.inside && s.caster.facesAway(p.at) {
		return
	}
	if b.shows(m, s, p.local) {
		r := rows{max(int(s.lo.Y), f.lit.first), min(int(s.hi.Y), f.lit.last)}
		b.paint(f.g.of(r, m), b.shadow(s.shape, p.local), r.first, r.last)
	}
}

// through sets, in rows from up to to, the points that see point k of the opening through pane i.
func (f *field) through(b *rasteriser, m []uint64, k, i, from, to int) {
	p := &f.points[k]
	if s := f.paneBefore(p, i); s != nil {
		b.paint(m, b.shadow(s, p.local), from, to)
	}
}

// paneBefore is pane i as seen from a point of the opening; nil where no light of that passes it.
func (f *field) paneBefore(p *lampPoint, i int) *shape {
	panes := f.occluders[p.side].panes
	if i >= len(panes) || panes[i] == nil || panes[i].caster.transmittance(p.at) == (colour.RGB{}) {
		return nil
	}
	return panes[i]
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
