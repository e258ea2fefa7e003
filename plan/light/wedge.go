package light

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/photometry"
)

// Wedge is a beam in plan: where the light that is at least a share of the peak goes, in the plane
// through the axis and its level right, until it meets something. An aim that is steeper than 75°
// has no wedge; Outline is then the footprint of its cone.
type Wedge struct {
	Light       string
	Share       float64  // of the peak intensity: 0.5, 0.1
	Left, Right float64  // angles from the axis, degrees; 180 where the light never falls so far
	Outline     []r2.Vec // closed; of a wedge, from the left end of the emitting edge round the far side
	Footprint   bool
}

const (
	steepest = 75.0  // degrees of an aim that still has a wedge
	fanStep  = 1.0   // degrees between neighbouring rays
	allRound = 359.0 // degrees from which a wedge has no apex
	flattest = 89.0  // degrees, half the widest cone that a footprint is drawn of
	coneStep = 5.0   // degrees between neighbouring rays of a cone

	crispAngle = 1e-4 // degrees to which the edge of a screen is found
)

// Wedge traces the beam of a light at a share of its peak.
func (w *World) Wedge(e *Emitter, share float64, limits Limits) Wedge {
	l := newLamp(e, 1, 1, 1)
	out := Wedge{Light: e.Name, Share: share}
	right := levelRight(e.Frame)
	if _, gated := l.shape.(*photometry.Gated); gated {
		m := newGateImage(l, right, share)
		m.wedge(w, limits, &out)
		return out
	}
	threshold := share * l.flux * photometry.Peak(l.shape)
	out.Left, out.Right = l.beamAngle(r3.Scale(-1, right), threshold), l.beamAngle(right, threshold)
	if math.Abs(l.axis.Z) > math.Sin(steepest*radian) {
		out.Footprint = true
		out.Outline = w.footprint(l, threshold, limits)
		return out
	}
	out.Outline = w.wedgeOutline(l, right, out.Left, out.Right, limits)
	return out
}

// beamAngle is the angle from the axis, degrees, at which a beam ends toward a side: where its intensity falls below
// a threshold, or where the lamp's own screens stop what comes from the middle of it. A lamp in a shade that shines through
// has no beam: its light goes all round.
func (l *lamp) beamAngle(side r3.Vec, threshold float64) float64 {
	const lastDigits = 1e-9
	if l.shade != nil && l.intensity(side) > lastDigits*threshold {
		return 180
	}
	free := func(degrees float64) bool {
		sin, cos := math.Sincos(degrees * radian)
		d := r3.Add(r3.Scale(cos, l.axis), r3.Scale(sin, side))
		return !slices.ContainsFunc(l.screens, func(c caster) bool { return c.stops(l.at, d) })
	}
	end := l.cutoffAngle(side, threshold)
	for low := 0.0; low < end; low += scanStep {
		if free(low) {
			continue
		}
		high := low
		for low = max(0, low-scanStep); high-low > crispAngle; {
			if middle := (low + high) / 2; free(middle) {
				low = middle
			} else {
				high = middle
			}
		}
		return low
	}
	return end
}

// wedge is the wedge of a lamp that throws an image: through the axis where that is lit, else through the middle of what
// is.
func (m *gateImage) wedge(w *World, limits Limits, out *Wedge) {
	f := fan{w: w, limits: limits, ray: m.round}
	switch {
	case m.isDark():
		return
	case math.Abs(m.axis.Z) > math.Sin(steepest*radian):
		out.Footprint = true
		out.Outline = f.outline(len(m.rim))
		out.Outline = out.Outline[:len(out.Outline)-1] // the last ray is the first
		return
	}
	low, high, over := levelChord(m.rim)
	first, last := math.Atan(low), math.Atan(high)
	out.Left, out.Right = -first/radian, last/radian
	f.flat = true
	f.ray = func(s float64) (o, d r3.Vec) {
		return m.at, m.through(r2.Vec{X: math.Tan(first + s*(last-first)), Y: over})
	}
	out.Outline = append([]r2.Vec{inPlan(m.at)}, f.outline(int(math.Ceil((last-first)/radian/fanStep)))...)
}

// wedgeOutline traces a wedge by its angles to either side of the axis, degrees.
func (w *World) wedgeOutline(l *lamp, toRight r3.Vec, left, right float64, limits Limits) []r2.Vec {
	f := fan{w: w, limits: limits, flat: true}
	width := l.halfExtent(toRight)
	f.ray = func(s float64) (o, d r3.Vec) {
		angle := -left + s*(left+right)
		sin, cos := math.Sincos(angle * radian)
		return r3.Add(l.at, r3.Scale((2*s-1)*width, toRight)), r3.Add(r3.Scale(cos, l.axis), r3.Scale(sin, toRight))
	}
	hits := f.outline(int(math.Ceil((left + right) / fanStep)))
	if left+right >= allRound {
		return hits
	}
	from, _ := f.ray(0)
	to, _ := f.ray(1)
	outline := append([]r2.Vec{inPlan(from)}, hits...)
	if width > 0 {
		outline = append(outline, inPlan(to))
	}
	return outline
}

// Sight traces what a camera sees in the plane of its axis and right: an outline in plan from the
// camera round the far side. angle is the full horizontal angle of view, degrees.
func (w *World) Sight(frame plan.Frame, angle float64, limits Limits) []r2.Vec {
	f := fan{w: w, limits: limits, flat: true}
	f.ray = func(s float64) (o, d r3.Vec) {
		sin, cos := math.Sincos((s - 0.5) * angle * radian)
		return frame.At, r3.Add(r3.Scale(cos, frame.Axis), r3.Scale(sin, frame.Right))
	}
	return append([]r2.Vec{inPlan(frame.At)}, f.outline(int(math.Ceil(angle/fanStep)))...)
}

// footprint traces the cone of a steep aim.
func (w *World) footprint(l *lamp, threshold float64, limits Limits) []r2.Vec {
	f := fan{w: w, limits: limits}
	_, axial := l.shape.(photometry.Axial)
	axial = axial && len(l.screens) == 0
	half := math.Min(l.beamAngle(l.right, threshold), flattest)
	f.ray = func(s float64) (o, d r3.Vec) {
		sin, cos := math.Sincos(2 * math.Pi * s)
		side := r3.Add(r3.Scale(cos, l.right), r3.Scale(sin, l.up))
		if !axial {
			half = math.Min(l.beamAngle(side, threshold), flattest)
		}
		sin, cos = math.Sincos(half * radian)
		return r3.Add(l.at, r3.Scale(l.halfExtent(side), side)), r3.Add(r3.Scale(cos, l.axis), r3.Scale(sin, side))
	}
	ring := f.outline(int(360 / coneStep))
	return ring[:len(ring)-1] // the last ray is the first
}

// levelRight is the right of a frame without its roll: axis x z, or the frame's own where the
// axis is upright.
func levelRight(f plan.Frame) r3.Vec {
	right := r3.Cross(f.Axis, r3.Vec{Z: 1})
	if length := r3.Norm(right); length > 1e-9 {
		return r3.Scale(1/length, right)
	}
	return f.Right
}
