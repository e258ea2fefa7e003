package carto

import "gonum.org/v1/gonum/spatial/r2"

// Line is a contour: an open polyline from rim to rim of the data, or a ring whose last point
// joins its first, which is not repeated. The higher side is on its left.
type Line struct {
	Level  float64 // lx, or in whatever unit the field has
	Index  int     // of the level in ascending order
	Closed bool
	Points []r2.Vec // in units of the lattice, or mm once it is on paper
	Hard   []bool   // by point: it lies on a hard edge of light; nil where none does
}

// Length returns the length of the line in its own units.
func (l Line) Length() float64 {
	d := 0.0
	for i := range l.spans() {
		a, b := l.span(i)
		d += r2.Norm(r2.Sub(b, a))
	}
	return d
}

// spans returns how many straight pieces the line has.
func (l Line) spans() int {
	if l.Closed {
		return len(l.Points)
	}
	return max(len(l.Points)-1, 0)
}

// span returns the ends of piece i.
func (l Line) span(i int) (a, b r2.Vec) { return l.Points[i], l.Points[(i+1)%len(l.Points)] }

// add appends a point, unless it is the last one again: a level met exactly at a lattice point is
// crossed by several of its edges.
func (l *Line) add(p r2.Vec, hard bool) {
	n := len(l.Points)
	if n > 0 && l.Points[n-1] == p {
		return
	}
	if hard && l.Hard == nil {
		l.Hard = make([]bool, n, cap(l.Points))
	}
	l.Points = append(l.Points, p)
	if l.Hard != nil {
		l.Hard = append(l.Hard, hard)
	}
}

// isHard says whether point i lies on a hard edge of light.
func (l Line) isHard(i int) bool { return l.Hard != nil && l.Hard[i] }

// OnPaper returns the lines with every point taken through at. A mapping that mirrors would put
// the higher side on the right.
func OnPaper(lines []Line, at func(r2.Vec) r2.Vec) []Line {
	out := make([]Line, len(lines))
	for i, l := range lines {
		l.Points = through(l.Points, at)
		out[i] = l
	}
	return out
}

func through(points []r2.Vec, at func(r2.Vec) r2.Vec) []r2.Vec {
	out := make([]r2.Vec, len(points))
	for i, p := range points {
		out[i] = at(p)
	}
	return out
}
