package light

import (
	"context"
	"math/bits"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/light/internal/parallel"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/photometry/row"
)

// field is the light of one lamp on one lattice, worked out in two rounds. The first draws
// the shadows from every point of the opening and so sorts the lattice: points that see the whole
// opening, through the same panes, points that see none of it, and the rest. The second gives
// the first sort the light of the whole by a short rule, and sums the rest over the points of the
// opening that are seen. Each row is summed in one order, so that the number of goroutines
// leaves no trace.
type field struct {
	w       *World
	g       *grid
	l       *lamp
	steps   steps
	levels  []level
	points  []lampPoint
	bundles []bundle // of the points
	largest int      // of the bundles
	share   float64  // of the light, for one point
	cut     bool     // whether some points of the opening are behind the receptors' plane
	sampled bool     // whether there is no rule for the whole opening then
	masks   []uint64
	some    []uint64 // hidden from some point of the opening
	all     []uint64 // hidden from all
	panes   []pane
	casts   map[*side]cast
}

// lampPoint is a point of the opening and the side of the plane that it is on.
type lampPoint struct {
	at     r3.Vec
	local  r3.Vec // in the lattice's coordinates
	side   *side
	inside bool // a solid
}

// cast is what can come between a lamp and a lattice, on one side of it.
type cast struct {
	opaque []*shape
	panes  []*shape // one for each pane of the field, nil where it is not on this side
}

// pane is a clear sheet before a lamp: the points that see some of the lamp through it, and those that see
// nothing of the lamp but through it.
type pane struct {
	caster    *caster
	some, all []uint64
}

// inPlane is the height, m, that a point of a lamp in the very plane of a dome lattice is lifted to.
const inPlane = 1e-5

// band is how many rows are summed together.
const band = 8

// newField prepares the field; masks is memory to use again.
func (w *World) newField(g *grid, l *lamp, masks []uint64) *field {
	lat := g.lattice
	f := &field{
		w: w, g: g, l: l, steps: newSteps(l, g), levels: l.rules(lat.Weight),
		casts: map[*side]cast{},
	}
	points, order, begins := l.points, l.order, l.begins
	if l.opening.Form == photometry.Point {
		points, order, begins = []r3.Vec{l.at}, []int{0}, []bool{true}
	}
	f.share = 1 / float64(len(points))
	fresh := true
	for n, i := range order {
		p := points[i]
		fresh = fresh || begins[n]
		if lat.Weight == Flat && g.height(p)*r3.Dot(g.n, lat.Normal) <= 0 {
			f.cut = true
			continue
		}
		s := g.facing(w, p)
		local := g.place(p, s.sign)
		local.Z = max(local.Z, inPlane)
		_, inside := w.bvh.Inside(p)
		f.join(p, fresh)
		fresh = false
		f.points = append(f.points, lampPoint{p, local, s, inside})
	}
	for _, b := range f.bundles {
		f.largest = max(f.largest, b.to-b.from)
	}
	f.sampled = f.cut && !l.lambertian
	f.gather(w)
	size := len(g.blank)
	f.masks = slices.Grow(masks[:0], size*len(f.points))[:size*len(f.points)]
	f.some, f.all = slices.Clone(g.blank), ones(size)
	return f
}

// join adds the next point of the opening to the last bundle, or to a new one.
func (f *field) join(p r3.Vec, fresh bool) {
	k := len(f.points)
	if fresh {
		f.bundles = append(f.bundles, bundle{k, k + 1, p})
		return
	}
	b := &f.bundles[len(f.bundles)-1]
	b.to++
	b.middle = r3.Add(b.middle, r3.Scale(1/float64(b.to-b.from), r3.Sub(p, b.middle)))
}

// gather finds what can shade, and the panes that the lamp can shine through.
func (f *field) gather(w *World) {
	local := map[*side][]r3.Vec{}
	for _, p := range f.points {
		local[p.side] = append(local[p.side], p.local)
	}
	index := map[*caster]int{}
	for _, s := range []*side{f.g.above, f.g.below} {
		if len(local[s]) == 0 {
			continue
		}
		c := cast{opaque: f.g.shading(s.shapes, f.l, local[s])}
		for _, p := range f.g.shading(s.panes, f.l, local[s]) {
			k, known := index[p.caster]
			if !known {
				k = len(f.panes)
				index[p.caster] = k
				f.panes = append(f.panes, pane{p.caster, make([]uint64, len(f.g.blank)), ones(len(f.g.blank))})
			}
			for len(c.panes) <= k {
				c.panes = append(c.panes, nil)
			}
			c.panes[k] = p
		}
		f.casts[s] = c
	}
}

func ones(n int) []uint64 {
	m := make([]uint64, n)
	for i := range m {
		m[i] = ^uint64(0)
	}
	return m
}

// mask is the points hidden from point k of the opening.
func (f *field) mask(k int) []uint64 {
	size := len(f.g.blank)
	return f.masks[k*size : (k+1)*size]
}

