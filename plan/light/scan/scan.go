// Package scan holds the one rule by which polygons are laid on a lattice, whose points have whole
// coordinates: a point belongs to a polygon from its left edge up to, not including, its right edge,
// and likewise in rows, so that two polygons that share an edge share no point.
package scan

import "gonum.org/v1/gonum/spatial/r2"

// Edge notes where the edge from a up to c crosses the rows from first up to last.
func Edge(at []float64, a, c r2.Vec, first, last int) {
	first, last = max(first, Ceil(a.Y, last)), Ceil(c.Y, last)
	slope := (c.X - a.X) / (c.Y - a.Y)
	for j := first; j < last; j++ {
		at[j] = a.X + (float64(j)-a.Y)*slope
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
