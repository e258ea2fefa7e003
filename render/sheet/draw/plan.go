package draw

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols/ink"
)

// Plan draws a set-up to scale.
type Plan struct{ *Drawing }

// Draw draws the set-up to scale: what stands first, then what is lettered beside it, and last
// the contours, whose figures keep clear of all of that. Layers put it in order. Corners of
// the panel may be taken by text.
func (c Plan) Draw(p Pad, v layout.View, corners []r2.Box) {
	v.Covered = corners
	maps, beams := maps(c), beams(c)
	throws, clear := c.Arrange(p, v)
	reliefs, rays := maps.reliefs(v), beams.raysAndRims(v)
	maps.noteBands(v, reliefs)
	lines := reliefs
	if section.IsOfColours(c.In) {
		lines = maps.hueReliefs(v)
	}
	clear = append(clear, revisions(c).draw(p, v, clear, throwLines(throws))...)
	clear = append(clear, ghosts(c).draw(p, v, clear, throwLines(throws))...)
	clear = append(clear, roomSizes(c).drawRoomSizes(p, v, slices.Concat(clear, c.swings, rays))...)
	clear = append(clear, tapes(c).drawTapes(p, v, clear, throwLines(throws), slices.Concat(rays, contourLines(lines)))...)
	clear = append(clear, names(c).nameThings(p, v, slices.Concat(clear, throwLines(throws)), slices.Concat(contourLines(lines), rays, c.grounds))...)
	runs := outlinesOf(cables(c).lines(v))
	clear = append(clear, beams.numberBeams(p, v, slices.Concat(clear, runs, throwLines(throws)))...)
	clear = slices.Concat(clear, c.furnitureObstacles(), dressingObstacles(c.In.Setup, v), rays, runs, throwLines(throws))
	maps.drawTints(p.On(ink.Tint), v, reliefs)
	maps.drawAllLines(p.On(ink.Contours), v, lines, clear)
}

// Arrange draws what stands and the labels beside it, and returns the throws and what further
// lettering keeps clear of.
func (c Plan) Arrange(p Pad, v layout.View) (throws []throw, clear []carto.Obstacle) {
	things, beams := things(c), beams(c)
	things.drawWalls(p, v)
	openings, swings := things.drawOpenings(p, v)
	c.swings = nil
	for _, o := range swings {
		c.swings = append(c.swings, carto.Obstacle{Outline: o.Outline, Leaders: true})
	}
	things.drawFurniture(p, v)
	beams.drawViews(p, v)
	beams.drawBeams(p, v)
	beams.drawRims(p, v)
	labels, rests := things.drawThings(p, v)
	c.grounds = outlinesOf(rests)
	for _, d := range c.furniture {
		for _, r := range d.Rest {
			c.grounds = append(c.grounds, carto.Obstacle{Outline: r})
		}
	}
	labels = append(labels, cables(c).draw(p, v)...)
	labels = append(labels, walks(c).draw(p, v)...)
	ends, rails := tracks(c).draw(p, v)
	labels = append(labels, rails...)
	labels = append(labels, readings(c).drawReadings(p, v)...)
	labels = slices.DeleteFunc(labels, func(t placeable) bool { return !box.Contains(v.Panel, t.label(p).Anchor) })

	rays := beams.raysAndRims(v)
	standing := slices.Concat(wallObstacles(c.In.Setup, v), openings, c.peopleObstacles(v), ends)
	standing = append(standing, Match(c).seams(v)...)
	for _, b := range v.Covered {
		standing = append(standing, hard(box.Inset(b, -2, -2)))
	}
	throws = c.throws(v, slices.Concat(standing, bodies(p, labels)), rays)
	for i := range throws {
		throws[i].draw(p)
	}
	clear = slices.Concat(standing, throwObstacles(p, throws))
	clear = append(clear, overprints(c).overprint(p, v, slices.Concat(clear, bodies(p, labels), c.standObstacles(), swings),
		slices.Concat(rays, throwLines(throws), c.furnitureObstacles(), floorOutlines(c.In.Setup, v)))...)
	spared := roomSizes(c).spared(v, slices.Concat(clear, bodies(p, labels), c.swings, rays))
	placed := c.place(p, v, labels, slices.Concat(clear, swings, rests, c.softLines(v, throws), spared))
	return throws, slices.Concat(clear, bodies(p, labels), placed)
}

