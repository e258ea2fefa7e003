package draw

import (
	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/render/sheet/section"
)

// turnedSizes are the dimension lines of a room that stands askew on the sheet: along its own walls, for a box round it
// says nothing that a tape reads. turned is false of one that lies square.
func (c *Drawing) turnedSizes(v layout.View, r *plan.Room, taken []carto.Obstacle) (all []dimension, turned bool) {
	if section.LiesSquare(r) {
		return nil, false
	}
	if !section.IsRectangle(r) {
		return nil, true // its size is in the list of rooms
	}
	for i := range 2 {
		for _, w := range [...]*plan.Wall{&r.Walls[i], &r.Walls[i+2]} {
			if d, ok := c.alongWall(v, w, taken); ok {
				d.room = r.Name
				all = append(all, d)
				taken = append(taken, d.figure(c.Pad), carto.Obstacle{Outline: []r2.Vec{d.from, d.to}})
				break
			}
		}
	}
	return all, true
}

// alongWall is a dimension line outside a wall; ok is false where it has no place there.
func (c *Drawing) alongWall(v layout.View, w *plan.Wall, taken []carto.Obstacle) (dimension, bool) {
	off := r2.Scale(w.Thickness*v.Scale+sizeOff, w.Outward)
	d := dimension{from: r2.Add(v.Paper(w.Left), off), to: r2.Add(v.Paper(w.Right), off), words: c.Length(w.Length())}
	d.angle = carto.Upright(r2.Sub(d.to, d.from))
	panel := box.Inset(v.Panel, 2, 2)
	if !box.Contains(panel, d.from) || !box.Contains(panel, d.to) || !outdoors(c.In.Setup, v, &d) {
		return d, false
	}
	return d, c.Pad.Small().Width(d.words)+3*sizeTick < r2.Norm(r2.Sub(d.to, d.from)) && !meets(d.figure(c.Pad), taken)
}
