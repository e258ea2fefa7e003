package frame

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/lens"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/solid"
)

// picture is the frame of a camera: a pyramid from the entrance of its lens.
type picture struct {
	plan.Frame
	wide, high float64 // tangents of half its angles of view
}

func pictureOf(c *plan.Camera) picture {
	return picture{c.Frame, lens.HalfTangent(c.Gate[0]*max(c.Squeeze, 1), c.Lens), lens.HalfTangent(c.Gate[1], c.Lens)}
}

// panned is the picture once the camera is panned by degrees, clockwise from above.
func (p picture) panned(degrees float64) picture {
	turn := func(v r3.Vec) r3.Vec {
		flat := plane.Clockwise(plan.InPlan(v), degrees)
		return r3.Vec{X: flat.X, Y: flat.Y, Z: v.Z}
	}
	p.Axis, p.Right = turn(p.Axis), turn(p.Right)
	return p
}

// grown is the picture with a margin on each side, a share of its width.
func (p picture) grown(margin float64) picture {
	more := 2 * margin * p.wide
	p.wide += more
	p.high += more
	return p
}

// nearest is how far before the lens something is at least that the picture shows, m: all but nothing.
const nearest = 1e-6

// sides are the planes that bound what the picture shows.
func (p picture) sides() [5]solid.Plane {
	through := func(outward r3.Vec, tangent float64) solid.Plane {
		n := r3.Unit(r3.Sub(outward, r3.Scale(tangent, p.Axis)))
		return solid.Plane{N: n, C: r3.Dot(n, p.At)}
	}
	up := p.Up()
	back := r3.Scale(-1, p.Axis)
	return [5]solid.Plane{{N: back, C: r3.Dot(back, p.At) - nearest}, through(r3.Scale(-1, p.Right), p.wide), through(p.Right, p.wide),
		through(r3.Scale(-1, up), p.high), through(up, p.high)}
}

// mayShow says whether the picture may show something of a ball.
func (p picture) mayShow(middle r3.Vec, radius float64) bool {
	for _, h := range p.sides() {
		if h.Over(middle) > radius {
			return false
		}
	}
	return true
}

// clipped is what of a flat figure lies within some planes; nil where nothing does.
func clipped(figure []r3.Vec, within []solid.Plane) []r3.Vec {
	for i := range within {
		if figure = clip(figure, &within[i]); figure == nil {
			return nil
		}
	}
	return figure
}

// clip is what of a flat figure lies within one plane.
func clip(figure []r3.Vec, h *solid.Plane) []r3.Vec {
	out := false
	for _, c := range figure {
		out = out || h.Over(c) > 0
	}
	if !out {
		return figure
	}
	var kept []r3.Vec
	last := figure[len(figure)-1]
	was := h.Over(last)
	for _, c := range figure {
		is := h.Over(c)
		if was*is < 0 {
			kept = append(kept, r3.Add(last, r3.Scale(was/(was-is), r3.Sub(c, last))))
		}
		if is <= 0 {
			kept = append(kept, c)
		}
		last, was = c, is
	}
	if len(kept) < 3 {
		return nil
	}
	return kept
}

// onto is where the picture shows the corners of a figure before the lens: from -1 at the left and the lower edge to 1 at the
// right and the upper one.
func (p picture) onto(figure []r3.Vec) []r2.Vec {
	ring := make([]r2.Vec, len(figure))
	up := p.Up()
	for i, c := range figure {
		d := r3.Sub(c, p.At)
		z := r3.Dot(d, p.Axis)
		ring[i] = r2.Vec{X: r3.Dot(d, p.Right) / (z * p.wide), Y: r3.Dot(d, up) / (z * p.high)}
	}
	return ring
}

// share is how much of the picture a flat figure before the lens takes that lies within it.
func (p picture) share(figure []r3.Vec) float64 { return math.Abs(plane.Area(p.onto(figure))) / 4 }
