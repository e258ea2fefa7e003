package draw

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/meter"
	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols/ink"
)

// readingsOn are those of the scene's meters that are taken of a wall.
func (c *Drawing) readingsOn(f WallFace) (all []*meter.Reading) {
	for i := range c.In.Readings {
		r := &c.In.Readings[i]
		if r.Person == "" && f.metersAt(targetOf(c.In.Setup, r)) {
			all = append(all, r)
		}
	}
	return all
}

// Draw draws the wall: the map of light on it, its openings, what stands before it, its
// size, and the readings that are taken of it.
func (c Wall) Draw(p Pad, v layout.View, f WallFace, corners []r2.Box) {
	var clear []carto.Obstacle
	for _, b := range corners {
		clear = append(clear, hard(box.Inset(b, -2, -2)))
	}
	clear = append(clear, c.drawSection(p.On(ink.Walls), v, f)...)
	notes, edges := c.drawThings(p, v, f)
	clear = append(clear, edges...)
	clear = append(clear, c.drawHoles(p, v, f, clear)...)
	clear = append(clear, c.drawBefore(p, v, f, clear)...)
	clear = append(clear, c.drawRims(p, v, f)...)
	clear = append(clear, c.drawRevisions(p, v, f)...)
	sizes, side := c.drawSizes(p.On(ink.Throws), v, f)
	clear = append(append(clear, sizes...), c.drawHeights(p.On(ink.Notes), v, f, side)...)
	notes = append(notes, maps(c).brightest(p, v)...)
	clear = append(clear, overprints(c).overprint(p, v, slices.Concat(clear, bodies(p, notes)), []carto.Obstacle{hard(f.sized(v))})...)
	for _, r := range c.readingsOn(f) {
		notes = append(notes, readings(c).meterNote(p, v.Paper(f.at(targetOf(c.In.Setup, r))), r))
	}
	clear = append(clear, c.place(p, v, notes, clear)...)
	reliefs := maps(c).reliefs(v)
	maps(c).drawTints(p.On(ink.Tint), v, reliefs)
	lines := reliefs
	if section.IsOfColours(c.In) {
		lines = maps(c).hueReliefs(v)
	}
	maps(c).drawAllLines(p.On(ink.Contours), v, lines, clear)
}
