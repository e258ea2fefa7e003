package radiosity

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
)

// aimed is a lamp that a patch is asked about. Of a patch on a cloth both faces are: what falls on the other counts as
// light on this one that shines like it.
type aimed struct {
	lamp    Lamp
	worker  int
	sight   Visibility
	face    *face
	corners [4]r3.Vec
	element [4]r3.Vec  // the one that is lit
	before  Visibility // of the face of the patch
	beyond  Visibility // of the other face of a cloth
}

// aim asks a lamp about a patch, from both sides where it is of cloth.
func (m *mesh) aim(lamp Lamp, worker int, p *patch) *aimed {
	f := &m.faces[p.face]
	if f.otherSide == 0 {
		l := &aimed{lamp: lamp, worker: worker}
		l.aimBefore(f, p)
		return l
	}
	l := &aimed{lamp: lamp, worker: worker, face: f, corners: f.rectangle(p.x, p.y, f.du, f.dv)}
	l.beyond = l.turn()
	l.before = lamp.SetPatch(worker, l.corners[:], f.n)
	l.sight = max(l.before, l.beyond)
	return l
}

// aimBefore asks the lamp about a patch on a face from before it.
func (l *aimed) aimBefore(f *face, p *patch) {
	l.face, l.corners = f, f.rectangle(p.x, p.y, f.du, f.dv)
	l.before = l.lamp.SetPatch(l.worker, l.corners[:], f.n)
	l.sight = l.before
}

// turn asks the lamp about the other face.
func (l *aimed) turn() Visibility {
	other := l.corners
	slices.Reverse(other[:])
	return l.lamp.SetPatch(l.worker, other[:], r3.Scale(-1, l.face.n))
}

// flux is what comes straight from the lamp to a figure on the patch, lm.
func (l *aimed) flux(figure []r3.Vec, closely bool) (sum colour.RGB) {
	if l.beyond == Hidden {
		return l.lamp.Flux(l.worker, figure, closely)
	}
	l.turn()
	turned := slices.Clone(figure)
	slices.Reverse(turned)
	sum = l.face.through.Times(l.lamp.Flux(l.worker, turned, closely))
	if l.before != Hidden {
		l.lamp.SetPatch(l.worker, l.corners[:], l.face.n)
		sum = sum.Add(l.lamp.Flux(l.worker, figure, closely))
	}
	return sum
}

// straightAt is what comes straight from a lamp to a place on a face, lx; of a cloth with what comes to its other face.
func (m *mesh) straightAt(lamp Lamp, worker int, at r3.Vec, number int) colour.RGB {
	f := &m.faces[number]
	e := lamp.Light(worker, at, f.n)
	if f.otherSide != 0 {
		e = e.Add(f.through.Times(lamp.Light(worker, at, r3.Scale(-1, f.n))))
	}
	return e
}
