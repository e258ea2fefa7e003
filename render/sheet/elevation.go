package sheet

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/render/carto"
	"scrimshaw/symbols/ink"
)

// Elevation asks for a wall as seen from inside its room in place of the plan. The field of the
// input is then over the wall: x along it from its left end, y the height over the level of the set's
// zero, m.
type Elevation struct{ Room, Wall string }

// face is a wall that is drawn: where it is, and how far what stands before it reaches.
type face struct {
	wall      *plan.Wall
	room      *plan.Room
	along     r2.Vec // unit
	base, top float64
	name      string
}

const (
	before     = 1.0  // m: what stands nearer to a wall than this is shown before it
	floorBelow = 0.12 // m of floor and of ceiling that are shown in section
	onFace     = 0.01 // m: what is no farther from the inside face of a wall lies on it
	squareOn   = 0.99 // the cosine of an angle that still counts as none
)

// onWall is the wall that the sheet is of; ok is false where the set-up has none of that name.
func (c *composer) onWall() (f face, ok bool) {
	if c.in.Elevation == nil {
		return f, false
	}
	for i := range c.in.Setup.Rooms {
		r := &c.in.Setup.Rooms[i]
		for j := range r.Walls {
			if w := &r.Walls[j]; r.Name == c.in.Elevation.Room && w.Name == c.in.Elevation.Wall {
				return face{wall: w, room: r, along: r2.Unit(r2.Sub(w.Right, w.Left)), base: r.Base, top: r.Top, name: r.Name + "." + w.Name}, true
			}
		}
	}
	return f, false
}

// at takes a point of the set to the wall: along and height.
func (f *face) at(p r3.Vec) r2.Vec {
	return r2.Vec{X: r2.Dot(r2.Sub(plain(p), f.wall.Left), f.along), Y: p.Z}
}

// off is how far a point in plan stands before the wall; negative behind it.
func (f *face) off(p r2.Vec) float64 { return -r2.Dot(r2.Sub(p, f.wall.Left), f.wall.Outward) }

// box is the wall with the floor and the ceiling that it stands between.
func (f *face) box() r2.Box {
	return box(0, f.base, f.wall.Length(), f.top)
}

// stands is what an elevation shows, for the layout.
func (f *face) stands() []r2.Box { return []r2.Box{inset(f.box(), -0.25, -0.25)} }

// drawElevation draws the wall: the map of light on it, its openings, what stands before it, its
// size, and the readings that are taken of it.
func (c *composer) drawElevation(p pad, v view, f face, corners []r2.Box) {
	wall := f.box()
	var clear []carto.Obstacle
	for _, b := range corners {
		clear = append(clear, hard(inset(b, -2, -2)))
	}
	clear = append(clear, c.drawSection(p.on(ink.Walls), v, f)...)
	clear = append(clear, c.drawHoles(p, v, f)...)
	clear = append(clear, c.drawBefore(p.on(ink.Furniture), v, f)...)
	clear = append(clear, c.drawSizes(p.on(ink.Throws), v, wall)...)
	var notes []placeable
	for i := range c.in.Readings {
		r := &c.in.Readings[i]
		where := f.at(c.target(r))
		if r.Person == "" && math.Abs(f.off(plain(c.target(r)))) < 0.05 && contains(wall, where) {
			notes = append(notes, c.meterNote(p, v.mm(where), r))
		}
	}
	clear = append(clear, bodies(p, notes)...)
	clear = append(clear, c.place(p, v, notes, clear)...)
	reliefs := c.reliefs(v)
	c.drawTints(p.on(ink.Tint), v, reliefs)
	for i := range reliefs {
		c.drawLines(p.on(ink.Contours), v, &reliefs[i], clear)
	}
}

// drawSection draws what the wall stands between, cut: the floor, the ceiling, and the walls at its
// ends.
func (c *composer) drawSection(p pad, v view, f face) []carto.Obstacle {
	b := f.box()
	cut := inset(b, -floorBelow, -floorBelow)
	p = p.of("wall:"+f.name, fmt.Sprintf("Wall %s seen from inside, %s long and %s high.", f.name, c.length(width(b)), c.length(height(b))))
	var taken []carto.Obstacle
	for _, piece := range [...]r2.Box{
		box(cut.Min.X, cut.Min.Y, cut.Max.X, b.Min.Y), box(cut.Min.X, b.Max.Y, cut.Max.X, cut.Max.Y),
		box(cut.Min.X, b.Min.Y, b.Min.X, b.Max.Y), box(b.Max.X, b.Min.Y, cut.Max.X, b.Max.Y),
	} {
		q := onPaper(v, piece)
		p.rect(q, hair, p.look.Wall, &p.look.Wall)
		taken = append(taken, hard(q))
	}
	return taken
}

// hole is where an opening cuts the wall, along it and in height, m; ok is false where it does not. One
// that was declared from the room behind cuts it too, at the far end of its depth.
func (f *face) hole(o *plan.Opening) (b r2.Box, ok bool) {
	left, right := o.Left, o.Right
	if o.Room != f.room.Name || o.Wall != f.wall.Name {
		through := r2.Scale(o.Depth, o.Outward)
		left, right = r2.Add(o.Right, through), r2.Add(o.Left, through)
		back := r2.Dot(o.Outward, f.wall.Outward) < -squareOn
		if !back || math.Abs(f.off(left)) > onFace || math.Abs(f.off(right)) > onFace {
			return b, false
		}
	}
	from, to := f.at(r3.Vec{X: left.X, Y: left.Y}), f.at(r3.Vec{X: right.X, Y: right.Y})
	b = r2.Box{Min: r2.Vec{X: from.X, Y: o.Sill}, Max: r2.Vec{X: to.X, Y: o.Head}}
	return common(b, f.box())
}

