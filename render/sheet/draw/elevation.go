package draw

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols/ink"
)

// Draw draws the wall: the map of light on it, its openings, what stands before it, its
// size, and the readings that are taken of it.
func (c Wall) Draw(p Pad, v layout.View, f WallFace, corners []r2.Box) {
	var clear []carto.Obstacle
	for _, b := range corners {
		clear = append(clear, hard(box.Inset(b, -2, -2)))
	}
	clear = append(clear, c.drawSection(p.On(ink.Walls), v, f)...)
	clear = append(clear, c.drawHoles(p, v, f)...)
	clear = append(clear, c.drawBefore(p, v, f, clear)...)
	clear = append(clear, c.drawSizes(p.On(ink.Throws), v, f)...)
	notes := maps(c).brightest(p, v)
	clear = append(clear, overprints(c).overprint(p, v, slices.Concat(clear, bodies(p, notes)), []carto.Obstacle{hard(f.sized(v))})...)
	for i := range c.In.Readings {
		r := &c.In.Readings[i]
		where := f.at(targetOf(c.In.Setup, r))
		if r.Person == "" && math.Abs(f.off(plan.InPlan(targetOf(c.In.Setup, r)))) < 5*onFace && box.Contains(f.box(), where) {
			notes = append(notes, readings(c).meterNote(p, v.Paper(where), r))
		}
	}
	clear = append(clear, bodies(p, notes)...)
	clear = append(clear, c.place(p, v, notes, clear)...)
	reliefs := maps(c).reliefs(v)
	maps(c).drawTints(p.On(ink.Tint), v, reliefs)
	lines := reliefs
	if section.IsOfColours(c.In) {
		lines = maps(c).hueReliefs(v)
	}
	maps(c).drawAllLines(p.On(ink.Contours), v, lines, clear)
}
