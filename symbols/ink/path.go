package ink

import (
	"gonum.org/v1/gonum/spatial/r2"
)

// Path is a run of segments: what an Item's Path holds. Filled paths follow the non-zero rule, so
// a hole is a ring that runs against the one round it. Its methods append, as append does.
type Path []Segment

// points is the number of points of a segment that mean something.
func (s Segment) points() int {
	switch s.Op {
	case Move, Line:
		return 1
	case Curve:
		return 3
	}
	return 0
}

// MoveTo starts a new ring or line at p.
func (p Path) MoveTo(to r2.Vec) Path { return append(p, Segment{Op: Move, P: [3]r2.Vec{to}}) }

// LineTo draws a straight line.
func (p Path) LineTo(to r2.Vec) Path { return append(p, Segment{Op: Line, P: [3]r2.Vec{to}}) }

// CurveTo draws a cubic Bezier with control points c and d.
func (p Path) CurveTo(c, d, to r2.Vec) Path {
	return append(p, Segment{Op: Curve, P: [3]r2.Vec{c, d, to}})
}

// QuadTo draws the quadratic Bezier from, where the pen is, by c, as a cubic that is equal to it.
func (p Path) QuadTo(from, c, to r2.Vec) Path {
	third := func(a r2.Vec) r2.Vec { return r2.Add(r2.Scale(1./3, a), r2.Scale(2./3, c)) }
	return p.CurveTo(third(from), third(to), to)
}

// Close draws a straight line to where the ring started.
func (p Path) Close() Path { return append(p, Segment{Op: Close}) }

// Polyline is an open line through points.
func Polyline(points ...r2.Vec) Path {
	p := make(Path, 0, len(points)+1)
	for i, q := range points {
		if i == 0 {
			p = p.MoveTo(q)
		} else {
			p = p.LineTo(q)
		}
	}
	return p
}

// Polygon is a closed ring through points.
func Polygon(points ...r2.Vec) Path {
	if len(points) == 0 {
		return nil
	}
	return Polyline(points...).Close()
}

// Polygons is several rings in one path.
func Polygons(rings ...[]r2.Vec) Path {
	var p Path
	for _, ring := range rings {
		p = append(p, Polygon(ring...)...)
	}
	return p
}

// Rect is the box between two corners, counter-clockwise from its lower left.
func Rect(a, b r2.Vec) Path { return Polygon(Corners(a, b)...) }

// Corners are those of the box between two of them, counter-clockwise from the lower left.
func Corners(a, b r2.Vec) []r2.Vec {
	lo := r2.Vec{X: min(a.X, b.X), Y: min(a.Y, b.Y)}
	hi := r2.Vec{X: max(a.X, b.X), Y: max(a.Y, b.Y)}
	return []r2.Vec{lo, {X: hi.X, Y: lo.Y}, hi, {X: lo.X, Y: hi.Y}}
}
