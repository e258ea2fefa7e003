package sheet

import (
	"math"
	"slices"

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

// face is a wall that is drawn: where it is, and the z of the ceiling at its ends.
type face struct {
	wall        *plan.Wall
	room        *plan.Room
	along       r2.Vec // unit
	left, right float64
	name        string
}

// onFace is how far from the inside face of a wall lies what is on it, m.
const onFace = 0.01

// onWall is the wall that the sheet is of; ok is false where the set-up has none of that name.
func (c *composer) onWall() (f face, ok bool) {
	if c.in.Elevation == nil {
		return f, false
	}
	for i := range c.in.Setup.Rooms {
		r := &c.in.Setup.Rooms[i]
		for j := range r.Walls {
			if w := &r.Walls[j]; r.Name == c.in.Elevation.Room && w.Name == c.in.Elevation.Wall {
				return face{wall: w, room: r, along: r2.Unit(r2.Sub(w.Right, w.Left)),
					left: r.CeilingAt(w.Left), right: r.CeilingAt(w.Right), name: r.Name + "." + w.Name}, true
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

// box is round the wall: along it, and from the floor to the ceiling where that is highest.
func (f *face) box() r2.Box {
	return box(0, f.room.Base, f.wall.Length(), math.Max(f.left, f.right))
}

// ring is the wall itself, under its ceiling.
func (f *face) ring() []r2.Vec {
	long := f.wall.Length()
	return []r2.Vec{at(0, f.room.Base), at(long, f.room.Base), at(long, f.right), at(0, f.left)}
}

// stands is what an elevation shows, for the layout.
func (f *face) stands() []r2.Box {
	g := gatherer{}
	for _, piece := range f.cut() {
		g.all(piece, 0.13)
	}
	return []r2.Box{g.box()}
}

// drawElevation draws the wall: the map of light on it, its openings, what stands before it, its
// size, and the readings that are taken of it.
func (c *composer) drawElevation(p pad, v view, f face, corners []r2.Box) {
	var clear []carto.Obstacle
	for _, b := range corners {
		clear = append(clear, hard(inset(b, -2, -2)))
	}
	clear = append(clear, c.drawSection(p.on(ink.Walls), v, f)...)
	clear = append(clear, c.drawHoles(p, v, f)...)
	clear = append(clear, c.drawBefore(p, v, f, clear)...)
	clear = append(clear, c.drawSizes(p.on(ink.Throws), v, f)...)
	notes := c.brightest(p, v)
	clear = append(clear, c.overprint(p, v, slices.Concat(clear, bodies(p, notes)), []carto.Obstacle{hard(f.sized(v))})...)
	for i := range c.in.Readings {
		r := &c.in.Readings[i]
		where := f.at(c.target(r))
		if r.Person == "" && math.Abs(f.off(plain(c.target(r)))) < 5*onFace && contains(f.box(), where) {
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

// elevationSections are those of the collar of a wall.
func (c *composer) elevationSections() []*section {
	return []*section{c.levelKey(), c.meters(), c.watch(), c.uncomputed(), c.assumed(), c.unchecked()}
}
