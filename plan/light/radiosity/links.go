package radiosity

import (
	"cmp"
	"context"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/light/internal/parallel"
	"scrimshaw/plan/light/receptor"
	"scrimshaw/plan/solid"
)

// patch is one that is seen.
type patch struct {
	number     uint32 // in the mesh
	face       int32
	x, y       float64 // of its corner, from the face's origin
	from, to   int32   // of its links
	importance float64 // share of what single receptors read that hangs on its light
	area       [4]float64
	kept       colour.RGB     // share of its light that comes to a surface
	parts      *[4][][]r3.Vec // by element: what lies on the face and in the air; nil where all does
}

// eye follows rays. It keeps its memory from one to the next.
type eye struct {
	m     *mesh
	panes []solid.Pane
	view  solid.Viewer
	near  []int32
	own   bulk // round the solids that are not there for its rays

	at      r3.Vec // where the last ray has ended
	element uint32 // and on what, whatever it passed
}

func newEye(m *mesh) *eye { return &eye{m: m, view: solid.Viewer{BVH: m.bvh}} }

// look gives the element that a ray meets; not ok where it starts inside a solid.
func (e *eye) look(o, d r3.Vec, skip []solid.ID) (element uint32, ok bool) {
	m := e.m
	hit, met := m.bvh.First(o, d, skip)
	veiled := met && hit.Skin.Clear()
	if veiled {
		hit, met = m.bvh.FirstOpaque(o, d, skip)
	}
	switch {
	case !met:
		return black, true
	case hit.T == 0:
		return black, false
	}
	at := r3.Vec{X: o.X + hit.T*d.X, Y: o.Y + hit.T*d.Y, Z: o.Z + hit.T*d.Z}
	if len(skip) > 0 && e.buried(at, hit.Normal) {
		return black, true
	}
	element = m.element(&hit, at)
	e.at, e.element = at, element
	if !veiled || element == black {
		return element, true
	}
	e.panes, _ = m.bvh.Segment(o, at, skip, e.panes[:0])
	if len(e.panes) > 0 {
		return m.seen.behind(element, e.panes), true
	}
	return element, true
}

// eyes makes one for each goroutine.
func (t *Transport) eyes(n int) []eye {
	all := make([]eye, parallel.Workers(t.workers, n))
	for i := range all {
		all[i] = *newEye(t.mesh)
	}
	return all
}

// rays is how many a patch gets: fewer where it is small.
func (t *Transport) rays(area float64) int {
	n, whole := t.quality.Links, t.quality.Patch*t.quality.Patch
	for n > 16 && area < whole/4 {
		n, whole = n/2, whole/4
	}
	return n
}

// chunk is how many patches are linked in one go.
const chunk = 32

// link follows the rays of all patches that have been seen, and of those that they see, until no
// new ones come up.
func (t *Transport) link(ctx context.Context) error {
	t.slots = make([]uint32, t.mesh.count)
	t.stars = fourfold(max(t.quality.Links, slivers))
	t.patches = append(t.patches, patch{})
	for i := range t.places {
		t.note(t.places[i].hits)
	}
	for i := range t.cells {
		t.note(t.cells[i].hits)
	}
	for _, f := range t.lattices {
		for s := range f.pictures {
			t.note(f.pictures[s].seen)
		}
	}
	if err := t.follow(ctx); err != nil {
		return err
	}
	if err := t.extend(ctx); err != nil {
		return err
	}
	return t.follow(ctx)
}

// note takes up the patches of elements that have been seen for the first time.
func (t *Transport) note(elements []uint32) {
	for _, e := range elements {
		if p := t.patchOf(e); p != 0 && t.slots[p] == 0 {
			t.slots[p] = 1
			t.fresh = append(t.fresh, p)
		}
	}
}

// patchOf is the patch of an element as rays give it; 0 for the black one.
func (t *Transport) patchOf(element uint32) uint32 {
	if element&veil != 0 {
		element = t.mesh.seen.list[element&^veil].element
	}
	return element / 4
}

