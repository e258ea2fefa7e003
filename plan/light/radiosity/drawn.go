package radiosity

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/light/internal/sobol"
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
	fewestDrawn  = 16
	facesToPatch = 16
)

// drawing is a set of patches of one face that are linked together.
type drawing struct {
	face  int
	a, b  int   // of the set
	found []int // by place in the view: of the patches to link, -1 for others
	inAir []bool
}

// drawings sorts patches, which ascend, into those that are drawn and the rest, by their places in the list.
func (m *mesh) drawings(patches []uint32) (all []drawing, rest []int) {
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

// addRays notes the ends of the rays of one direction, from a place of each patch.
func (d *drawing) addRays(p *depthBuffer, f *face, x, y float64, out []linked) {
	for at, i := range d.found {
		if i < 0 {
			continue
		}
		to := &out[i]
		if !d.inAir[at] && !p.m.inAir(f, f.at(to.x+x*f.du, to.y+y*f.dv)) {
			continue
		}
		to.addRay(p.m, p.hits[at])
	}
}

// link draws what the patches of a drawing see.
func (p *depthBuffer) link(t *Transport, d *drawing, patches []uint32, out []linked) {
	f := &t.mesh.faces[d.face]
	nu, nv := d.size(f)
	n := t.quality.rays(f.du * f.dv)
	for _, i := range d.found {
		if i >= 0 {
			out[i] = linked{t.mesh.patch(d.face, patches[i]), make([]uint32, 0, n)}
		}
	}
	p.hits = slices.Grow(p.hits[:0], nu*nv)[:nu*nv]
	p.inView = facesInView(p.inView, p.m, p.faces, f.corners, &f.n)
	v := view{u: r3.Scale(strides*f.du, f.u), v: r3.Scale(strides*f.dv, f.v), nu: nu, nv: nv}
	shift := sobol.Shift(f.first + uint32(d.b*strides+d.a))
	for r := range n {
		x, y, way := t.samples[r].Shifted(&shift)
		v.origin = f.at((float64(d.a)+x)*f.du, (float64(d.b)+y)*f.dv)
		p.number = r
		p.render(&v, f.direction(receptor.Cosine, way[0], way[1]), p.hits)
		d.addRays(p, f, x, y, out)
	}
	for _, i := range d.found {
		if i >= 0 {
			t.finish(p.tracer, f, &out[i], n)
		}
	}
}
