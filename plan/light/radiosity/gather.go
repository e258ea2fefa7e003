package radiosity

import (
	"context"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/light/internal/parallel"
	"scrimshaw/plan/light/receptor"
	"scrimshaw/plan/photometry/formfactor"
	"scrimshaw/plan/solid"
)

// A receptor's rays are many, and still few for an element that is small and bright: of ten rays three may miss it.
// Where that would show, the rays leave the element out and its form factor, as far as it is seen, is found exactly.

// reading is what a receptor gets of each lamp's light.
type reading struct {
	keys   []Key
	values [][]colour.RGB // by lamp and key, lx
	spread []float64      // by lamp: the standard error that rays leave, lx
}

// gatherer reads receptors. It keeps its memory from one to the next.
type gatherer struct {
	s      *Solution
	lamps  []Lamp
	worker int
	view   solid.Viewer
	local  []map[int]colour.RGB // by lamp and ray of the place: what comes straight to where the ray has met, lx
	found  []int32
	rays   []float64 // by ray of the place: what the receptor gets by it for each lm/m², lx
	shares []float64 // by element: those of its rays, cells left out
	met    []uint32
	known  []bool    // by element: whether its form factor is
	exact  []float64 // by element of known form factor: lx for each lm/m² that it returns
	fixed  []uint32  // those elements in their order
	groups []groupKey
	keys   []Key

	inCells []float64 // by cell: what the receptor gets by it for each lm/m², lx
}

// groupKey is a key by the number of its group.
type groupKey struct {
	group int32
	via   []solid.ID
}

// read reads all receptors, place by place.
func (s *Solution) read(ctx context.Context, lamps []Lamp) error {
	t := s.t
	s.halve()
	s.readings = make([]reading, len(t.readers))
	gatherers := make([]*gatherer, parallel.Workers(t.workers, len(t.places)))
	return parallel.For(ctx, t.workers, len(t.places), func(worker, n int) {
		if gatherers[worker] == nil {
			size := 4 * (len(t.patches) + len(t.veils))
			gatherers[worker] = &gatherer{s: s, lamps: lamps, worker: worker, view: solid.Viewer{BVH: t.mesh.bvh},
				shares: make([]float64, size), known: make([]bool, size), exact: make([]float64, size)}
		}
		g := gatherers[worker]
		g.local = make([]map[int]colour.RGB, len(lamps))
		for lamp := range g.local {
			g.local[lamp] = map[int]colour.RGB{}
		}
		for _, i := range t.places[n].receptors {
			s.readings[i] = g.reading(i)
		}
	})
}

// Keys returns the ways that light comes back to a receptor.
func (s *Solution) Keys(receptor int) []Key {
	if len(s.readings) == 0 {
		return nil
	}
	return s.readings[receptor].keys
}

// Point is what a receptor gets of a lamp's light, lx, by the ways of Keys.
func (s *Solution) Point(receptor, lamp int) []colour.RGB {
	if len(s.readings) == 0 {
		return nil
	}
	return s.readings[receptor].values[lamp]
}

// reading reads one receptor.
func (g *gatherer) reading(i int) reading {
	t := g.s.t
	p := &t.places[t.placeOf[i]]
	g.met, g.fixed = g.met[:0], g.fixed[:0]
	g.groups, g.keys = nil, nil
	g.rays = t.weighs(i, g.rays)
	for r, h := range p.hits {
		if h < 4 || g.rays[r] == 0 || p.cellOf != nil && p.cellOf[r] >= 0 {
			continue
		}
		if g.shares[h] == 0 {
			g.met = append(g.met, h)
		}
		g.shares[h] += g.rays[r]
	}
	slices.Sort(g.met)
	g.choose(i)
	out := reading{values: make([][]colour.RGB, g.s.lamps), spread: make([]float64, g.s.lamps)}
	for lamp := range out.values {
		out.values[lamp] = g.sum(i, p, lamp)
		out.spread[lamp] = g.spread(p, lamp)
	}
	for _, h := range g.met {
		g.shares[h] = 0
	}
	for _, h := range g.fixed {
		g.known[h] = false
	}
	out.keys = g.keys
	for lamp, v := range out.values {
		out.values[lamp] = append(v, make([]colour.RGB, len(out.keys)-len(v))...)
	}
	return out
}

// exitance is what an element returns of a lamp's light, lm/m².
func (s *Solution) exitance(element uint32, lamp int) (e colour.RGB) {
	for c := range s.t.Channels() {
		b, k := s.column(lamp, c)
		e[c] = float64(s.blocks[b].exitance[element][k])
	}
	if s.t.Channels() == 1 {
		e[1], e[2] = e[0], e[0]
	}
	return e
}

