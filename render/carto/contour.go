package carto

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/plane"
)

// Options say how true and how calm lines are drawn. Lengths marked mm are on paper and count
// only where Scale is given; the zero value draws the bare contours of the lattice.
type Options struct {
	Measure Measure

	Scale     float64 // mm of paper for one unit of the lattice: 20 for metres at 1:50; 0: no paper
	Calm      float64 // mm: smoothing moves no point of a line further than this
	Tolerance float64 // mm: dropping vertices moves no line further than this
	Speck     float64 // mm: rings less than this across, and clipped corners shorter, are left out

	// Probe reads the field anywhere, in the lattice's units. Where two neighbours differ by more
	// than Jump stops a hard shadow edge is looked for with it, to within Edge units of the lattice;
	// 0 takes half a stop, and a fortieth of the lattice's step (1.25 mm at 5 cm). A shadow narrower
	// than a step may be passed by.
	Probe      func(r2.Vec) float64
	Jump, Edge float64
}

// Paper returns the options of a printed map at a scale in mm of paper for one unit of the
// lattice: smoothing within 0.15 mm and dropping of vertices within 0.015 mm, which a line 0.18 mm
// wide hides, and no speck under 2 mm.
func Paper(scale float64) Options {
	return Options{Scale: scale, Calm: 0.15, Tolerance: 0.015, Speck: 2}
}

// withDefaults fills in what zero stands for, and drops paper lengths where there is no paper.
func (o Options) withDefaults(step float64) Options {
	if o.Jump <= 0 {
		o.Jump = 0.5
	}
	if o.Edge <= 0 {
		o.Edge = step / 40
	}
	if o.Scale <= 0 {
		o.Scale, o.Calm, o.Tolerance, o.Speck = 1, 0, 0, 0
	}
	return o
}

// Line is a contour: an open polyline from rim to rim of the data, or a ring whose last point
// joins its first, which is not repeated. The higher side is on its left.
type Line struct {
	Level  float64
	Index  int // of the level in ascending order
	Closed bool
	Points []r2.Vec
	Hard   []bool // by point: it lies on a hard edge of light; nil where none does
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

// Contours returns the lines of equal value of g at each of the levels, lowest level first and
// within a level in the order of the lattice. The same grid gives the same lines. A lattice
// without a cell has none.
func Contours(g Grid, levels []float64, opts Options) []Line { return Trace(g, levels, opts).Lines }

// Relief is a traced field: its lines, and what the regions between them are made from.
type Relief struct {
	Levels []float64 // ascending, without doubles
	Lines  []Line

	t     *tracer
	chain []chain // by line
	rim   *rim    // of the data; made when first needed
}

// Trace finds the contours of g at each of the levels.
func Trace(g Grid, levels []float64, opts Options) *Relief {
	if !g.usable() {
		return &Relief{Levels: tidyLevels(levels)}
	}
	t := newTracer(g, levels, opts.withDefaults(g.Step))
	r := &Relief{Levels: t.levels, t: t}
	for k, segments := range t.march() {
		for _, c := range t.link(segments) {
			if l := t.draw(c, k); !t.speck(l) {
				r.Lines = append(r.Lines, l)
				r.chain = append(r.chain, c)
			}
		}
	}
	r.dropClippings()
	return r
}

// draw turns a chain into a line: crossings, hard edges made sharp, calmed, thinned, eased.
func (t *tracer) draw(c chain, k int) Line {
	l := Line{Level: t.levels[k], Index: k, Closed: c.closed, Points: make([]r2.Vec, 0, len(c.edges))}
	for _, e := range c.edges {
		p, hard := t.crossing(e, k)
		l.add(p, hard)
	}
	if !c.closed && len(l.Points) == 1 { // it cuts a corner of the data off at its very tip
		return Line{Level: l.Level, Index: k, Points: []r2.Vec{l.Points[0], l.Points[0]}}
	}
	if t.hard != nil {
		l = t.sharpen(l, k)
	}
	if calm := t.opts.Calm / t.opts.Scale; calm > 0 {
		smooth(&l, calm)
	}
	if tolerance := t.opts.Tolerance / t.opts.Scale; tolerance > 0 {
		l = thin(l, tolerance, t.opts.Edge)
		l = ease(l, t.opts.Scale)
	}
	return l
}

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

// speck says whether a ring is too small to be drawn. One beside a hole in the data stays: the
// bands on both sides of it end at the hole.
func (t *tracer) speck(l Line) bool {
	if !l.Closed || len(l.Points) < 3 {
		return l.Closed
	}
	b := plane.Bounds(l.Points)
	if max(b.Max.X-b.Min.X, b.Max.Y-b.Min.Y) >= t.opts.Speck/t.opts.Scale {
		return false
	}
	low, high := r2.Scale(1/t.g.Step, r2.Sub(b.Min, t.g.Origin)), r2.Scale(1/t.g.Step, r2.Sub(b.Max, t.g.Origin))
	for j := int(low.Y); j <= int(math.Ceil(high.Y)); j++ {
		for i := int(low.X); i <= int(math.Ceil(high.X)); i++ {
			if t.g.Masked(i, j) {
				return false
			}
		}
	}
	return true
}
