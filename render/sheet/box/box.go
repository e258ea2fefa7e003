package box

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/symbols/ink"
)

// Bounds grows a box, in the measure of its points: m of the set or mm of paper.
type Bounds struct {
	B   r2.Box
	Any bool
}

// Point takes in a point with room about it; what is not finite is left out.
func (g *Bounds) Point(p r2.Vec, room float64) {
	if math.IsNaN(p.X+p.Y) || math.IsInf(p.X+p.Y, 0) {
		return
	}
	b := Of(p.X-room, p.Y-room, p.X+room, p.Y+room)
	if !g.Any {
		g.B, g.Any = b, true
		return
	}
	g.B.Min.X, g.B.Min.Y = math.Min(g.B.Min.X, b.Min.X), math.Min(g.B.Min.Y, b.Min.Y)
	g.B.Max.X, g.B.Max.Y = math.Max(g.B.Max.X, b.Max.X), math.Max(g.B.Max.Y, b.Max.Y)
}

// All takes in points with room about them.
func (g *Bounds) All(points []r2.Vec, room float64) {
	for _, p := range points {
		g.Point(p, room)
	}
}

// Box is what was gathered; a scene without a thing gets a square of 2 m.
func (g *Bounds) Box() r2.Box {
	if !g.Any {
		return Of(-1, -1, 1, 1)
	}
	return g.B
}

// Around is the box round boxes.
func Around(all []r2.Box) r2.Box {
	g := Bounds{}
	for _, b := range all {
		g.Point(b.Min, 0)
		g.Point(b.Max, 0)
	}
	return g.Box()
}

// At is a point.
func At(x, y float64) r2.Vec { return r2.Vec{X: x, Y: y} }

// Of is a box by its corners, the lower left first.
func Of(x0, y0, x1, y1 float64) r2.Box { return r2.Box{Min: At(x0, y0), Max: At(x1, y1)} }

// Width is how far a box runs across.
func Width(b r2.Box) float64 { return b.Max.X - b.Min.X }

// Height is how far a box runs up.
func Height(b r2.Box) float64 { return b.Max.Y - b.Min.Y }

// Inset is the box drawn in by dx and dy.
func Inset(b r2.Box, dx, dy float64) r2.Box {
	return Of(b.Min.X+dx, b.Min.Y+dy, b.Max.X-dx, b.Max.Y-dy)
}

// Corners are those of a box, counter-clockwise.
func Corners(b r2.Box) []r2.Vec { return ink.Corners(b.Min, b.Max) }

// Intersection is what two boxes share; ok is false where that is nothing.
func Intersection(a, b r2.Box) (shared r2.Box, ok bool) {
	shared = r2.Box{
		Min: r2.Vec{X: math.Max(a.Min.X, b.Min.X), Y: math.Max(a.Min.Y, b.Min.Y)},
		Max: r2.Vec{X: math.Min(a.Max.X, b.Max.X), Y: math.Min(a.Max.Y, b.Max.Y)},
	}
	return shared, shared.Max.X > shared.Min.X && shared.Max.Y > shared.Min.Y
}

// Interpolate is the point at a share of the way from p to q.
func Interpolate(p, q r2.Vec, share float64) r2.Vec { return r2.Add(p, r2.Scale(share, r2.Sub(q, p))) }

// Middle is the point half way.
func Middle(a, b r2.Vec) r2.Vec { return Interpolate(a, b, 0.5) }

// Contains says whether a point lies in a box or on its edge.
func Contains(b r2.Box, p r2.Vec) bool {
	return p.X >= b.Min.X && p.X <= b.Max.X && p.Y >= b.Min.Y && p.Y <= b.Max.Y
}

// Bearing is the direction of a step in plan, degrees clockwise from up.
func Bearing(d r2.Vec) float64 { return ink.Bearing(r2.Vec{}, d) }

// AllIn says whether all points lie in a box.
func AllIn(points []r2.Vec, b r2.Box) bool {
	return !slices.ContainsFunc(points, func(q r2.Vec) bool { return !Contains(b, q) })
}

// Centre is the middle of a box.
func Centre(b r2.Box) r2.Vec { return Middle(b.Min, b.Max) }

// Distance is how far two boxes are from each other; 0 where they share paper.
func Distance(a, b r2.Box) float64 {
	return math.Hypot(max(0, a.Min.X-b.Max.X, b.Min.X-a.Max.X), max(0, a.Min.Y-b.Max.Y, b.Min.Y-a.Max.Y))
}

// InRing says whether a point lies in a ring, by the number of sides a ray crosses.
func InRing(ring []r2.Vec, p r2.Vec) bool {
	in := false
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(b.X-a.X)*(p.Y-a.Y)/(b.Y-a.Y) {
			in = !in
		}
	}
	return in
}
