package light

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/solid"
)

// Wedge is a beam in plan: where the light that is at least a share of the peak goes, in the plane
// through the axis and its level right, until it meets something. An aim that is steeper than 75°
// has no wedge; Outline is then the footprint of its cone.
type Wedge struct {
	Light       string
	Share       float64  // of the peak intensity: 0.5, 0.1
	Left, Right float64  // angles from the axis, degrees; 180 where the light never falls so far
	Outline     []r2.Vec // closed; of a wedge, from the left end of the emitting edge by way of the far side
	Footprint   bool
}

// Limits end a ray that meets nothing.
type Limits struct {
	Floor float64 // z of the lowest floor, m
	Reach float64 // m
}

const (
	steepest  = 75.0  // degrees of an aim that still has a wedge
	fanStep   = 1.0   // degrees between neighbouring rays
	crisp     = 0.005 // m, to which the edge between two surfaces is found
	allRound  = 359.0 // degrees from which a wedge has no apex
	flattest  = 89.0  // degrees, half the widest cone that a footprint is drawn of
	coneStep  = 5.0   // degrees between neighbouring rays of a cone
	scanStep  = 0.5   // degrees at which a beam's edge is looked for
	deepSplit = 24    // halvings of a fan's step at most
	radian    = math.Pi / 180
)

// Wedge traces the beam of a light at a share of its peak.
func (w *World) Wedge(e *Emitter, share float64, limits Limits) Wedge {
	l := newLamp(e, 1, 1, 1)
	out := Wedge{Light: e.Name, Share: share}
	right := levelRight(e.Frame)
	threshold := share * l.flux * photometry.Peak(l.shape)
	out.Left, out.Right = l.falls(r3.Scale(-1, right), threshold), l.falls(right, threshold)
	if math.Abs(l.axis.Z) > math.Sin(steepest*radian) {
		out.Footprint = true
		out.Outline = w.footprint(l, threshold, limits)
		return out
	}
	f := fan{w: w, limits: limits, flat: true}
	width := l.halfAlong(right)
	f.ray = func(s float64) (o, d r3.Vec) {
		angle := -out.Left + s*(out.Left+out.Right)
		sin, cos := math.Sincos(angle * radian)
		return r3.Add(l.at, r3.Scale((2*s-1)*width, right)), r3.Add(r3.Scale(cos, l.axis), r3.Scale(sin, right))
	}
	hits := f.outline(int(math.Ceil((out.Left + out.Right) / fanStep)))
	if out.Left+out.Right >= allRound {
		out.Outline = hits
		return out
	}
	from, _ := f.ray(0)
	to, _ := f.ray(1)
	out.Outline = append([]r2.Vec{inPlan(from)}, hits...)
	if width > 0 {
		out.Outline = append(out.Outline, inPlan(to))
	}
	return out
}

