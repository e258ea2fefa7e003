package draw

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols/ink"
)

// WallFace is a wall that is drawn: where it is, and the z of the ceiling at its ends.
type WallFace struct {
	wall        *plan.Wall
	room        *plan.Room
	along       r2.Vec // unit
	left, right float64
	Name        string
}

// onFace is how far from the inside face of a wall lies what is on it, m.
const onFace = 0.01

// OnWall is the wall that the sheet is of; ok is false where it is of the plan.
func OnWall(in *section.Input) (f WallFace, ok bool) {
	r, w, ok := in.Wall()
	if !ok {
		return f, false
	}
	return WallFace{wall: w, room: r, along: r2.Unit(r2.Sub(w.Right, w.Left)),
		left: r.CeilingAt(w.Left), right: r.CeilingAt(w.Right), Name: r.Name + "." + w.Name}, true
}

// at takes a point of the set to the wall: along and height.
func (f *WallFace) at(p r3.Vec) r2.Vec {
	return r2.Vec{X: r2.Dot(r2.Sub(box.Plain(p), f.wall.Left), f.along), Y: p.Z}
}

// off is how far a point in plan stands before the wall; negative behind it.
func (f *WallFace) off(p r2.Vec) float64 { return -r2.Dot(r2.Sub(p, f.wall.Left), f.wall.Outward) }

// box is round the wall: along it, and from the floor to the ceiling where that is highest.
func (f *WallFace) box() r2.Box {
	return box.Of(0, f.room.Base, f.wall.Length(), math.Max(f.left, f.right))
}

// ring is the wall itself, under its ceiling.
func (f *WallFace) ring() []r2.Vec {
	long := f.wall.Length()
	return []r2.Vec{box.At(0, f.room.Base), box.At(long, f.room.Base), box.At(long, f.right), box.At(0, f.left)}
}

// Stands is what an elevation shows, for the layout.
func (f *WallFace) Stands() []r2.Box {
	g := box.Gatherer{}
	for _, piece := range f.cut() {
		g.All(piece, 0.13)
	}
	return []r2.Box{g.Box()}
}

// Wall draws a wall in elevation.
type Wall struct{ *Drawing }

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
	notes := maps{c.Drawing}.brightest(p, v)
	clear = append(clear, overprints{c.Drawing}.overprint(p, v, slices.Concat(clear, bodies(p, notes)), []carto.Obstacle{hard(f.sized(v))})...)
	for i := range c.In.Readings {
		r := &c.In.Readings[i]
		where := f.at(targetOf(c.In.Setup, r))
		if r.Person == "" && math.Abs(f.off(box.Plain(targetOf(c.In.Setup, r)))) < 5*onFace && box.Contains(f.box(), where) {
			notes = append(notes, readings{c.Drawing}.meterNote(p, v.Paper(where), r))
		}
	}
	clear = append(clear, bodies(p, notes)...)
	clear = append(clear, c.place(p, v, notes, clear)...)
	reliefs := maps{c.Drawing}.reliefs(v)
	maps{c.Drawing}.drawTints(p.On(ink.Tint), v, reliefs)
	for i := range reliefs {
		maps{c.Drawing}.drawLines(p.On(ink.Contours), v, &reliefs[i], clear)
	}
}
