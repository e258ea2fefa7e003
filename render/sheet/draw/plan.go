package draw

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/symbols/ink"
)

// Plan draws a set-up to scale.
type Plan struct{ *Drawing }

// Draw draws the set-up to scale: what stands first, then what is lettered beside it, and last
// the contours, whose figures keep clear of all of that. Layers put it in order. Corners of
// the panel may be taken by text.
func (c Plan) Draw(p Pad, v layout.View, corners []r2.Box) {
	v.Covered = corners
	throws, clear := c.Arrange(p, v)
	reliefs := maps{c.Drawing}.reliefs(v)
	clear = append(clear, roomSizes{c.Drawing}.drawRoomSizes(p, v, slices.Concat(clear, beams{c.Drawing}.rays(v)))...)
	clear = slices.Concat(clear, names{c.Drawing}.nameThings(p, v, slices.Concat(clear, throwLines(throws)), slices.Concat(contourLines(reliefs), beams{c.Drawing}.rays(v))))

	clear = append(clear, beams{c.Drawing}.numberBeams(p, v, slices.Concat(clear, throwLines(throws)))...)
	clear = slices.Concat(clear, c.furnitureObstacles(), beams{c.Drawing}.rays(v), throwLines(throws))
	maps{c.Drawing}.drawTints(p.On(ink.Tint), v, reliefs)
	for i := range reliefs {
		maps{c.Drawing}.drawLines(p.On(ink.Contours), v, &reliefs[i], clear)
	}
}

// Arrange draws what stands and the labels beside it, and returns the throws and what further
// lettering keeps clear of.
func (c Plan) Arrange(p Pad, v layout.View) (throws []throw, clear []carto.Obstacle) {
	things{c.Drawing}.drawWalls(p, v)
	openings, swings := things{c.Drawing}.drawOpenings(p, v)
	things{c.Drawing}.drawFurniture(p, v)
	beams{c.Drawing}.drawViews(p, v)
	beams{c.Drawing}.drawBeams(p, v)
	things, rests := things{c.Drawing}.drawThings(p, v)
	things = append(things, readings{c.Drawing}.drawReadings(p, v)...)
	things = slices.DeleteFunc(things, func(t placeable) bool { return !box.Contains(v.Panel, t.label(p).Anchor) })

	standing := slices.Concat(wallObstacles(c.In.Setup, v), openings, c.peopleObstacles(v))
	for _, b := range v.Covered {
		standing = append(standing, hard(box.Inset(b, -2, -2)))
	}
	throws = c.throws(v, slices.Concat(standing, bodies(p, things)))
	for i := range throws {
		throws[i].draw(p)
	}
	clear = slices.Concat(standing, throwObstacles(p, throws))
	clear = append(clear, overprints{c.Drawing}.overprint(p, v, slices.Concat(clear, bodies(p, things), c.standObstacles(), swings),
		slices.Concat(beams{c.Drawing}.rays(v), throwLines(throws), c.furnitureObstacles(), floorOutlines(c.In.Setup, v)))...)
	spared := roomSizes{c.Drawing}.spared(v, slices.Concat(clear, bodies(p, things), beams{c.Drawing}.rays(v)))
	placed := c.place(p, v, things, slices.Concat(clear, swings, rests, c.softLines(v, throws), spared))
	return throws, slices.Concat(clear, bodies(p, things), placed)
}

// place finds places for all labels, draws them, and returns the paper they take.
func (c *Drawing) place(p Pad, v layout.View, things []placeable, obstacles []carto.Obstacle) []carto.Obstacle {
	var labels []carto.Label
	for _, t := range things {
		labels = append(labels, t.label(p))
	}
	var taken []carto.Obstacle
	o := carto.PlaceOptions{Area: box.Inset(v.Panel, 2, 2), Gap: 1.2, Obstacles: obstacles}
	if c.Terse {
		o.Rounds = stripRounds
	}
	for i, at := range carto.Place(labels, o) {
		things[i].draw(p, at)
		c.rung(at.Rung)
		if !things[i].tells(at) {
			c.Reduced++
		}
		if !things[i].full(at) {
			c.Shortened++
		}
		if at.On {
			taken = append(taken, hard(at.Box))
		}
		if at.Leads() {
			taken = append(taken, carto.Obstacle{Outline: at.Leader[:]})
		}
	}
	return taken
}

// stripRounds is how long labels look for places on the small plan of a strip, in rounds a label.
const stripRounds = 600