// shadows is the first round.
func (f *field) shadows(ctx context.Context, workers int) error {
	tallies := make([]*tally, parallel.Workers(workers, len(f.points)))
	for i := range tallies {
		tallies[i] = newTally(f)
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
	for s, c := range f.casts {
		some := make([]*shape, len(used))
		for k, i := range used {
			if i < len(c.panes) {
				some[k] = c.panes[i]
			}
		}
		f.casts[s] = cast{c.opaque, some}
	}
	f.panes = panes
}

// tally is what one goroutine has seen of the shadows.
type tally struct {
	brush     *brush
	some, all []uint64 // points hidden from some and all points of the opening so far
	panes     []pane
	through   []uint64
}

func newTally(f *field) *tally {
	size := len(f.g.blank)
	t := &tally{brush: newBrush(f.g), some: make([]uint64, size), all: ones(size), through: make([]uint64, size)}
	for range f.panes {
		t.panes = append(t.panes, pane{some: make([]uint64, size), all: ones(size)})
	}
	return t
}

// count draws the shadows from point k of the opening.
func (t *tally) count(f *field, k int) {
	m := f.mask(k)
	f.darken(t.brush, m, k)
	union(t.some, m)
	intersect(t.all, m)
	for i := range t.panes {
		clear(t.through)
		f.through(t.brush, t.through, k, i, 0, f.g.nv)
		some, all := t.panes[i].some, t.panes[i].all
		for n, through := range t.through {
			some[n] |= through &^ m[n]
			all[n] &= through | m[n]
		}
	}
}

// darken draws all shadows from point k of the opening.
func (f *field) darken(b *brush, m []uint64, k int) {
	copy(m, f.g.blank)
	p := &f.points[k]
	c := f.casts[p.side]
	for _, s := range c.opaque {
		f.draw(b, m, s, p)
	}
	for _, s := range c.panes {
		if s != nil && s.caster.passing(p.at) == (colour.RGB{}) {
			f.draw(b, m, s, p)
		}
	}
}

func (f *field) draw(b *brush, m []uint64, s *shape, p *lampPoint) {
	if !p.inside && s.caster.turned(p.at) {
		return
	}
	if lo, hi, any := s.reach(p.local); any && !b.covered(m, lo, hi) {
		b.paint(m, b.shadow(s, p.local), 0, f.g.nv)
	}
}

// through sets, in rows from up to to, the points that see point k of the opening through pane i.
func (f *field) through(b *brush, m []uint64, k, i, from, to int) {
	p := &f.points[k]
	panes := f.casts[p.side].panes
	if i >= len(panes) || panes[i] == nil || panes[i].caster.passing(p.at) == (colour.RGB{}) {
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

// channels is how many planes the field needs: three where a tinted pane colours some of it.
func (f *field) channels() int {
	for i := range f.panes {
		s := f.panes[i].caster.sheet
		if !tints(s.Front.Direct) && !tints(s.Back.Direct) {
			continue
		}
		for n, w := range f.panes[i].some {
			if w&^f.g.blank[n] != 0 {
				return 3
			}
		}
	}
	return 1
}

// sum is the second round.
func (f *field) sum(ctx context.Context, workers int) ([]float32, error) {
	g := f.g
	channels := f.channels()
	out := make([]float32, channels*g.nu*g.nv)
	bands := (g.nv + band - 1) / band
	workers = parallel.Workers(workers, bands)
	desks := make([]*desk, workers)
	err := parallel.For(ctx, workers, bands, func(worker, i int) {
		if desks[worker] == nil {
			desks[worker] = newDesk(f, channels)
		}
		from := i * band
		desks[worker].work(from, min(from+band, g.nv), out)
	})
	return out, err
}

// light gives the points of a word of row j the light of the whole opening: by a rule that suits
// their distance, or by closed form close by. v is memory to use.
func (f *field) light(line []float64, v *row.View, j, w int, word uint64) {
	g := f.g
	last := len(f.levels)
	var at [16]uint64 // by level; the last: close by
	switch {
	case f.cut:
		at[last] = word
	case last > 0 && f.levels[0].beyond == 0:
		at[0] = word
	default:
		for rest := word; rest != 0; rest &= rest - 1 {
			bit := bits.TrailingZeros64(rest)
			distance := f.l.distance2(g.lattice.At(w<<6+bit, j))
			k := 0
			for k < last && distance < f.levels[k].beyond {
				k++
			}
			at[k] |= 1 << bit
		}
	}
	part := (*[row.Word]float64)(line[w*row.Word:])
	for k := range f.levels {
		if at[k] == 0 {
			continue
		}
		for i := range f.levels[k].nodes {
			n := &f.levels[k].nodes[i]
			*v = f.steps.from(f.l, j, n.at)
			f.l.kernel.Add(part, at[k], w, v, n.weight)
		}
	}
	r := Receptor{Weight: g.lattice.Weight}
	for rest := at[last]; rest != 0; rest &= rest - 1 {
		i := w<<6 + bits.TrailingZeros64(rest)
		r.At = g.lattice.At(i, j)
		r.Axis = g.lattice.Axis(r.At)
		line[i] = f.l.full(&r, closely())
	}
}