// common is what two boxes share; ok is false where that is nothing.
func common(a, b r2.Box) (shared r2.Box, ok bool) {
	shared = r2.Box{
		Min: r2.Vec{X: math.Max(a.Min.X, b.Min.X), Y: math.Max(a.Min.Y, b.Min.Y)},
		Max: r2.Vec{X: math.Min(a.Max.X, b.Max.X), Y: math.Min(a.Max.Y, b.Max.Y)},
	}
	return shared, shared.Max.X > shared.Min.X && shared.Max.Y > shared.Min.Y
}

// drawHoles draws the openings of the wall, with their names.
func (c *composer) drawHoles(p pad, v view, f face) []carto.Obstacle {
	var taken []carto.Obstacle
	for i := range c.in.Setup.Openings {
		o := &c.in.Setup.Openings[i]
		cut, ok := f.hole(o)
		if !ok {
			continue
		}
		hole := onPaper(v, cut)
		q := p.on(ink.Walls).of("opening:"+o.Name, c.openingAlt(o))
		q.rect(hole, medium, p.look.Ink, &p.look.Paper)
		if o.Kind == "window" {
			q.bars(hole, o.Panes)
		}
		taken = append(taken, hard(hole))
		st := p.small()
		name := carto.Obstacle{Outline: turnedBox(middle(hole.Min, hole.Max), st.boxOf(o.Name), 0)}
		if allIn(name.Outline, inset(hole, 0.5, 0.5)) {
			p.on(ink.Notes).of("opening:"+o.Name, "").turned(underMiddle(middle(hole.Min, hole.Max), st.cap, 0), o.Name, p.quiet(), ink.Centre, 0, &p.look.Paper)
		}
	}
	return taken
}

// bars draws the bars between panes.
func (p pad) bars(hole r2.Box, panes [2]int) {
	for i := 1; i < panes[0]; i++ {
		x := hole.Min.X + width(hole)*float64(i)/float64(panes[0])
		p.line(thin, p.look.Ink, at(x, hole.Min.Y), at(x, hole.Max.Y))
	}
	for i := 1; i < panes[1]; i++ {
		y := hole.Min.Y + height(hole)*float64(i)/float64(panes[1])
		p.line(thin, p.look.Ink, at(hole.Min.X, y), at(hole.Max.X, y))
	}
}

// drawBefore draws in fine dashes what stands near the wall.
func (c *composer) drawBefore(p pad, v view, f face) []carto.Obstacle {
	var taken []carto.Obstacle
	for i := range c.in.Setup.Furniture {
		thing := &c.in.Setup.Furniture[i]
		for _, part := range thing.Parts {
			shape, near := f.silhouette(part)
			if !near {
				continue
			}
			q := onPaper(v, shape)
			p.of("furniture:"+thing.Name, "").dashed(hair, p.look.Ink, fieldDash, append(corners(q), corners(q)[0])...)
			taken = append(taken, carto.Obstacle{Outline: []r2.Vec{q.Min, {X: q.Max.X, Y: q.Min.Y}}})
		}
	}
	return taken
}

// silhouette is a part of a thing as it stands before the wall; near is false where it does not, or
// stands further off.
func (f *face) silhouette(part plan.Part) (shape r2.Box, near bool) {
	g, nearest := gatherer{}, math.Inf(1)
	for _, q := range part.Outline {
		g.point(f.at(r3.Vec{X: q.X, Y: q.Y, Z: part.Z0}), 0)
		g.point(f.at(r3.Vec{X: q.X, Y: q.Y, Z: part.Z1}), 0)
		nearest = math.Min(nearest, f.off(q))
	}
	shape, within := common(g.box(), f.box())
	return shape, g.any && within && nearest > -0.05 && nearest < before
}

// drawSizes letters the length and the height of the wall along its dimension lines.
func (c *composer) drawSizes(p pad, v view, wall r2.Box) []carto.Obstacle {
	const off = 3.2
	b := inset(onPaper(v, inset(wall, -floorBelow, -floorBelow)), -off, -off)
	inner := onPaper(v, wall)
	st := p.small()
	var taken []carto.Obstacle
	draw := func(from, to r2.Vec, words string, angle float64) {
		gap := (st.width(words)/2 + 1) / r2.Norm(r2.Sub(to, from))
		p.line(hair, p.look.Ink, from, mix(from, to, 0.5-gap))
		p.line(hair, p.look.Ink, mix(from, to, 0.5+gap), to)
		tick := r2.Scale(1.1, ink.Direction(bearing(r2.Sub(to, from))+45))
		for _, end := range [...]r2.Vec{from, to} {
			p.line(thin, p.look.Ink, r2.Sub(end, tick), r2.Add(end, tick))
		}
		p.turned(underMiddle(middle(from, to), st.cap, angle), words, st, ink.Centre, angle, nil)
		taken = append(taken, carto.Obstacle{Outline: turnedBox(middle(from, to), st.boxOf(words), angle)})
	}
	draw(at(inner.Min.X, b.Min.Y), at(inner.Max.X, b.Min.Y), c.length(width(wall)), 0)
	draw(at(b.Min.X, inner.Min.Y), at(b.Min.X, inner.Max.Y), c.length(height(wall)), 90)
	return taken
}

// elevationSections are those of the collar of a wall.
func (c *composer) elevationSections() []*section {
	return []*section{c.levelKey(), c.meters(), c.watch(), c.assumed(), c.unchecked()}
}