// Sight traces what a camera sees in the plane of its axis and right: an outline in plan from the
// camera by way of the far side. angle is the full horizontal angle of view, degrees.
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
	half := math.Min(l.falls(l.right, threshold), flattest)
	f.ray = func(s float64) (o, d r3.Vec) {
		sin, cos := math.Sincos(2 * math.Pi * s)
		side := r3.Add(r3.Scale(cos, l.right), r3.Scale(sin, l.up))
		if !axial {
			half = math.Min(l.falls(side, threshold), flattest)
		}
		sin, cos = math.Sincos(half * radian)
		return r3.Add(l.at, r3.Scale(l.halfAlong(side), side)), r3.Add(r3.Scale(cos, l.axis), r3.Scale(sin, side))
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

// halfAlong is how far the opening reaches from its middle toward a side, a unit vector square to
// the axis.
func (l *lamp) halfAlong(side r3.Vec) float64 {
	x, y := math.Abs(r3.Dot(side, l.right)), math.Abs(r3.Dot(side, l.up))
	w, h := l.opening.Width/2, l.opening.Height/2
	switch l.opening.Form {
	case photometry.Point:
		return 0
	case photometry.Rectangle: // to its edge
		return 1 / math.Max(x/w, y/h)
	case photometry.Tube:
		return w * x
	}
	return w
}

// falls is the angle from the axis, degrees, at which the intensity toward a side has fallen below
// a threshold: the first one outside the brightest direction before the lamp.
func (l *lamp) falls(side r3.Vec, threshold float64) float64 {
	at := func(degrees float64) float64 {
		sin, cos := math.Sincos(degrees * radian)
		return l.intensity(r3.Add(r3.Scale(cos, l.axis), r3.Scale(sin, side)))
	}
	threshold *= 1 - 1e-9
	brightest, most := 0.0, at(0)
	for a := scanStep; a <= 90; a += scanStep {
		if v := at(a); v > most*(1+1e-9) {
			brightest, most = a, v
		}
	}
	if most < threshold {
		return 0
	}
	low := brightest
	for low < 180 && at(low+scanStep) >= threshold {
		low += scanStep
	}
	if low >= 180 {
		return 180
	}
	high := low + scanStep
	for range 40 {
		if a := (low + high) / 2; at(a) >= threshold {
			low = a
		} else {
			high = a
		}
	}
	return low
}

// fan is a family of rays that runs from s = 0 to s = 1.
type fan struct {
	w      *World
	limits Limits
	ray    func(s float64) (o, d r3.Vec)
	flat   bool // all in one plane: what one face cuts off lies on a line
}

// end is where a ray of a fan ends, and on what.
type end struct {
	s      float64
	o, d   r3.Vec
	t      float64
	id     solid.ID
	normal r3.Vec
	open   bool // on nothing
}

// at is the place.
func (e *end) at() r2.Vec { return r2.Vec{X: e.o.X + e.t*e.d.X, Y: e.o.Y + e.t*e.d.Y} }

// like says whether two rays end on the same face.
func (e *end) like(g *end) bool {
	return e.open == g.open && e.id == g.id && r3.Norm2(r3.Sub(e.normal, g.normal)) < 1e-18
}

// shoot traces one ray.
func (f *fan) shoot(s float64) end {
	o, d := f.ray(s)
	e := end{s: s, o: o, d: d, t: f.limits.Reach, open: true}
	if drop := o.Z - f.limits.Floor; d.Z < 0 && drop > 0 && drop < -d.Z*e.t {
		e.t, e.open, e.normal = drop/-d.Z, false, r3.Vec{Z: 1}
	}
	if h, ok := f.w.bvh.FirstOpaque(o, d, nil); ok && h.T < e.t {
		e.t, e.id, e.normal, e.open = h.T, h.ID, h.Normal, false
	}
	return e
}

// outline traces steps + 1 rays, and more between neighbours that end on different faces.
func (f *fan) outline(steps int) []r2.Vec {
	steps = max(steps, 1)
	ends := []end{f.shoot(0)}
	for i := 1; i <= steps; i++ {
		next := f.shoot(float64(i) / float64(steps))
		ends = f.between(ends, next, deepSplit)
	}
	var out []r2.Vec
	for i := range ends {
		inner := f.flat && !ends[i].open && i > 0 && i+1 < len(ends)
		if inner && ends[i].like(&ends[i-1]) && ends[i].like(&ends[i+1]) {
			continue
		}
		out = append(out, ends[i].at())
	}
	return out
}

// between appends next and, before it, rays between the last one and next where they end on
// different faces.
func (f *fan) between(ends []end, next end, depth int) []end {
	last := ends[len(ends)-1]
	far := math.Max(last.t, next.t)
	gap := r3.Sub(r3.Add(last.o, r3.Scale(far, last.d)), r3.Add(next.o, r3.Scale(far, next.d)))
	if depth == 0 || last.like(&next) || r3.Norm(gap) <= crisp {
		return append(ends, next)
	}
	ends = f.between(ends, f.shoot((last.s+next.s)/2), depth-1)
	return f.between(ends, next, depth-1)
}

func inPlan(p r3.Vec) r2.Vec { return r2.Vec{X: p.X, Y: p.Y} }
