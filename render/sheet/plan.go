package sheet

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/render/carto"
	"scrimshaw/symbols/ink"
)

// planDrawing draws a set-up to scale.
type planDrawing struct{ *drawing }

// drawPlan draws the set-up to scale: what stands first, then what is lettered beside it, and last
// the contours, whose figures keep clear of all of that. Layers put it in order. Corners of
// the panel may be taken by text.
func (c planDrawing) drawPlan(p pad, v view, corners []r2.Box) {
	v.covered = corners
	throws, clear := c.arrange(p, v)
	reliefs := maps{c.drawing}.reliefs(v)
	clear = append(clear, roomSizes{c.drawing}.drawRoomSizes(p, v, slices.Concat(clear, beams{c.drawing}.rays(v)))...)
	clear = slices.Concat(clear, names{c.drawing}.nameThings(p, v, slices.Concat(clear, throwLines(throws)), slices.Concat(contourLines(reliefs), beams{c.drawing}.rays(v))))

	clear = append(clear, beams{c.drawing}.numberBeams(p, v, slices.Concat(clear, throwLines(throws)))...)
	clear = slices.Concat(clear, c.furnitureObstacles(), beams{c.drawing}.rays(v), throwLines(throws))
	maps{c.drawing}.drawTints(p.on(ink.Tint), v, reliefs)
	for i := range reliefs {
		maps{c.drawing}.drawLines(p.on(ink.Contours), v, &reliefs[i], clear)
	}
}

// arrange draws what stands and the labels beside it, and returns the throws and what further
// lettering keeps clear of.
func (c planDrawing) arrange(p pad, v view) (throws []throw, clear []carto.Obstacle) {
	things{c.drawing}.drawWalls(p, v)
	openings, swings := things{c.drawing}.drawOpenings(p, v)
	things{c.drawing}.drawFurniture(p, v)
	beams{c.drawing}.drawViews(p, v)
	beams{c.drawing}.drawBeams(p, v)
	things, rests := things{c.drawing}.drawThings(p, v)
	things = append(things, readings{c.drawing}.drawReadings(p, v)...)
	things = slices.DeleteFunc(things, func(t placeable) bool { return !contains(v.panel, t.label(p).Anchor) })

	standing := slices.Concat(wallObstacles(c.in.Setup, v), openings, c.peopleObstacles(v))
	for _, b := range v.covered {
		standing = append(standing, hard(inset(b, -2, -2)))
	}
	throws = c.throws(v, slices.Concat(standing, bodies(p, things)))
	for i := range throws {
		throws[i].draw(p)
	}
	clear = slices.Concat(standing, throwObstacles(p, throws))
	clear = append(clear, overprints{c.drawing}.overprint(p, v, slices.Concat(clear, bodies(p, things), c.standObstacles(), swings),
		slices.Concat(beams{c.drawing}.rays(v), throwLines(throws), c.furnitureObstacles(), floorOutlines(c.in.Setup, v)))...)
	spared := roomSizes{c.drawing}.spared(v, slices.Concat(clear, bodies(p, things), beams{c.drawing}.rays(v)))
	placed := c.place(p, v, things, slices.Concat(clear, swings, rests, c.softLines(v, throws), spared))
	return throws, slices.Concat(clear, bodies(p, things), placed)
}

// place finds places for all labels, draws them, and returns the paper they take.
func (c *drawing) place(p pad, v view, things []placeable, obstacles []carto.Obstacle) []carto.Obstacle {
	var labels []carto.Label
	for _, t := range things {
		labels = append(labels, t.label(p))
	}
	var taken []carto.Obstacle
	o := carto.PlaceOptions{Area: inset(v.panel, 2, 2), Gap: 1.2, Obstacles: obstacles}
	if c.terse {
		o.Rounds = stripRounds
	}
	for i, at := range carto.Place(labels, o) {
		things[i].draw(p, at)
		c.rung(at.Rung)
		if !things[i].tells(at) {
			c.reduced++
		}
		if !things[i].full(at) {
			c.shortened++
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