// follow links fresh patches until none are left.
func (t *Transport) follow(ctx context.Context) error {
	for len(t.fresh) > 0 {
		slices.Sort(t.fresh)
		round, err := t.linkAll(ctx, t.fresh)
		if err != nil {
			return err
		}
		t.fresh = t.fresh[:0]
		more := 0
		for i := range round {
			more += len(round[i].links)
		}
		t.links, t.patches = slices.Grow(t.links, more), slices.Grow(t.patches, len(round))
		for i := range round {
			t.note(round[i].links)
			p := round[i].patch
			p.from = int32(len(t.links))
			t.links = append(t.links, round[i].links...)
			p.to = int32(len(t.links))
			t.patches = append(t.patches, p)
		}
	}
	return nil
}

// linked is a patch with what it sees.
type linked struct {
	patch
	links []uint32
}

// linkAll follows the rays of patches, which ascend.
func (t *Transport) linkAll(ctx context.Context, patches []uint32) ([]linked, error) {
	out := make([]linked, len(patches))
	drawn, rest := t.drawings(patches)
	painters := make([]*painter, parallel.Workers(t.workers, len(drawn)))
	err := parallel.For(ctx, t.workers, len(drawn), func(worker, i int) {
		if painters[worker] == nil {
			painters[worker] = newPainter(t.mesh, nil)
		}
		painters[worker].link(t, &drawn[i], patches, out)
	})
	if err != nil {
		return nil, err
	}
	chunks := (len(rest) + chunk - 1) / chunk
	eyes := t.eyes(chunks)
	err = parallel.For(ctx, t.workers, chunks, func(worker, c int) {
		for _, i := range rest[c*chunk : min((c+1)*chunk, len(rest))] {
			out[i] = t.linkOne(&eyes[worker], patches[i])
		}
	})
	return out, err
}

// patch is one of face k before it is linked.
func (t *Transport) patch(k int, number uint32) patch {
	f := &t.mesh.faces[k]
	cell := int(number - f.first)
	return patch{number: number, face: int32(k), x: float64(cell%f.nu) * f.du, y: float64(cell/f.nu) * f.dv}
}

// linkOne follows the rays of one patch, each from its own place.
func (t *Transport) linkOne(e *eye, number uint32) linked {
	k := t.mesh.face(number)
	f := &t.mesh.faces[k]
	n := t.rays(f.du * f.dv)
	l := linked{t.patch(k, number), make([]uint32, 0, n)}
	t.cast(e, f, &l, 0, n)
	t.finish(e, f, &l, n)
	return l
}

// finish looks for more places of a patch where none of n was in the air, and sets what follows from all.
func (t *Transport) finish(e *eye, f *face, l *linked, n int) {
	for tried := n; len(l.links) == 0 && tried < slivers; tried *= 2 {
		t.cast(e, f, l, tried, 2*tried)
	}
	e.bare(f, &l.patch)
	if len(l.links) > 0 {
		l.kept = l.kept.Scale(1 / float64(len(l.links)))
	}
}

// slivers is how many places of a patch are tried, at most, where all before lie in a solid or off its
// face.
const slivers = 4096

// star is a point of the net: two figures for a direction and two for the place that a ray starts at.
type star [4]uint32

// turns are four words by which the stars of a patch, or of patches that look alike, are turned.
func turns(number uint32) (turn star) {
	word := scatter(number)
	for d := range turn {
		turn[d] = scatter(word + uint32(d))
	}
	return turn
}

// turned is a star after turns: the place and the direction, each 0 to 1.
func (s *star) turned(turn *star) (x, y float64, way [2]float64) {
	return unit(s[2] ^ turn[2]), unit(s[3] ^ turn[3]), [2]float64{unit(s[0] ^ turn[0]), unit(s[1] ^ turn[1])}
}

// part is the element of a patch that a place falls on.
func part(x, y float64) int { return int(2*y)<<1 | int(2*x) }

// take notes the end of a ray.
func (l *linked) take(m *mesh, hit uint32, part int, share float64) {
	l.area[part] += share
	l.links = append(l.links, hit)
	l.kept = l.kept.Add(m.keeps(hit))
}