// brighten sets the luminous exitance of all elements by lamp, and what is left of it without what hot ones return of
// the lamp's own light.
func (s *Solution) brighten() {
	n := uint32(4 * (len(s.t.patches) + len(s.t.veils)))
	s.bright, s.rest = make([][]float32, s.lamps), make([][]float32, s.lamps)
	for lamp := range s.bright {
		bright := make([]float32, n)
		for e := range n {
			bright[e] = float32(s.exitance(e, lamp).Y())
		}
		s.bright[lamp], s.rest[lamp] = bright, bright
		if len(s.hot[lamp].of) > 0 {
			rest := slices.Clone(bright)
			for e := range n {
				rest[e] -= float32(s.ownHot(e, lamp).Y())
			}
			s.rest[lamp] = rest
		}
	}
}

// choose finds the elements that rays would miss too much of, and their form factors. What is chosen may not depend on
// what the rays have met: those met by chance too often would be put right, and those met too seldom left as they are.
func (g *gatherer) choose(i int) {
	t := g.s.t
	if t.quality.Noise <= 0 {
		return
	}
	limits := make([]float64, g.s.lamps) // lx
	share := slices.Max(g.rays)
	for lamp := range limits {
		bright := g.s.bright[lamp]
		for _, h := range g.met {
			limits[lamp] += g.shares[h] * float64(bright[h])
		}
		limits[lamp] *= t.quality.Noise
	}
	for slot := 1; slot < len(t.patches); slot++ {
		p := &t.patches[slot]
		gain := t.rough(&t.readers[i], p) / 4 // of an element
		if gain <= 0 {
			continue
		}
		noise := math.Sqrt(gain * share) // of n rays sqrt(n)
		for lamp, limit := range limits {
			least := float32(limit / noise)
			for e, v := range g.s.bright[lamp][4*slot : 4*slot+4] {
				if v > least && limit > 0 {
					g.fix(i, uint32(4*slot+e))
				}
			}
		}
	}
}

// rough is about what a receptor gets for each lm/m² that a patch returns, were nothing in the way: by the corner that lies
// nearest to its axis, for the plane of a receptor may cut a patch.
func (t *Transport) rough(r *receptor.Receptor, p *patch) float64 {
	f := &t.mesh.faces[p.face]
	way := r3.Sub(f.at(p.x+f.du/2, p.y+f.dv/2), r.At)
	falls := -r3.Dot(way, f.n)
	if !(falls > 0) {
		return 0
	}
	cos := math.Inf(-1)
	for _, corner := range f.rectangle(p.x, p.y, f.du, f.dv) {
		toCorner := r3.Sub(corner, r.At)
		cos = max(cos, r3.Dot(toCorner, r.Axis)/r3.Norm(toCorner))
	}
	square := r3.Norm2(way)
	area := f.du * f.dv
	return r.Response.To(cos) * falls / math.Sqrt(square) * area / (math.Pi * (square + area/4))
}

// fix finds the form factor of an element, unless it is seen through clear sheets or in cells.
func (g *gatherer) fix(i int, element uint32) {
	t := g.s.t
	r := &t.readers[i]
	if element >= uint32(4*len(t.patches)) || g.known[element] {
		return
	}
	p := &t.patches[element/4]
	f := &t.mesh.faces[p.face]
	k := int(element & 3)
	if slices.Contains(r.Skip, f.id) || t.isNear(r.At, 4*p.number+element&3) {
		return
	}
	sum := 0.0
	if p.parts == nil {
		corners := f.element4(p.x, p.y, k)
		factor, ok := g.factor(r, corners[:])
		if !ok {
			return
		}
		sum = factor
	} else {
		for _, part := range p.parts[k] {
			factor, ok := g.factor(r, part)
			if !ok {
				return
			}
			sum += factor
		}
	}
	g.known[element], g.exact[element] = true, sum
	g.fixed = append(g.fixed, element)
}

// factor is what a receptor gets of a figure for each lm/m² that it returns; not ok where clear sheets stand before it.
func (g *gatherer) factor(r *receptor.Receptor, figure []r3.Vec) (sum float64, ok bool) {
	s := solid.NewShaft([]r3.Vec{r.At}, figure)
	g.found = g.view.BVH.Between(&s, r.Skip, g.found[:0])
	for _, seen := range g.view.See(r.At, figure, g.found, true) {
		if seen.Veiled {
			return 0, false
		}
		if r.Response == receptor.Dome {
			sum += formfactor.PolygonDome(seen.Corners, r.At, r.Axis)
		} else {
			sum += formfactor.Polygon(seen.Corners, r.At, r.Axis)
		}
	}
	return sum / math.Pi, true
}

