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

// onWall is the wall that the sheet is of; ok is false where it is of the plan.
func onWall(in *Input) (f face, ok bool) {
	r, w, ok := in.wall()
	if !ok {
		return f, false
	}
	return face{wall: w, room: r, along: r2.Unit(r2.Sub(w.Right, w.Left)),
		left: r.CeilingAt(w.Left), right: r.CeilingAt(w.Right), name: r.Name + "." + w.Name}, true
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

// wallDrawing draws a wall in elevation.
type wallDrawing struct{ *drawing }

// drawElevation draws the wall: the map of light on it, its openings, what stands before it, its
// size, and the readings that are taken of it.
func (c wallDrawing) drawElevation(p pad, v view, f face, corners []r2.Box) {
	var clear []carto.Obstacle
	for _, b := range corners {
		clear = append(clear, hard(inset(b, -2, -2)))
	}
	clear = append(clear, c.drawSection(p.on(ink.Walls), v, f)...)
	clear = append(clear, c.drawHoles(p, v, f)...)
	clear = append(clear, c.drawBefore(p, v, f, clear)...)
	clear = append(clear, c.drawSizes(p.on(ink.Throws), v, f)...)
	notes := maps{c.drawing}.brightest(p, v)
	clear = append(clear, overprints{c.drawing}.overprint(p, v, slices.Concat(clear, bodies(p, notes)), []carto.Obstacle{hard(f.sized(v))})...)
	for i := range c.in.Readings {
		r := &c.in.Readings[i]
		where := f.at(targetOf(c.in.Setup, r))
		if r.Person == "" && math.Abs(f.off(plain(targetOf(c.in.Setup, r)))) < 5*onFace && contains(f.box(), where) {
			notes = append(notes, readings{c.drawing}.meterNote(p, v.mm(where), r))
		}
	}
	clear = append(clear, bodies(p, notes)...)
	clear = append(clear, c.place(p, v, notes, clear)...)
	reliefs := maps{c.drawing}.reliefs(v)
	maps{c.drawing}.drawTints(p.on(ink.Tint), v, reliefs)
	for i := range reliefs {
		maps{c.drawing}.drawLines(p.on(ink.Contours), v, &reliefs[i], clear)
	}
}