// cast follows rays from up to to of a patch. What it finds of the patch's area counts as its share of all
// places tried, to.
func (t *Transport) cast(e *eye, f *face, l *linked, from, to int) {
	turn := turns(l.number)
	share := f.du * f.dv / float64(to)
	for r := from; r < to; r++ {
		x, y, way := t.stars[r].turned(&turn)
		if !f.holds(l.x+x*f.du, l.y+y*f.dv) {
			continue
		}
		hit, ok := e.look(f.at(l.x+x*f.du, l.y+y*f.dv), f.direction(receptor.Cosine, way[0], way[1]), nil)
		if ok {
			l.take(t.mesh, hit, part(x, y), share)
		}
	}
}

// keeps is the share of light that comes to the end of a ray.
func (m *mesh) keeps(hit uint32) colour.RGB {
	switch {
	case hit == black:
		return colour.RGB{}
	case hit&veil != 0:
		m.seen.Lock()
		defer m.seen.Unlock()
		return m.seen.list[hit&^veil].factor
	}
	return colour.RGB{1, 1, 1}
}

// rankVeils puts what is seen through clear sheets in an order that does not tell which ray met it first, and gives the
// place of each in it.
func (t *Transport) rankVeils() (rank []uint32) {
	list := t.mesh.seen.list
	order := make([]uint32, len(list))
	for i := range order {
		order[i] = uint32(i)
	}
	slices.SortFunc(order, func(a, b uint32) int {
		return cmp.Or(cmp.Compare(list[a].element, list[b].element), slices.Compare(list[a].via, list[b].via))
	})
	rank, t.veils = make([]uint32, len(list)), make([]veiled, len(list))
	for place, i := range order {
		rank[i], t.veils[place] = uint32(place), list[i]
	}
	return rank
}

// number replaces the numbers of elements in the mesh by their places among those seen: element k of
// slot s is 4s+k, and what is seen through clear sheets follows after, as if each were a patch with one element.
func (t *Transport) number() {
	// In the order of the mesh, so that it leaves no trace which receptor saw a patch first.
	slices.SortFunc(t.patches, func(a, b patch) int { return cmp.Compare(a.number, b.number) })
	for s := 1; s < len(t.patches); s++ {
		t.slots[t.patches[s].number] = uint32(s)
	}
	end := uint32(4 * len(t.patches))
	rank := t.rankVeils()
	place := func(elements []uint32) {
		for i, e := range elements {
			if e&veil != 0 {
				elements[i] = end + 4*rank[e&^veil]
			} else {
				elements[i] = 4*t.slots[e/4] + e&3
			}
		}
	}
	for i := range t.veils {
		e := &t.veils[i].element
		*e = 4*t.slots[*e/4] + *e&3
	}
	place(t.links)
	for i := range t.places {
		place(t.places[i].hits)
	}
	for i := range t.cells {
		place(t.cells[i].hits)
		one := [1]uint32{t.cells[i].element}
		place(one[:])
		t.cells[i].element = one[0]
	}
	for _, f := range t.lattices {
		for s := range f.pictures {
			place(f.pictures[s].seen)
		}
	}
}

// boxOf is the box round some solids; an empty one round none.
func (m *mesh) boxOf(ids []solid.ID) (b bulk) {
	inf := math.Inf(1)
	b = bulk{r3.Vec{X: inf, Y: inf, Z: inf}, r3.Vec{X: -inf, Y: -inf, Z: -inf}}
	for _, id := range ids {
		s := m.of[id]
		for i := s.from; i < s.to; i++ {
			f := bulkOf(m.faces[i].corners)
			b.low = r3.Vec{X: min(b.low.X, f.low.X), Y: min(b.low.Y, f.low.Y), Z: min(b.low.Z, f.low.Z)}
			b.high = r3.Vec{X: max(b.high.X, f.high.X), Y: max(b.high.Y, f.high.Y), Z: max(b.high.Z, f.high.Z)}
		}
	}
	return b
}

// buried says whether a place that a ray has met lies in a solid that is not there for the ray: the floor
// under one's own feet gets no light.
func (e *eye) buried(at, normal r3.Vec) bool {
	if at.X < e.own.low.X || at.X > e.own.high.X || at.Y < e.own.low.Y || at.Y > e.own.high.Y || at.Z < e.own.low.Z || at.Z > e.own.high.Z {
		return false
	}
	_, inside := e.m.bvh.Inside(r3.Add(at, r3.Scale(clearance, normal)))
	return inside
}
