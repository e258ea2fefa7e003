// Package carto draws terrain of light: contours, tints, cliff lines and the placing of their
// lettering, from a scalar field on a regular lattice. It knows no scene and no paper.
package carto

import "gonum.org/v1/gonum/spatial/r2"

// Grid is a scalar field in plan: point (i, j) lies at Origin + Step (i, j), i fastest. A set bit
// of Mask (j*NX+i) is a point without data.
type Grid struct {
	Origin r2.Vec
	Step   float64
	NX, NY int
	Value  []float32
	Mask   []uint64
}
