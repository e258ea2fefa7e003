package light

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/photometry"
	"scrimshaw/plan/solid"
)

// What a projection spot throws is the image of its gate, and cuts may leave any part of that: its beam is what lies within a
// rim, and the axis may lie outside.

// Rim is a piece of the rim of the image that a lamp throws, on one face of a solid.
type Rim struct {
	Light  string
	On     solid.ID
	Normal r3.Vec   // of the face, toward the light, a unit vector
	Line   []r3.Vec // m
}

// gateImage is what a lamp throws: the rim of it on the plane at a distance of 1, along a direction square to the axis and over that.
type gateImage struct {
	at, axis, right, up r3.Vec
	rim                 []r2.Vec // convex
}

// newGateImage is the image of a lamp to a share of its peak.
func newGateImage(l *lamp, right r3.Vec, share float64) gateImage {
	cos, sin := r3.Dot(right, l.right), r3.Dot(right, l.up)
	m := gateImage{l.at, l.axis, right, r3.Cross(right, l.axis), photometry.Outline(l.shape, share)}
	for i, p := range m.rim {
		m.rim[i] = r2.Vec{X: cos*p.X + sin*p.Y, Y: cos*p.Y - sin*p.X}
	}
	return m
}

// isDark says whether cuts leave nothing of it.
func (m *gateImage) isDark() bool { return len(m.rim) < 3 }

// through is the direction through a place of the image.
func (m *gateImage) through(p r2.Vec) r3.Vec {
	return r3.Unit(r3.Add(m.axis, r3.Add(r3.Scale(p.X, m.right), r3.Scale(p.Y, m.up))))
}

// round is the ray at a share of the way round the rim.
func (m *gateImage) round(s float64) (o, d r3.Vec) {
	at := s * float64(len(m.rim))
	i := int(at)
	a, b := m.rim[i%len(m.rim)], m.rim[(i+1)%len(m.rim)]
	return m.at, m.through(r2.Add(a, r2.Scale(at-float64(i), r2.Sub(b, a))))
}

// levelChord is the chord of a convex ring through its origin along x; where that lies outside, the one through the ring's
// middle, which is over the origin.
func levelChord(ring []r2.Vec) (low, high, over float64) {
	if low, high = chordAt(ring, 0); low < high {
		return low, high, 0
	}
	for _, p := range ring {
		over += p.Y / float64(len(ring))
	}
	low, high = chordAt(ring, over)
	return low, high, over
}

// chordAt is the chord of a convex ring at a height.
func chordAt(ring []r2.Vec, y float64) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for i, p := range ring {
		q := ring[(i+1)%len(ring)]
		if (p.Y > y) == (q.Y > y) {
			continue
		}
		x := p.X + (y-p.Y)/(q.Y-p.Y)*(q.X-p.X)
		low, high = min(low, x), max(high, x)
	}
	return low, high
}

// Rims traces the rim of the image that a lamp throws, to a share of its peak, over the faces that it comes to.
func (w *World) Rims(e *Emitter, share float64, limits Limits) (all []Rim) {
	l := newLamp(e, 1, 1, 1)
	m := newGateImage(l, l.right, share)
	if m.isDark() {
		return nil
	}
	f := fan{w: w, limits: limits, ray: m.round}
	var last *rayEnd
	ends := f.ends(len(m.rim))
	for i := range ends {
		end := &ends[i]
		switch {
		case end.open:
			last = nil
			continue
		case last == nil || !last.sameFace(end):
			all = append(all, Rim{Light: e.Name, On: end.id, Normal: end.normal})
		}
		run := &all[len(all)-1]
		run.Line, last = append(run.Line, r3.Add(end.o, r3.Scale(end.t, end.d))), end
	}
	return all
}
