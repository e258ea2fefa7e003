package draw

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/layout"
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

// drawSection draws what the wall stands between.
func (c Wall) drawSection(p Pad, v layout.View, f WallFace) []carto.Obstacle {
	b := f.box()
	p = p.of("wall:"+f.Name, fmt.Sprintf("Wall %s seen from inside, %s long and %s high.", f.Name, c.Length(box.Width(b)), c.Length(box.Height(b))))
	var taken []carto.Obstacle
	for _, piece := range f.cut() {
		q := v.All(piece)
		p.outline(Hair, p.Look.Wall, &p.Look.Wall, q...)
		taken = append(taken, carto.Obstacle{Outline: q, Leaders: true})
	}
	return taken
}

// sized is the box on paper whose sides the dimension lines of the wall run along.
func (f *WallFace) sized(v layout.View) r2.Box {
	const off = 3.2 // mm
	return box.Inset(v.Box(f.box()), -off-sectionDeep*v.Scale, -off-sectionDeep*v.Scale)
}

// drawSizes letters the length and the height of the wall along its dimension lines; under a ceiling that
// slopes its height at either end.
func (c Wall) drawSizes(p Pad, v layout.View, f WallFace) []carto.Obstacle {
	inner, b := v.Box(f.box()), f.sized(v)
	taken := c.drawSize(p, box.At(inner.Min.X, b.Min.Y), box.At(inner.Max.X, b.Min.Y), box.Width(f.box()))
	upright := func(x, ceiling float64) {
		top := v.Paper(box.At(0, ceiling)).Y
		taken = append(taken, c.drawSize(p, box.At(x, inner.Min.Y), box.At(x, top), ceiling-f.room.Base)...)
	}
	upright(b.Min.X, f.left)
	if math.Abs(f.left-f.right) > onFace {
		upright(b.Max.X, f.right)
	}
	return taken
}

// drawSize draws a dimension line with its length in a gap.
func (c Wall) drawSize(p Pad, from, to r2.Vec, metres float64) []carto.Obstacle {
	d := dimension{from: from, to: to, words: c.Length(metres), angle: 90 - box.Bearing(r2.Sub(to, from))}
	d.draw(p)
	return []carto.Obstacle{d.figure(p)}
}
