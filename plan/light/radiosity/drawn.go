package radiosity

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/light/receptor"
)

// The patches of a large face start their rays from a grid, so that the rays of one direction can be drawn
// together as those of a lattice are (frame.go). Every other patch, each way, looks in the same directions;
// its neighbours look in others, so that what one set of directions misses does not show all over a wall.

// strides is how many patches lie side by side, each way, before the sets of directions come round again.
const strides = 2

// A face is drawn where it has so many patches to follow for each set, and for each so many faces of the
// whole: to draw takes a look at every face.
const (
	fewestDrawn  = 32
	facesToPatch = 8
)

// drawing is a set of patches of one face that are linked together.
type drawing struct {
	face  int
	a, b  int   // of the set
	found []int // by place in the view: of the patches to link, -1 for others
	inAir []bool
}

// drawings sorts patches, which ascend, into those that are drawn and the rest, by their places in the list.
func (t *Transport) drawings(patches []uint32) (all []drawing, rest []int) {
	m := t.mesh
	for from := 0; from < len(patches); {
		k := m.face(patches[from])
		f := &m.faces[k]
		to := from
		for to < len(patches) && patches[to] < f.first+uint32(f.nu*f.nv) {
			to++
		}
		if n := f.nu * f.nv / (strides * strides); f.outline != nil || n < fewestDrawn || n < len(m.faces)/facesToPatch {
			for i := from; i < to; i++ {
				rest = append(rest, i)
			}
		} else {
			all = append(all, m.draw(k, patches, from, to)...)
		}
		from = to
	}
	return all, rest
}

// draw makes the drawings of patches from up to to, all of face k.
func (m *mesh) draw(k int, patches []uint32, from, to int) []drawing {
	f := &m.faces[k]
	all := make([]drawing, strides*strides)
	for s := range all {
		d := &all[s]
		d.face, d.a, d.b = k, s%strides, s/strides
		nu, nv := d.size(f)
		d.found, d.inAir = make([]int, nu*nv), make([]bool, nu*nv)
		for i := range d.found {
			d.found[i] = -1
		}
	}
	near := m.beside(f)
	for i := from; i < to; i++ {
		cell := int(patches[i] - f.first)
		x, y := cell%f.nu, cell/f.nu
		d := &all[y%strides*strides+x%strides]
		nu, _ := d.size(f)
		n := y/strides*nu + x/strides
		d.found[n], d.inAir[n] = i, !f.touches(x, y, near)
	}
	return all
}

// size is how many points the view of a drawing has.
func (d *drawing) size(f *face) (nu, nv int) {
	return (f.nu - d.a + strides - 1) / strides, (f.nv - d.b + strides - 1) / strides
}

// bulk is the box round a prism.
type bulk struct{ low, high r3.Vec }

func bulkOf(corners []r3.Vec) bulk {
	b := bulk{corners[0], corners[0]}
	for _, c := range corners[1:] {
		b.low = r3.Vec{X: min(b.low.X, c.X), Y: min(b.low.Y, c.Y), Z: min(b.low.Z, c.Z)}
		b.high = r3.Vec{X: max(b.high.X, c.X), Y: max(b.high.Y, c.Y), Z: max(b.high.Z, c.Z)}
	}
	return b
}

// meets says whether two boxes are less than twice the clearance apart.
func (b *bulk) meets(c *bulk) bool {
	const apart = 2 * clearance
	return b.low.X <= c.high.X+apart && c.low.X <= b.high.X+apart &&
		b.low.Y <= c.high.Y+apart && c.low.Y <= b.high.Y+apart &&
		b.low.Z <= c.high.Z+apart && c.low.Z <= b.high.Z+apart
}

// beside are the prisms that a face may run into.
func (m *mesh) beside(f *face) (near []bulk) {
	own := bulkOf(f.corners)
	for i := range m.bulks {
		if m.bulks[i].meets(&own) {
			near = append(near, m.bulks[i])
		}
	}
	return near
}

// touches says whether a patch may lie in a prism. Its own is among them, and is told by lying behind it.
func (f *face) touches(x, y int, near []bulk) bool {
	left, low := float64(x)*f.du, float64(y)*f.dv
	before := r3.Scale(clearance, f.n)
	cell := bulkOf([]r3.Vec{
		r3.Add(f.at(left, low), before), r3.Add(f.at(left+f.du, low), before),
		r3.Add(f.at(left, low+f.dv), before), r3.Add(f.at(left+f.du, low+f.dv), before),
	})
	return slices.ContainsFunc(near, func(b bulk) bool { return b.meets(&cell) && !f.behind(&b) })
}

// behind says whether a box lies wholly behind a face.
func (f *face) behind(b *bulk) bool {
	far := r3.Vec{X: b.low.X, Y: b.low.Y, Z: b.low.Z} // the corner furthest along the normal
	if f.n.X > 0 {
		far.X = b.high.X
	}
	if f.n.Y > 0 {
		far.Y = b.high.Y
	}
	if f.n.Z > 0 {
		far.Z = b.high.Z
	}
	return r3.Dot(f.n, r3.Sub(far, f.origin)) <= clearance/2
}

// link draws what the patches of a drawing see.
func (p *painter) link(t *Transport, d *drawing, patches []uint32, out []linked) {
	f := &t.mesh.faces[d.face]
	nu, nv := d.size(f)
	n := t.rays(f.du * f.dv)
	for _, i := range d.found {
		if i >= 0 {
			out[i] = linked{t.patch(d.face, patches[i]), make([]uint32, 0, n)}
		}
	}
	p.hits = slices.Grow(p.hits[:0], nu*nv)[:nu*nv]
	v := view{u: r3.Scale(strides*f.du, f.u), v: r3.Scale(strides*f.dv, f.v), nu: nu, nv: nv}
	turn := turns(f.first + uint32(d.b*strides+d.a))
	share := f.du * f.dv / float64(n)
	for r := range n {
		x, y, way := t.stars[r].turned(&turn)
		v.origin = f.at((float64(d.a)+x)*f.du, (float64(d.b)+y)*f.dv)
		p.look(&v, f.direction(receptor.Cosine, way[0], way[1]), p.hits)
		for at, i := range d.found {
			if i < 0 {
				continue
			}
			to := &out[i]
			if !d.inAir[at] && !t.alive(f, to.x+x*f.du, to.y+y*f.dv, f.at(to.x+x*f.du, to.y+y*f.dv)) {
				continue
			}
			to.take(t.mesh, p.hits[at], part(x, y), share)
		}
	}
	for _, i := range d.found {
		if i >= 0 {
			t.finish(p.eye, f, &out[i], n)
		}
	}
}
