package light

import (
	"math/bits"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

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
	w         *World
	g         *grid
	l         *lamp
	steps     rowSteps
	levels    []level
	points    []lampPoint
	bundles   []bundle // of the points
	largest   int      // of the bundles
	share     float64  // of the light, for one point
	cut       bool     // whether some points of the opening are behind the receptors' plane
	sampled   bool     // whether there is no rule for the whole opening then
	blank     []uint64 // no data, or no light of the lamp
	lit       rows     // the others lie in these
	masks     []uint64 // hidden from each point of the opening: band by band of rows, and in each point by point
	some      []uint64 // hidden from some point of the opening
	all       []uint64 // hidden from all
	panes     []pane
	occluders map[*side]occluders
}

// lampPoint is a point of the opening and the side of the plane that it is on.
type lampPoint struct {
	at     r3.Vec
	local  r3.Vec // in the lattice's coordinates
	side   *side
	inside bool // a solid
}

// occluders is what can come between a lamp and a lattice, on one side of it.
type occluders struct {
	opaque []shading
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

// newField prepares the field; masks is memory to use again.
func (w *World) newField(g *grid, l *lamp, masks []uint64) *field {
	lat := g.lattice
	f := &field{
		w: w, g: g, l: l, steps: newRowSteps(l, g), levels: l.fieldRules(lat.Response),
		occluders: map[*side]occluders{},
	}
	f.place()
	for _, b := range f.bundles {
		f.largest = max(f.largest, b.to-b.from)
	}
	f.sampled = f.cut && !l.lambertian
	f.findOccluders()
	f.blank = slices.Clone(g.blank)
	g.hideUnlit(f.blank, l)
	need := g.bands() * len(f.points) * band * g.words
	f.masks = slices.Grow(masks[:0], need)[:need]
	return f
}

// place finds where the points of the opening lie over the lattice, and bundles them.
func (f *field) place() {
	l, g := f.l, f.g
	points, order, begins := l.points, l.order, l.begins
	if l.opening.Form == photometry.Point {
		points, order, begins = []r3.Vec{l.at}, []int{0}, []bool{true}
	}
	f.share = 1 / float64(len(points))
	fresh := true
	for n, i := range order {
		p := points[i]
		fresh = fresh || begins[n]
		if g.lattice.Response == Cosine && g.height(p)*r3.Dot(g.n, g.lattice.Normal) <= 0 {
			f.cut = true
			continue
		}
		s := g.facing(f.w, p)
		local := g.place(p, s.sign)
		local.Z = max(local.Z, inPlane)
		_, inside := f.w.bvh.Inside(p)
		f.join(p, fresh)
		fresh = false
		f.points = append(f.points, lampPoint{p, local, s, inside})
	}
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

// findOccluders finds what can shade, and the panes that the lamp can shine through.
func (f *field) findOccluders() {
	local := map[*side][]r3.Vec{}
	for _, p := range f.points {
		local[p.side] = append(local[p.side], p.local)
	}
	for _, s := range []*side{f.g.above, f.g.below} {
		if len(local[s]) == 0 {
			continue
		}
		var c occluders
		for _, o := range f.g.shading(s.shapes, f.l, local[s]) {
			c.opaque = append(c.opaque, f.g.anywhere(o))
		}
		for _, p := range f.g.shading(s.panes, f.l, local[s]) {
			k := f.paneOf(p.caster)
			for len(c.panes) <= k {
				c.panes = append(c.panes, nil)
			}
			c.panes[k] = p
		}
		f.occluders[s] = c
	}
}

// paneOf is the number of the pane that a caster is.
func (f *field) paneOf(c *caster) int {
	if k := slices.IndexFunc(f.panes, func(p pane) bool { return p.caster == c }); k >= 0 {
		return k
	}
	f.panes = append(f.panes, pane{c, make([]uint64, len(f.g.blank)), ones(len(f.g.blank))})
	return len(f.panes) - 1
}

func ones(n int) []uint64 {
	m := make([]uint64, n)
	for i := range m {
		m[i] = ^uint64(0)
	}
	return m
}

// bandMask is the points of a band of rows that are hidden from point k of the opening.
func (f *field) bandMask(n, k int) []uint64 {
	size := band * f.g.words
	return f.masks[(n*len(f.points)+k)*size:][:size]
}

// channels is how many planes the field needs: three where a tinted pane colours some of it.
func (f *field) channels() int {
	for i := range f.panes {
		s := f.panes[i].caster.sheet
		if !coloured(s.Front.Direct) && !coloured(s.Back.Direct) {
			continue
		}
		for n, w := range f.panes[i].some {
			if w&^f.blank[n] != 0 {
				return 3
			}
		}
	}
	return 1
}

// mostLevels bounds the rules of a field.
const mostLevels = 16

// byLevel sorts the points of a word of row j by the rule that suits their distance; the last are those close by.
func (f *field) byLevel(j, w int, word uint64) (at [mostLevels]uint64) {
	last := len(f.levels)
	switch {
	case f.cut:
		at[last] = word
	case last > 0 && f.levels[0].beyond == 0:
		at[0] = word
	default:
		for rest := word; rest != 0; rest &= rest - 1 {
			bit := bits.TrailingZeros64(rest)
			distance := f.l.distance2(f.g.lattice.At(w<<6+bit, j))
			k := 0
			for k < last && distance < f.levels[k].beyond {
				k++
			}
			at[k] |= 1 << bit
		}
	}
	return at
}

// light gives the points of a word of row j the light of the whole opening: by a rule that suits
// their distance, or by closed form close by. v is memory to use.
func (f *field) light(line []float64, v *row.View, j, w int, word uint64) {
	g := f.g
	at := f.byLevel(j, w, word)
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
	r := Receptor{Response: g.lattice.Response}
	for rest := at[len(f.levels)]; rest != 0; rest &= rest - 1 {
		i := w<<6 + bits.TrailingZeros64(rest)
		r.At = g.lattice.At(i, j)
		r.Axis = g.lattice.Axis(r.At)
		line[i] = f.l.unoccluded(&r, closely())
	}
}
