package sheet

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/render/carto"
)

// sectionDeep is how much of the floor, the ceiling and the walls beside it a wall is drawn with, cut, m.
const sectionDeep = 0.12

// ceiling is its z at a distance along the wall, which may lie beyond its ends.
func (f *face) ceiling(x float64) float64 { return f.left + f.slope()*x }

// slope is how the ceiling rises along the wall, m per m.
func (f *face) slope() float64 { return (f.right - f.left) / f.wall.Length() }

// cut is what the wall stands between, cut: the floor, the ceiling, and the walls at its left and right, which
// reach half into both so that no seam shows.
func (f *face) cut() [4][]r2.Vec {
	const deep = sectionDeep
	b, thick := f.box(), deep*math.Hypot(1, f.slope())
	from, to := b.Min.X-deep, b.Max.X+deep
	side := func(x0, x1 float64) []r2.Vec {
		foot := b.Min.Y - deep/2
		return []r2.Vec{at(x0, foot), at(x1, foot), at(x1, f.ceiling(x1)+thick/2), at(x0, f.ceiling(x0)+thick/2)}
	}
	return [...][]r2.Vec{
		corners(box(from, b.Min.Y-deep, to, b.Min.Y)),
		{at(from, f.ceiling(from)), at(to, f.ceiling(to)), at(to, f.ceiling(to)+thick), at(from, f.ceiling(from)+thick)},
		side(from, b.Min.X), side(b.Max.X, to),
	}
}

// drawSection draws what the wall stands between.
func (c wallDrawing) drawSection(p pad, v view, f face) []carto.Obstacle {
	b := f.box()
	p = p.of("wall:"+f.name, fmt.Sprintf("Wall %s seen from inside, %s long and %s high.", f.name, c.length(width(b)), c.length(height(b))))
	var taken []carto.Obstacle
	for _, piece := range f.cut() {
		q := v.all(piece)
		p.outline(hair, p.look.Wall, &p.look.Wall, q...)
		taken = append(taken, carto.Obstacle{Outline: q, Leaders: true})
	}
	return taken
}

// sized is the box on paper whose sides the dimension lines of the wall run along.
func (f *face) sized(v view) r2.Box {
	const off = 3.2 // mm
	return inset(onPaper(v, f.box()), -off-sectionDeep*v.scale, -off-sectionDeep*v.scale)
}

// drawSizes letters the length and the height of the wall along its dimension lines; under a ceiling that
// slopes its height at either end.
func (c wallDrawing) drawSizes(p pad, v view, f face) []carto.Obstacle {
	inner, b := onPaper(v, f.box()), f.sized(v)
	taken := c.drawSize(p, at(inner.Min.X, b.Min.Y), at(inner.Max.X, b.Min.Y), width(f.box()))
	upright := func(x, ceiling float64) {
		top := v.mm(at(0, ceiling)).Y
		taken = append(taken, c.drawSize(p, at(x, inner.Min.Y), at(x, top), ceiling-f.room.Base)...)
	}
	upright(b.Min.X, f.left)
	if math.Abs(f.left-f.right) > onFace {
		upright(b.Max.X, f.right)
	}
	return taken
}

// drawSize draws a dimension line with its length in a gap.
func (c wallDrawing) drawSize(p pad, from, to r2.Vec, metres float64) []carto.Obstacle {
	d := dimension{from: from, to: to, words: c.length(metres), angle: 90 - bearing(r2.Sub(to, from))}
	d.draw(p)
	return []carto.Obstacle{d.figure(p)}
}
