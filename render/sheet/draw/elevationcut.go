package draw

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/layout"
)

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
	c.used("size")
	return []carto.Obstacle{d.figure(p)}
}
