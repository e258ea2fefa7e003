package sheet

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/render/carto"
	"scrimshaw/symbols/ink"
)

// matchDash is a long dash with two short ones (ISO 128-2 no. 09), mm.
var matchDash = []float64{9, 1.4, 2, 1.4, 2, 1.4}

// match draws what ties the parts of a plan to each other.
type match struct{ *drawing }

// keyRows are a small plan of the rooms with the parts that it is split into, the one at hand shaded.
func (c match) keyRows(t *tiles) []row {
	return []row{{height: keyHigh + 1, draw: func(p pad, x, top float64) { c.drawKey(p, t, x, top) }}}
}

func (c match) drawKey(p pad, t *tiles, x, top float64) {
	g := gatherer{}
	for i := range t.parts() {
		b := t.part(i)
		g.all([]r2.Vec{b.Min, b.Max}, 0)
	}
	all := g.box()
	scale := math.Min(measure/width(all), keyHigh/height(all))
	v := viewOf(all, box(x, top-height(all)*scale, x+width(all)*scale, top), 1000/scale)
	shade := p.look.Ramp.Tints(3)[1]
	p.rect(onPaper(v, t.own(c.part)), 0, p.look.Quiet, &shade)
	for i := range c.in.Setup.Walls {
		if w := &c.in.Setup.Walls[i]; w.Opening == "" {
			p.outline(0, p.look.Wall, &p.look.Wall, v.all(w.Outline)...)
		}
	}
	st := p.small().strong()
	for i := range t.parts() {
		b := onPaper(v, t.own(i))
		p.rect(b, hair, p.look.Ink, nil)
		p.turned(at((b.Min.X+b.Max.X)/2, (b.Min.Y+b.Max.Y-st.cap)/2), fmt.Sprint(i+1), st, ink.Centre, 0, &p.look.Paper)
	}
}

// matchLines draws the lines at which a part goes on on another, and says which.
func (c match) matchLines(p pad, l *layout, v view, i int) {
	t, b := l.tiles, onPaper(v, l.tiles.own(i))
	x, y := i%t.nx, i/t.nx
	if x > 0 {
		c.matchLine(p, at(b.Min.X, l.plan.Min.Y), at(b.Min.X, l.plan.Max.Y), i-1)
	}
	if x < t.nx-1 {
		c.matchLine(p, at(b.Max.X, l.plan.Min.Y), at(b.Max.X, l.plan.Max.Y), i+1)
	}
	if y > 0 {
		c.matchLine(p, at(l.plan.Min.X, b.Max.Y), at(l.plan.Max.X, b.Max.Y), i-t.nx)
	}
	if y < t.ny-1 {
		c.matchLine(p, at(l.plan.Min.X, b.Min.Y), at(l.plan.Max.X, b.Min.Y), i+t.nx)
	}
}

// matchLine draws one line, lettered where that is clear of other lettering.
func (c match) matchLine(p pad, a, b r2.Vec, to int) {
	p.dashed(thick, p.look.Ink, matchDash, a, b)
	var taken []carto.Obstacle
	for i := range p.page.Items {
		if t := p.page.Items[i].Text; t != nil {
			q := t.Corners(p.face)
			taken = append(taken, carto.Obstacle{Outline: q[:]})
		}
	}
	st, words := p.small().strong(), fmt.Sprintf("match line: part %d", to+1)
	along := r2.Sub(b, a)
	angle := carto.Upright(along)
	off := r2.Scale(st.cap/2+1.2, ink.Direction(-angle))
	for _, share := range [...]float64{0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9} {
		centre := r2.Add(mix(a, b, share), off)
		if o := (carto.Obstacle{Outline: turnedBox(centre, st.boxOf(words), angle)}); !meets(o, taken) {
			p.turned(underMiddle(centre, st.cap, angle), words, st, ink.Centre, angle, &p.look.Paper)
			return
		}
	}
}