// ofHot is what a receptor gets of the lamp's own light by way of a hot element, lx: each part of it by its own form
// factor.
func (g *gatherer) ofHot(i int, element uint32, lamp int) (sum colour.RGB) {
	hot := &g.s.hot[lamp]
	at := hot.of[element]
	for k := at[0]; k < at[1]; k++ {
		if factor, ok := g.factor(&g.s.t.readers[i], hot.parts[k].figure); ok {
			sum = sum.Add(hot.parts[k].own.Scale(factor))
		}
	}
	return sum
}

// isHot says whether an element is a hot one of a lamp.
func (s *Solution) isHot(element uint32, lamp int) bool {
	_, is := s.hot[lamp].of[element]
	return is
}

// sum is what receptor i gets of one lamp, by key.
func (g *gatherer) sum(i int, p *place, lamp int) (out []colour.RGB) {
	t := g.s.t
	add := func(element uint32, e colour.RGB) {
		if e == (colour.RGB{}) {
			return
		}
		k := g.key(element)
		for len(out) <= k {
			out = append(out, colour.RGB{})
		}
		out[k] = out[k].Add(e)
	}
	put := g.putRight(p, lamp)
	for _, h := range g.met {
		if !g.known[h] {
			add(h, g.s.exitance(h, lamp).Add(put[h]).Scale(g.shares[h]))
		}
	}
	for _, h := range g.fixed {
		if g.s.isHot(h, lamp) {
			add(h, g.s.exitance(h, lamp).Add(g.s.straight(h, lamp).Scale(-1)).Scale(g.exact[h]).Add(g.ofHot(i, h, lamp)))
			continue
		}
		add(h, g.s.exitance(h, lamp).Add(put[h]).Scale(g.exact[h]))
	}
	for r, n := range p.cellOf {
		if n >= 0 && g.rays[r] > 0 {
			add(t.cells[n].element, g.s.cells[lamp][n].exitance.Scale(g.rays[r]))
		}
	}
	return out
}

// How many rays must have met an element for them to tell how the part of it that is seen is lit; and a hot one, for a
// small spot slips between fewer.
const (
	fewestMet    = 3
	fewestMetHot = 16
)

// putRight finds, for elements that matter and that the edge of a shadow runs over, by how much the light where the rays
// have met them differs from that of all of the element: of a floor behind a door ajar one sees the lit part, or the
// dark one. It is lm/m² by element.
func (g *gatherer) putRight(p *place, lamp int) map[uint32]colour.RGB {
	t := g.s.t
	bright, total := g.s.bright[lamp], 0.0
	for _, h := range g.met {
		total += g.shares[h] * float64(bright[h])
	}
	limit := t.quality.Matters * total
	type met struct {
		sum    colour.RGB
		weight float64
		rays   int
	}
	found := map[uint32]*met{}
	for _, h := range g.met {
		if h < uint32(4*len(t.patches)) && g.s.uneven[lamp][h/4] && g.shares[h]*float64(bright[h]) > limit && limit > 0 {
			found[h] = &met{}
		}
	}
	if len(found) == 0 {
		return nil
	}
	for r, h := range p.hits {
		m := found[h]
		if m == nil || g.rays[r] == 0 || p.cellOf != nil && p.cellOf[r] >= 0 {
			continue
		}
		e, known := g.local[lamp][r]
		if !known {
			e = g.lamps[lamp].Light(g.worker, p.at[r], t.mesh.faces[t.patches[h/4].face].n)
			g.local[lamp][r] = e
		}
		m.sum, m.weight, m.rays = m.sum.Add(e.Scale(g.rays[r])), m.weight+g.rays[r], m.rays+1
	}
	put := make(map[uint32]colour.RGB, len(found))
	for h, m := range found {
		if m.rays < fewestMet || g.s.isHot(h, lamp) && m.rays < fewestMetHot {
			continue
		}
		lit := t.mesh.faces[t.patches[h/4].face].reflect.Times(m.sum.Scale(1 / m.weight))
		put[h] = lit.Add(g.s.straight(h, lamp).Scale(-1))
	}
	return put
}

// key is the place of an element's key.
func (g *gatherer) key(element uint32) int {
	k, group := g.s.t.keyOf(element)
	n := slices.IndexFunc(g.groups, func(e groupKey) bool { return e.group == group && slices.Equal(e.via, k.Via) })
	if n < 0 {
		n = len(g.groups)
		g.groups, g.keys = append(g.groups, groupKey{group, k.Via}), append(g.keys, k)
	}
	return n
}
