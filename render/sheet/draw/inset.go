package draw

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols/ink"
)

// insetRows are the second map and its own key, which stands below it: it reaches other levels than the first, and
// may be on another page.
func (c maps) insetRows() []Row {
	maps := c.In.SmallMaps()
	f := maps[0]
	g := box.Bounds{}
	for _, w := range c.In.Setup.Walls {
		g.All(w.Outline, 0)
	}
	if !g.Any {
		far := f.Grid.At(f.Grid.NX-1, f.Grid.NY-1)
		g.All([]r2.Vec{f.Grid.Origin, far}, 0)
	}
	for i := range c.In.Setup.People { // someone outside is on the map too
		g.Point(c.In.Setup.People[i].At, personRoom)
	}
	extent := g.Box()
	scale := math.Min(layout.Measure/box.Width(extent), c.InsetMost/box.Height(extent))
	high := box.Height(extent) * scale
	return []Row{{Height: high + 2.4, Draw: func(p Pad, x, top float64) {
		c.drawInset(p, maps, layout.ViewOf(extent, box.Of(x, top-high, x+box.Width(extent)*scale, top), 1000/scale))
	}}, c.keyBar(section.KeyOf(c.In, maps...))}
}

// drawInset draws the second map small, in the tints of the first: walls, tints, contours and where people and
// cameras are, on every level of floor. Its lines have no figures.
func (c maps) drawInset(p Pad, maps []*section.Field, v layout.View) {
	o := carto.Paper(v.Scale)
	o.Smoothing = 0.3 // without a probe the lattice shows at the edges of shadows
	var all []relief
	for _, f := range maps {
		all = append(all, c.traced(f, v, o))
	}
	p = p.of("inset", maps[0].Name+": a small map.")
	c.drawTints(p, v, all)
	for i := range all {
		r := &all[i]
		for _, l := range r.lines {
			pen := p.contourPen(r.marks[l.Index])
			pen.Width = math.Max(pen.Width*0.7, p.Look.Least)
			p.course(pen, l, v)
		}
		for _, k := range r.cliffs {
			p.course(ink.Pen{Colour: p.Look.Contour, Width: Thin}, k.Line, v)
		}
	}
	p.cutAway(Hair, wallPieces(c.In.Setup, v)...)
	for i := range c.In.Setup.People {
		p.canvas.Circle(ink.Pen{Colour: p.Look.Ink, Width: Hair, Fill: &p.Look.Paper}, v.Paper(c.In.Setup.People[i].At), 0.8)
	}
	for i := range c.In.Setup.Cameras {
		m := &c.In.Setup.Cameras[i].Frame
		p.canvas.Polygon(ink.Solid(p.Look.Ink), arrowAt(v.Flat(m.At), box.Bearing(plan.InPlan(m.Axis)))...)
	}
}

// arrowAt is a small dart at a point, along a bearing.
func arrowAt(tip r2.Vec, bearing float64) []r2.Vec {
	back := r2.Sub(tip, r2.Scale(2.2, ink.Direction(bearing)))
	across := r2.Scale(0.7, ink.Direction(bearing+90))
	return []r2.Vec{tip, r2.Add(back, across), r2.Sub(back, across)}
}
