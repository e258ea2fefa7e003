// Package raster scan-converts convex polygons: it finds the points of a lattice that lie in one. The points have whole
// coordinates. There is one rule for all polygons: a point belongs to a polygon from its left edge up to, not including, its right edge,
// and likewise in rows, so that two polygons that share an edge share no point.
package raster

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
)

// Spans are the points that a polygon covers: in row j those from Left[j] up to, not including, Right[j].
// They keep their memory from one polygon and one lattice to the next.
type Spans struct {
	Left, Right []int32
	width       int32
}

// Resize makes room for polygons on a lattice of nu by nv points.
func (s *Spans) Resize(nu, nv int) {
	s.Left, s.Right = slices.Grow(s.Left[:0], nv)[:nv], slices.Grow(s.Right[:0], nv)[:nv]
	s.width = int32(nu)
}

// Scan finds the spans of a convex polygon in the rows from up to to, and returns the first of them and the
// one after the last. What Left and Right hold for other rows has no meaning. Any band of rows gets the
// same spans.
func (s *Spans) Scan(outline []r2.Vec, from, to int) (first, last int) {
	if len(outline) < 3 {
		return 0, 0
	}
	o := outline[0]
	low, high, area := o.Y, o.Y, 0.0
	a := outline[len(outline)-1]
	for _, c := range outline {
		low, high = min(low, c.Y), max(high, c.Y)
		area += (a.X-o.X)*(c.Y-o.Y) - (a.Y-o.Y)*(c.X-o.X)
		a = c
	}
	first, last = max(Ceil(low, to), from), Ceil(high, to)
	if first >= last || area == 0 {
		return 0, 0
	}
	up, down := s.Right, s.Left
	if area < 0 {
		up, down = s.Left, s.Right
	}
	a = outline[len(outline)-1]
	for _, c := range outline {
		switch {
		case c.Y > a.Y:
			s.edge(up, a, c, first, last)
		case c.Y < a.Y:
			s.edge(down, c, a, first, last)
		}
		a = c
	}
	return first, last
}

// Edges are followed in fixed point: 32 bits for the whole part, 32 behind it. reach is how far from the
// lattice that goes.
const (
	point = 32
	one   = 1 << point
	reach = 1 << 30
)

// edge notes where the edge from a up to c crosses the rows from first up to last.
func (s *Spans) edge(at []int32, a, c r2.Vec, first, last int) {
	begin := Ceil(a.Y, last)
	first, last = max(first, begin), Ceil(c.Y, last)
	if first >= last {
		return
	}
	slope := (c.X - a.X) / (c.Y - a.Y)
	x := a.X + (float64(begin)-a.Y)*slope
	if !(math.Abs(x) < reach && math.Abs(c.X) < reach && math.Abs(slope) < reach) {
		for j := first; j < last; j++ {
			at[j] = int32(Ceil(a.X+(float64(j)-a.Y)*slope, int(s.width)))
		}
		return
	}
	step := int64(slope * one)
	fixed := int64(x*one) + int64(first-begin)*step + (one - 1)
	width := int64(s.width)
	row := at[first:last]
	for j := range row {
		row[j] = int32(min(max(fixed>>point, 0), width))
		fixed += step
	}
}

// Ceil is the least whole number from x on, held to 0..limit; 0 for what is no number.
func Ceil(x float64, limit int) int {
	switch {
	case !(x > 0):
		return 0
	case x >= float64(limit):
		return limit
	}
	n := int(x)
	if float64(n) < x {
		n++
	}
	return n
}

// Hull puts the corners of the convex hull of some points, which it sorts, behind those of dst, in order round it.
func Hull(dst, points []r2.Vec) []r2.Vec {
	slices.SortFunc(points, func(a, b r2.Vec) int { return cmp.Or(cmp.Compare(a.X, b.X), cmp.Compare(a.Y, b.Y)) })
	first := len(dst)
	for range 2 { // below from left to right, then above from right to left
		for _, p := range points {
			for n := len(dst); n >= first+2 && r2.Cross(r2.Sub(dst[n-1], dst[n-2]), r2.Sub(p, dst[n-2])) <= 0; n = len(dst) {
				dst = dst[:n-1]
			}
			dst = append(dst, p)
		}
		if len(dst) > first {
			dst = dst[:len(dst)-1] // the other half begins with it
		}
		first = len(dst)
		slices.Reverse(points)
	}
	return dst
}
