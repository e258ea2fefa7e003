package carto

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/plane"
)

// Relief is a traced field: its lines, and what the regions between them are made from.
type Relief struct {
	Levels []float64 // ascending, without doubles; lx, or in whatever unit the field has
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
	if calm := t.opts.Smoothing / t.opts.Scale; calm > 0 {
		smooth(&l, calm)
	}
	if tolerance := t.opts.Tolerance / t.opts.Scale; tolerance > 0 {
		l = thin(l, tolerance, t.opts.Edge)
		l = roundCorners(l, t.opts.Scale)
	}
	return l
}

// sliver is the least area of a ring, in squares of the least size of one: a strip of light that is narrower than the
// lattice would come out as a row of beads.
const sliver = 1.5

// speck says whether a ring is too small to be drawn. One beside a hole in the data stays: the
// bands on both sides of it end at the hole.
func (t *tracer) speck(l Line) bool {
	if !l.Closed || len(l.Points) < 3 {
		return l.Closed
	}
	b, size := plane.Bounds(l.Points), t.opts.Speck/t.opts.Scale
	if max(b.Max.X-b.Min.X, b.Max.Y-b.Min.Y) >= size && math.Abs(plane.Area(l.Points)) >= sliver*size*size {
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

// dropClippings leaves out contours that merely clip a corner of the data off, shorter than
// Options.Speck, together with the corner's own band.
func (r *Relief) dropClippings() {
	if r.t.opts.Speck <= 0 {
		return
	}
	r.makeRim()
	for again := true; again; {
		again = false
		kept := 0
		for i, l := range r.Lines {
			if !l.Closed && r.clipping(i) {
				again = true
				continue
			}
			r.Lines[kept], r.chain[kept] = l, r.chain[i]
			kept++
		}
		r.Lines, r.chain = r.Lines[:kept], r.chain[:kept]
	}
}

// clipping says whether line i is one, and if so joins the rim behind it.
func (r *Relief) clipping(i int) bool {
	size := r.t.opts.Speck / r.t.opts.Scale
	l, edges := r.Lines[i], r.chain[i].edges
	if l.Length() >= size {
		return false
	}
	head, tail := r.rim.at[place{edges[0], l.Index}], r.rim.at[place{edges[len(edges)-1], l.Index}]
	for _, ends := range [...][2]int{{head, tail}, {tail, head}} {
		between := r.rim.arcs[r.rim.nodes[ends[0]].out]
		pocket := Line{Points: append(between.points, r.rim.nodePoint(ends[1]))}
		if between.end == ends[1] && pocket.Length() < 3*size {
			r.rim.join(ends[0], ends[1])
			return true
		}
	}
	return false
}

func (r *Relief) makeRim() {
	if r.rim == nil {
		r.rim = newRim(r.t)
	}
}
