// Package carto draws terrain of light: contours, tints, cliff lines and the placing of their
// lettering and of labels, from a scalar field on a regular lattice. It knows no scene and no
// paper: what is drawn at a size takes the scale as a number.
//
// The usual way through is
//
//	relief := carto.Trace(carto.Denoise(grid, 0.03), levels, carto.Paper(1000/50.0))
//	relief.Steps()                                 // tints
//	lines := carto.OnPaper(relief.Lines, toPaper)  // millimetres
//	lines, cliffs := carto.Cliffs(lines, carto.CliffOptions{})
//	letters := carto.Letter(lines, ...)
//	lines = carto.Cut(lines, letters)
package carto

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// Grid is a scalar field in plan: point (i, j) lies at Origin + Step (i, j), i fastest. A set bit
// of Mask (j*NX+i) is a point without data; so is a value that is not a number.
type Grid struct {
	Origin r2.Vec  // m, or in whatever unit the lattice has
	Step   float64 // m, or in whatever unit the lattice has
	NX, NY int
	Value  []float32 // lx, or in whatever unit the field has
	Mask   []uint64
}

// Masked says whether point (i, j) lacks data. Points outside the lattice do.
func (g Grid) Masked(i, j int) bool {
	if i < 0 || j < 0 || i >= g.NX || j >= g.NY {
		return true
	}
	return g.masked(j*g.NX + i)
}

// masked is Masked by index.
func (g Grid) masked(n int) bool {
	if w := n >> 6; w < len(g.Mask) && g.Mask[w]>>(n&63)&1 != 0 {
		return true
	}
	v := g.Value[n]
	return v != v
}

// At returns the place of point (i, j).
func (g Grid) At(i, j int) r2.Vec {
	return r2.Vec{X: g.Origin.X + g.Step*float64(i), Y: g.Origin.Y + g.Step*float64(j)}
}

// place is At by index.
func (g Grid) place(n int) r2.Vec { return g.At(n%g.NX, n/g.NX) }

// usable says whether the lattice has at least one cell and a value for each point.
func (g Grid) usable() bool {
	return g.NX >= 2 && g.NY >= 2 && g.Step > 0 && len(g.Value) >= g.NX*g.NY
}

// Measure says in which measure the field is taken to be straight between two points of the
// lattice.
type Measure uint8

// The measures.
//
// Illuminance falls as 1/d². Along a ray of light the contour of level L that is interpolated
// linearly between points h apart is out by up to (h²/8)·(3/d), one that is interpolated in the
// logarithm by (h²/8)·(1/d): a third of it, and always to the same side. A stop is a step in the
// logarithm too, so that lines one a stop come out evenly spaced where the light falls evenly.
const (
	Logarithmic Measure = iota // of light; values are not negative
	Linear                     // of anything else: stops over or under, heights
)

// ruler converts values to the measure.
type ruler struct {
	linear bool
	dark   float64 // added before the logarithm, so that no light has a finite place
}

// newRuler puts the dark end of a logarithmic ruler six stops under the lowest positive level.
func newRuler(m Measure, levels []float64) ruler {
	for _, l := range levels {
		if l > 0 {
			return ruler{linear: m == Linear, dark: l / 64}
		}
	}
	return ruler{linear: true}
}

// of returns v in the measure; logarithms are natural.
func (r ruler) of(v float64) float64 {
	if r.linear {
		return v
	}
	return math.Log(math.Max(v, 0) + r.dark)
}

// stops returns by how many stops a and b differ; for a linear ruler the measure is counted as
// stops.
func (r ruler) stops(a, b float64) float64 {
	d := math.Abs(r.of(a) - r.of(b))
	if r.linear {
		return d
	}
	return d / math.Ln2
}
