package radiosity

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/light/receptor"
	"scrimshaw/plan/photometry/formfactor"
	"scrimshaw/plan/solid"
)

// A receptor's rays are many, and still few for an element that is small and bright: of ten rays three may miss it.
// Where that would show, the rays leave the element out and its form factor, as far as it is seen, is found exactly.

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
	whole  []bool    // by element of known form factor: whether all of it is seen
	fixed  []uint32  // those elements in their order
	groups []groupKey
	keys   []Key

	through []passed // what has been found behind clear sheets, of elements whose form factor is known
	panes   []solid.Pane

	inCells []float64 // by cell: what the receptor gets by it for each lm/m², lx
}

// groupKey is a key by the number of its group.
type groupKey struct {
	group int32
	via   []solid.ID
}

// chooseExact finds the elements that rays would miss too much of, and their form factors. What is chosen may not depend on
// what the rays have met: those met by chance too often would be put right, and those met too seldom left as they are.
func (g *gatherer) chooseExact(i int) {
	t := g.s.t
	if t.quality.Noise <= 0 || t.receptors[i].Response == receptor.Radiance {
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
	g.chooseUnmet(i, limits)
	for k := range t.mesh.faces {
		if g.matters(&t.receptors[i], k, limits, share) {
			g.chooseOfFace(i, &t.mesh.faces[k], limits, share)
		}
	}
	slices.Sort(g.fixed)
}

// chooseUnmet chooses what shines by the light of lamps of which none of a receptor's rays has met any, on the faces that its place
// sees: what that comes to is not known, and it may be all there is.
func (g *gatherer) chooseUnmet(i int, limits []float64) {
	t := g.s.t
	if slices.Min(limits) > 0 {
		return
	}
	r := &t.receptors[i]
	for _, k := range t.places[t.placeOf[i]].seen {
		f := &t.mesh.faces[k]
		if !(r3.Dot(r3.Sub(r.At, f.origin), f.n) > 0) || !reaches(r, f.corners) {
			continue
		}
		for _, slot := range t.slots[f.first : f.first+uint32(f.nu*f.nv)] {
			if slot != 0 {
				g.chooseShining(i, 4*slot, limits)
			}
		}
	}
}

// chooseShining chooses those of the four elements from one on that shine by the light of such lamps.
func (g *gatherer) chooseShining(i int, first uint32, limits []float64) {
	for e := first; e < first+4; e++ {
		for lamp, limit := range limits {
			if limit == 0 && g.s.bright[lamp][e] > 0 {
				g.findFormFactor(i, e)
			}
		}
	}
}

// matters says whether some element of a face could be chosen, were all of them as bright as the brightest and where the
// face comes nearest.
func (g *gatherer) matters(r *receptor.Receptor, face int, limits []float64, share float64) bool {
	f := &g.s.t.mesh.faces[face]
	way := r3.Sub(r.At, f.origin)
	over := r3.Dot(way, f.n)
	if !(over > 0) {
		return false
	}
	x, y := r3.Dot(way, f.u), r3.Dot(way, f.v)
	x, y = max(0, -x, x-f.width), max(0, -y, y-f.height)
	square, area := x*x+y*y+over*over, f.du*f.dv
	const rounding = 1 + 1e-9
	gain := rounding * over / math.Sqrt(square) * area / (math.Pi * (square + area/4)) / 4
	noise := math.Sqrt(gain * share)
	for lamp, limit := range limits {
		if limit > 0 && float64(g.s.brightest[lamp][face])*noise*rounding > limit {
			return true
		}
	}
	return false
}

// chooseOfFace is chooseExact for the elements of one face.
func (g *gatherer) chooseOfFace(i int, f *face, limits []float64, share float64) {
	t := g.s.t
	for _, slot := range t.slots[f.first : f.first+uint32(f.nu*f.nv)] {
		if slot == 0 {
			continue
		}
		gain := t.mesh.rough(&t.receptors[i], &t.patches[slot]) / 4 // of an element
		if gain <= 0 {
			continue
		}
		noise := math.Sqrt(gain * share) // of n rays sqrt(n)
		for lamp, limit := range limits {
			least := float32(limit / noise)
			for e, v := range g.s.bright[lamp][4*slot : 4*slot+4] {
				if v > least && limit > 0 {
					g.findFormFactor(i, 4*slot+uint32(e))
				}
			}
		}
	}
}

// rough is about what a receptor gets for each lm/m² that a patch returns, were nothing in the way: by the corner that lies
// nearest to its axis, for the plane of a receptor may cut a patch.
func (m *mesh) rough(r *receptor.Receptor, p *patch) float64 {
	f := &m.faces[p.face]
	way := r3.Sub(f.at(p.x+f.du/2, p.y+f.dv/2), r.At)
	falls := -r3.Dot(way, f.n)
	if !(falls > 0) {
		return 0
	}
	cos := math.Inf(-1)
	for _, corner := range f.rectangle(p.x, p.y, f.du, f.dv) {
		toCorner := r3.Sub(corner, r.At)
		cos = max(cos, r3.Dot(toCorner, r.Axis)/math.Sqrt(r3.Norm2(toCorner)))
	}
	square := r3.Norm2(way)
	area := f.du * f.dv
	return r.Response.To(cos) * falls / math.Sqrt(square) * area / (math.Pi * (square + area/4))
}

// findFormFactor finds the form factor of an element, unless it is seen in cells; what is seen of it through clear sheets
// counts for the element as it is seen through them.
func (g *gatherer) findFormFactor(i int, element uint32) {
	t := g.s.t
	r := &t.receptors[i]
	if element >= uint32(4*len(t.patches)) || g.known[element] {
		return
	}
	p := &t.patches[element/4]
	f := &t.mesh.faces[p.face]
	k := int(element & 3)
	if slices.Contains(r.Skip, f.id) || t.isNear(r.At, 4*p.number+element&3) {
		return
	}
	g.fix(element, 0)
	for _, h := range t.throughPanes[element] {
		g.fix(h, 0)
	}
	for _, part := range p.inAir(f, k) {
		first := len(g.through)
		factor, whole := g.factor(r, part)
		g.exact[element] += factor * f.met
		g.whole[element] = g.whole[element] && whole
		for i := first; i < len(g.through); i++ {
			g.through[i].element, g.through[i].gain = element, g.through[i].gain.Scale(f.met)
		}
	}
}

// fix takes up an element whose form factor is known.
func (g *gatherer) fix(element uint32, factor float64) {
	g.known[element], g.exact[element], g.whole[element] = true, factor, true
	g.fixed = append(g.fixed, element)
}

// passed is what is seen of a figure of an element through clear sheets.
type passed struct {
	element uint32
	via     []solid.ID // from the figure on
	gain    colour.RGB // what is got of each lm/m² that the element returns
}

// factor is what a receptor gets of a figure, where no clear sheet is before it, for each lm/m² that it returns, and whether it
// sees all of it. What is seen through sheets is added to through.
func (g *gatherer) factor(r *receptor.Receptor, figure []r3.Vec) (sum float64, whole bool) {
	whole = liesBefore(r, figure)
	s := solid.NewShaft([]r3.Vec{r.At}, figure)
	g.found = g.view.BVH.Between(&s, r.Skip, g.found[:0])
	for _, seen := range g.view.Visible(r.At, figure, g.found, true) {
		factor := 0.0
		whole = whole && !seen.Cut
		if r.Response == receptor.Dome {
			factor = formfactor.PolygonDome(seen.Corners, r.At, r.Axis) / math.Pi
		} else {
			factor = formfactor.Polygon(seen.Corners, r.At, r.Axis) / math.Pi
		}
		if seen.Filtered {
			g.pass(r, seen.Corners, factor)
		} else {
			sum += factor
		}
	}
	return sum, whole
}

// liesBefore says whether all of a figure lies before the plane of a receptor; before a dome all does.
func liesBefore(r *receptor.Receptor, figure []r3.Vec) bool {
	return r.Response == receptor.Dome ||
		!slices.ContainsFunc(figure, func(p r3.Vec) bool { return r3.Dot(r3.Sub(p, r.At), r.Axis) < 0 })
}

// pass notes what is seen of a figure through the sheets between it and a receptor.
func (g *gatherer) pass(r *receptor.Receptor, figure []r3.Vec, factor float64) {
	p := passed{gain: colour.RGB{factor, factor, factor}}
	g.panes, _ = g.s.t.mesh.bvh.Segment(solid.Centre(figure), r.At, r.Skip, g.panes[:0])
	for i := range g.panes {
		p.via = append(p.via, g.panes[i].ID)
		p.gain = p.gain.Times(g.panes[i].Factor())
	}
	g.through = append(g.through, p)
}

// ofHot is what a receptor gets of the lamp's own light from a hot element, lx: each part of it by its own form
// factor.
func (g *gatherer) ofHot(i int, element uint32, lamp int) (sum colour.RGB) {
	hot := &g.s.hot[lamp]
	parts, first := hot.of[element], len(g.through) // what of them is seen through sheets counts with all of the element
	for k := parts[0]; k < parts[1]; k++ {
		factor, _ := g.factor(&g.s.t.receptors[i], hot.parts[k].figure)
		sum = sum.Add(hot.parts[k].own.Scale(factor))
	}
	g.through = g.through[:first]
	return sum
}

// nearHot are the hot elements of a lamp that lie close to a receptor, in their order: few rays meet a small spot of light, and
// not in proportion, so that its light is found exactly.
func (g *gatherer) nearHot(r *receptor.Receptor, lamp int) (near []uint32) {
	t := g.s.t
	if r.Response == receptor.Radiance {
		return nil
	}
	for element := range g.s.hot[lamp].of {
		p := &t.patches[element/4]
		if t.isNear(r.At, 4*p.number+element&3) && !slices.Contains(r.Skip, t.mesh.faces[p.face].id) {
			near = append(near, element)
		}
	}
	slices.Sort(near)
	return near
}

// sum is what receptor i gets of one lamp, by key.
func (g *gatherer) sum(i int, p *place, lamp int) (out []colour.RGB) {
	t := g.s.t
	put := func(element uint32, through []solid.ID, e colour.RGB) {
		if e == (colour.RGB{}) {
			return
		}
		k := g.key(element, through)
		for len(out) <= k {
			out = append(out, colour.RGB{})
		}
		out[k] = out[k].Add(e)
	}
	add := func(element uint32, e colour.RGB) { put(element, nil, e) }
	local := g.shadowCorrection(p, lamp)
	for _, h := range g.met {
		if !g.known[h] {
			add(h, g.s.exitance(h, lamp).Add(local[h]).Scale(g.shares[h]))
		}
	}
	for _, h := range g.fixed {
		if g.s.isHot(h, lamp) {
			add(h, g.s.exitance(h, lamp).Add(g.s.ofLamp(h, lamp).Scale(-1)).Scale(g.exact[h]).Add(g.ofHot(i, h, lamp)))
			continue
		}
		add(h, g.s.exitance(h, lamp).Add(local[h]).Scale(g.exact[h]))
	}
	for k := range g.through {
		v := &g.through[k]
		put(v.element, v.via, g.s.exitance(v.element, lamp).Times(v.gain))
	}
	for r, n := range p.cellOf {
		if n >= 0 && g.rays[r] > 0 {
			add(t.cells[n].element, g.s.fromCell(n, lamp).Scale(g.rays[r]))
		}
	}
	for _, h := range g.nearHot(&t.receptors[i], lamp) {
		add(h, g.ofHot(i, h, lamp))
	}
	return out
}

// How many rays must have met an element for them to tell how the part of it that is seen is lit; and a hot one, for a
// small spot slips between fewer.
const (
	fewestMet    = 3
	fewestMetHot = 16
)

// shadowCorrection finds, for elements that matter and that the edge of a shadow runs over, by how much the light where the rays
// have met them differs from that of all of the element: of a floor behind a door ajar one sees the lit part, or the
// dark one. What is seen as a whole is lit as the whole is. It is lm/m² by element.
func (g *gatherer) shadowCorrection(p *place, lamp int) map[uint32]colour.RGB {
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
		if h < uint32(4*len(t.patches)) && !(g.known[h] && g.whole[h]) && g.s.uneven[lamp][h/4] && g.shares[h]*float64(bright[h]) > limit && limit > 0 {
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
			e = t.mesh.straightAt(g.lamps[lamp], g.worker, p.at[r], int(t.patches[h/4].face))
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
		put[h] = lit.Add(g.s.ofLamp(h, lamp).Scale(-1))
	}
	return put
}

// key is the place of an element's key, of one that is seen through sheets besides.
func (g *gatherer) key(element uint32, through []solid.ID) int {
	k, group := g.s.t.keyOf(element)
	if through != nil {
		k.Via = through
	}
	n := slices.IndexFunc(g.groups, func(e groupKey) bool { return e.group == group && slices.Equal(e.via, k.Via) })
	if n < 0 {
		n = len(g.groups)
		g.groups, g.keys = append(g.groups, groupKey{group, k.Via}), append(g.keys, k)
	}
	return n
}
