package light

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/photometry"
	"scrimshaw/plan/solid"
)

// What a projection spot throws is the image of its gate, and cuts may leave any part of that: its beam is not what lies about
// the axis, but what lies within a rim.

// Rim is a piece of the rim of the image that a lamp throws, on one face of a solid.
type Rim struct {
	Light  string
	On     solid.ID
	Normal r3.Vec   // of the face, toward the light
	Line   []r3.Vec // m
}

// imageWedge is the wedge of a lamp whose image has a rim: through the axis where that is lit, else through the middle of what is.
func (w *World) imageWedge(l *lamp, right r3.Vec, share float64, limits Limits, out *Wedge) {
	rim := l.rimAlong(right, share)
	if len(rim) < 3 {
		return
	}
	if math.Abs(l.axis.Z) > math.Sin(steepest*radian) {
		f := fan{w: w, limits: limits, ray: l.alongRim(right, rim)}
		out.Footprint = true
		out.Outline = f.outline(len(rim))
		out.Outline = out.Outline[:len(out.Outline)-1] // the last ray is the first
		return
	}
	low, high, over := levelChord(rim)
	first, last := math.Atan(low), math.Atan(high)
	out.Left, out.Right = -first/radian, last/radian
	f := fan{w: w, limits: limits, flat: true, ray: func(s float64) (o, d r3.Vec) {
		return l.at, l.through(right, r2.Vec{X: math.Tan(first + s*(last-first)), Y: over})
	}}
	out.Outline = append([]r2.Vec{inPlan(l.at)}, f.outline(int(math.Ceil((last-first)/radian/fanStep)))...)
}

// rimAlong is the rim of the image of a lamp on the plane at a distance of 1, along a direction square to the axis and across it.
func (l *lamp) rimAlong(right r3.Vec, share float64) []r2.Vec {
	cos, sin := r3.Dot(right, l.right), r3.Dot(right, l.up)
	rim := photometry.Outline(l.shape, share)
	for i, p := range rim {
		rim[i] = r2.Vec{X: cos*p.X + sin*p.Y, Y: cos*p.Y - sin*p.X}
	}
	return rim
}

// through is the direction through a place of the image.
func (l *lamp) through(right r3.Vec, p r2.Vec) r3.Vec {
	up := r3.Cross(right, l.axis)
	return r3.Unit(r3.Add(l.axis, r3.Add(r3.Scale(p.X, right), r3.Scale(p.Y, up))))
}

// alongRim are the rays round a rim, from its first place to the same.
func (l *lamp) alongRim(right r3.Vec, rim []r2.Vec) func(s float64) (o, d r3.Vec) {
	return func(s float64) (o, d r3.Vec) {
		at := s * float64(len(rim))
		i := int(at)
		a, b := rim[i%len(rim)], rim[(i+1)%len(rim)]
		return l.at, l.through(right, r2.Add(a, r2.Scale(at-float64(i), r2.Sub(b, a))))
	}
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
	rim := photometry.Outline(l.shape, share)
	if len(rim) < 3 {
		return nil
	}
	f := fan{w: w, limits: limits, ray: l.alongRim(l.right, rim)}
	var last *rayEnd
	ends := f.ends(len(rim))
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
