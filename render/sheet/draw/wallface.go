package draw

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/render/sheet/section"
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

// Wall draws a wall in elevation.
type Wall struct{ *Drawing }

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
	return r2.Vec{X: r2.Dot(r2.Sub(plan.InPlan(p), f.wall.Left), f.along), Y: p.Z}
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
	g := box.Bounds{}
	for _, piece := range f.cut() {
		g.All(piece, 0.13)
	}
	b := g.Box()
	b.Min, b.Max.X = r2.Sub(b.Min, box.At(sizesRoom, sizesRoom)), b.Max.X+heightsRoom
	return []r2.Box{b}
}

// Room beside a wall for the dimension lines of its openings, and for its heights, m.
const (
	sizesRoom   = 0.10
	heightsRoom = 0.75
)

// sectionDeep is how much of the floor, the ceiling and the walls beside it a wall is drawn with, cut, m.
const sectionDeep = 0.12

// ceiling is its z at a distance along the wall, which may lie beyond its ends.
func (f *WallFace) ceiling(x float64) float64 { return f.left + f.slope()*x }

// slope is how the ceiling rises along the wall, m per m.
func (f *WallFace) slope() float64 { return (f.right - f.left) / f.wall.Length() }

// cut is what the wall stands between, cut: the floor, the ceiling, and the walls at its left and right, which
// reach half into both so that no seam shows.
func (f *WallFace) cut() [4][]r2.Vec {
	const deep = sectionDeep
	b, thick := f.box(), deep*math.Hypot(1, f.slope())
	from, to := b.Min.X-deep, b.Max.X+deep
	side := func(x0, x1 float64) []r2.Vec {
		foot := b.Min.Y - deep/2
		return []r2.Vec{box.At(x0, foot), box.At(x1, foot), box.At(x1, f.ceiling(x1)+thick/2), box.At(x0, f.ceiling(x0)+thick/2)}
	}
	return [...][]r2.Vec{
		box.Corners(box.Of(from, b.Min.Y-deep, to, b.Min.Y)),
		{box.At(from, f.ceiling(from)), box.At(to, f.ceiling(to)), box.At(to, f.ceiling(to)+thick), box.At(from, f.ceiling(from)+thick)},
		side(from, b.Min.X), side(b.Max.X, to),
	}
}

// sized is the box on paper whose sides the dimension lines of the wall run along.
func (f *WallFace) sized(v layout.View) r2.Box {
	const off = 3.2 // mm
	return box.Inset(v.Box(f.box()), -off-sectionDeep*v.Scale, -off-sectionDeep*v.Scale)
}

// metersAt says whether what a meter reads at a point is the wall's light.
func (f *WallFace) metersAt(at r3.Vec) bool {
	return math.Abs(f.off(plan.InPlan(at))) < 5*onFace && box.Contains(f.box(), f.at(at))
}
