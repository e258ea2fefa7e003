package light

import (
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/solid"
)

// A flat mirror shows a lamp to a place as the lamp shows itself to the image of the place: through the mirror as through a
// hole in its plane, past what stands before the mirror and past the images of that behind it. So what comes by a mirror is
// read as straight light is, at images of places in a set of the mirror's own. Of two mirrors one after the other nothing
// comes straight; what surfaces send is followed through as many as it meets (package radiosity).

// isReached says whether light of a lamp can come to the mirror.
func (m *mirror) isReached(l *lamp) bool {
	return r3.Norm(r3.Sub(l.at, solid.Centre(m.Corners))) <= solid.MirrorReach && shinesOn(l, &m.Mirror, m.w.bvh.Epsilon())
}

// shows says whether the mirror can show anything to a place.
func (m *mirror) shows(at r3.Vec) bool {
	return m.Plane.Over(at) > m.w.bvh.Epsilon() && r3.Norm2(r3.Sub(at, solid.Centre(m.Corners))) < solid.MirrorReach*solid.MirrorReach
}

// receptor is the image of a receptor.
func (m *mirror) receptor(r *Receptor) Receptor {
	return Receptor{At: m.Image(r.At), Axis: m.Turned(r.Axis), Response: r.Response, Skip: r.Skip}
}

// lattice is the image of a lattice, of which only the points before the mirror have data.
func (m *mirror) lattice(l *Lattice) *Lattice {
	v := *l
	v.Origin, v.U, v.V, v.Normal = m.Image(l.Origin), m.Turned(l.U), m.Turned(l.V), m.Turned(l.Normal)
	if l.Toward != nil {
		toward := m.Image(*l.Toward)
		v.Toward = &toward
	}
	v.Mask = make([]uint64, (l.NU*l.NV+63)/64)
	for n := range l.NU * l.NV {
		if i, j := n%l.NU, n/l.NU; l.Masked(i, j) || !m.shows(l.At(i, j)) {
			v.Mask[n>>6] |= 1 << (n & 63)
		}
	}
	return &v
}

// all is what a lamp gives to a receptor, straight, by mirrors and by boards, in shares that hold until the next call.
func (t *tracer) all(l *lamp, r *Receptor) []share {
	if len(l.images) == 0 && len(l.boards) == 0 {
		return t.light(l, r)
	}
	out := append(t.gathered[:0], t.light(l, r)...)
	set := t.BVH
	for i := range l.images {
		m := &l.images[i]
		if !m.shows(r.At) {
			continue
		}
		seen := m.receptor(r)
		t.BVH = m.w.bvh
		for _, s := range t.light(m.l, &seen) {
			s.filter, s.mirror = s.filter.Times(m.Factor), &m.ID
			out = append(out, s)
		}
	}
	t.BVH = set
	t.gathered = t.byBoards(l, r, out)
	return t.gathered
}

// byBoards adds what a lamp gives to a receptor by boards.
func (t *tracer) byBoards(l *lamp, r *Receptor, out []share) []share {
	for i := range l.boards {
		b := &l.boards[i]
		for _, s := range t.byBoard(l, b, r) {
			s.filter, s.mirror = s.filter.Times(b.Factor), &b.ID
			out = append(out, s)
		}
	}
	return out
}

// addPlanes adds the planes of a field, each times the factor of its channel, to those of another.
func addPlanes(to, more []float32, factor colour.RGB, size int) []float32 {
	if len(to) == size && (len(more) > size || coloured(factor)) {
		to = append(append(append(make([]float32, 0, 3*size), to...), to...), to...)
	}
	for n := range to {
		to[n] += float32(factor[n/size]) * more[n%len(more)]
	}
	return to
}