// labelAir is clear beside a label, mm: a figure right behind it would be read on from it.
const labelAir = 0.8

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
	placed := c.before.place(labels, o)
	for i, at := range placed {
		things[i].draw(p, at)
		c.form(at.Form)
		if !things[i].explains(at) {
			c.Reduced++
		}
		if !things[i].full(at) {
			c.Shortened++
		}
		if !things[i].whole(at) {
			c.Lost++
		}
		if s := things[i].missed(at); s != "" {
			c.Missed = append(c.Missed, s)
		}
		if at.On {
			taken = append(taken, hard(box.Inset(at.Box, -labelAir, 0)))
		}
		if at.Leads() {
			taken = append(taken, carto.Obstacle{Outline: at.Leader[:]})
		}
	}
	for i, at := range placed {
		if t, isTag := things[i].(*tag); isTag && !at.On {
			taken = append(taken, c.numberOn(p, t, slices.Concat(taken, hardOnes(obstacles)))...)
		}
	}
	return taken
}

// numberOn letters the number of a thing on its own symbol, where nothing else is: a lamp without one on the plan is nobody's.
// It returns the paper that takes.
func (c *Drawing) numberOn(p Pad, t *tag, taken []carto.Obstacle) []carto.Obstacle {
	for i := range c.Stands {
		if body := c.Stands[i].Body; len(body) > 0 && len(t.drawn.Body) > 0 && &body[0] != &t.drawn.Body[0] {
			taken = append(taken, carto.Obstacle{Outline: body})
		}
	}
	for _, cap := range [...]float64{CapTitle, capName, CapSmall} {
		st := p.Style(cap, p.Look.Ink).Strong()
		at := centreOf(t.drawn.Body, t.anchor)
		o := carto.Obstacle{Outline: ink.TurnedBox(at, st.boxOf(t.number), 0), Leaders: true}
		if !meets(o, taken) {
			p.On(ink.Tags).of(t.object, "").turned(underMiddle(at, st.Cap, 0), t.number, st, ink.Centre, 0, &p.Look.Paper)
			return []carto.Obstacle{o}
		}
	}
	return nil
}

// hardOnes are the obstacles that must not be covered at any price, but for lines.
func hardOnes(all []carto.Obstacle) []carto.Obstacle {
	return slices.DeleteFunc(slices.Clone(all), func(o carto.Obstacle) bool { return o.Cost > 0 || len(o.Outline) < 3 })
}

// stripRounds is how long labels look for places on the small plan of a strip, in rounds a label.
const stripRounds = 600

// softLines are the lines that labels avoid where they can: throws, beams, views, edges of
// furniture.
func (c *Drawing) softLines(v layout.View, throws []throw) []carto.Obstacle {
	var all []carto.Obstacle
	for i := range throws {
		all = append(all, soft(costThrow, throws[i].from, throws[i].to))
	}
	for _, o := range (beams{c}).raysAndRims(v) {
		o.Cost = costBeam
		all = append(all, o)
	}
	for _, o := range c.furnitureObstacles() {
		o.Cost = costTable
		all = append(all, o)
		for i, q := range o.Outline {
			all = append(all, soft(costEdge, q, o.Outline[(i+1)%len(o.Outline)]))
		}
	}
	all = append(all, c.peopleAround()...)
	all = append(all, ghosts{c}.soft(v)...)
	all = append(all, revisions{c}.soft(v)...)
	all = append(all, cables{c}.lines(v)...)
	return append(all, floorSquares(c.In.Setup, v)...)
}
