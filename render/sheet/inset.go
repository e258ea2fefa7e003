package sheet

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/render/carto"
	"scrimshaw/symbols/ink"
)

// insetHeights are the heights that the second map takes at most, mm: the first with which the sheet
// holds everything.
var insetHeights = [...]float64{58, 44, 32}

// insetRows are the second map and its own key, which stands below it: it reaches other levels than the first, and
// may be on another page.
func (c maps) insetRows() []row {
	maps := c.in.insets()
	f := maps[0]
	g := gatherer{}
	for _, w := range c.in.Setup.Walls {
		g.all(w.Outline, 0)
	}
	if !g.any {
		far := f.Grid.At(f.Grid.NX-1, f.Grid.NY-1)
		g.all([]r2.Vec{f.Grid.Origin, far}, 0)
	}
	for i := range c.in.Setup.People { // someone outside is on the map too
		g.point(c.in.Setup.People[i].At, personRoom)
	}
	extent := g.box()
	scale := math.Min(measure/width(extent), c.insetMost/height(extent))
	high := height(extent) * scale
	return []row{{height: high + 2.4, draw: func(p pad, x, top float64) {
		c.drawInset(p, maps, viewOf(extent, box(x, top-high, x+width(extent)*scale, top), 1000/scale))
	}}, c.keyBar(keyOf(c.in, maps...))}
}

// drawInset draws the second map small, in the tints of the first: walls, tints, contours and where people and
// cameras are, on every level of floor. Its lines have no figures.
func (c maps) drawInset(p pad, maps []*Field, v view) {
	o := carto.Paper(v.scale)
	o.Calm = 0.3 // without a probe the lattice shows at the edges of shadows
	var all []relief
	for _, f := range maps {
		all = append(all, c.traced(f, v, o))
	}
	p = p.of("inset", maps[0].Name+": a small map.")
	c.drawTints(p, v, all)
	for i := range all {
		r := &all[i]
		for _, l := range r.lines {
			p.course(contourWidth(r.levels[l.Index])*0.7, l, v)
		}
		for _, k := range r.cliffs {
			p.course(thin, k.Line, v)
		}
	}
	for _, w := range c.in.Setup.Walls {
		if w.Opening == "" {
			p.outline(hair, p.look.Wall, &p.look.Wall, v.all(w.Outline)...)
		}
	}
	for i := range c.in.Setup.People {
		p.canvas.Circle(ink.Pen{Colour: p.look.Ink, Width: hair, Fill: &p.look.Paper}, v.mm(c.in.Setup.People[i].At), 0.8)
	}
	for i := range c.in.Setup.Cameras {
		m := &c.in.Setup.Cameras[i].Frame
		p.canvas.Polygon(ink.Solid(p.look.Ink), arrowAt(v.flat(m.At), bearing(plain(m.Axis)))...)
	}
}

// arrowAt is a small dart at a point, along a bearing.
func arrowAt(tip r2.Vec, bearing float64) []r2.Vec {
	back := r2.Sub(tip, r2.Scale(2.2, ink.Direction(bearing)))
	across := r2.Scale(0.7, ink.Direction(bearing+90))
	return []r2.Vec{tip, r2.Add(back, across), r2.Sub(back, across)}
}
