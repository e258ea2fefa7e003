package draw

import (
	"fmt"
	"math"
	"slices"

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
	var pieces [][]r2.Vec
	for _, piece := range f.cut() {
		pieces = append(pieces, v.All(piece))
		taken = append(taken, carto.Obstacle{Outline: v.All(piece), Leaders: true})
	}
	p.cutAway(Thick, pieces...)
	ground := f.ring()
	p = p.of("ends:"+f.Name, "")
	p.Line(FrameLine, p.Look.Ink, v.Paper(box.At(-sectionDeep*2, f.room.Base)), v.Paper(box.At(f.wall.Length()+sectionDeep*2, f.room.Base)))
	p.Line(Thick, p.Look.Ink, v.Paper(ground[3]), v.Paper(ground[2]))
	return taken
}

// drawSizes letters the length and the height of the wall along its dimension lines, under a ceiling that
// slopes its height at either end; and nearer to the wall where its openings begin and end. It returns the paper that they
// take, and how far they reach to the right.
func (c Wall) drawSizes(p Pad, v layout.View, f WallFace) (taken []carto.Obstacle, right float64) {
	inner, b := v.Box(f.box()), f.sized(v)
	along, up := c.stops(f)
	chain := func(stops []float64, at func(stop float64) r2.Vec) float64 {
		for i := 1; i < len(stops) && len(stops) > 2; i++ {
			taken = append(taken, c.drawSize(p, at(stops[i-1]), at(stops[i]), stops[i]-stops[i-1])...)
		}
		return map[bool]float64{true: sizeRow}[len(stops) > 2]
	}
	down := chain(along, func(x float64) r2.Vec { return box.At(v.Paper(box.At(x, 0)).X, b.Min.Y) })
	off := chain(up, func(z float64) r2.Vec { return box.At(b.Min.X, v.Paper(box.At(0, z)).Y) })
	taken = append(taken, c.drawSize(p, box.At(inner.Min.X, b.Min.Y-down), box.At(inner.Max.X, b.Min.Y-down), box.Width(f.box()))...)
	upright := func(x, ceiling float64) {
		top := v.Paper(box.At(0, ceiling)).Y
		taken = append(taken, c.drawSize(p, box.At(x, inner.Min.Y), box.At(x, top), ceiling-f.room.Base)...)
	}
	upright(b.Min.X-off, f.left)
	right = inner.Max.X + sectionDeep*v.Scale
	if math.Abs(f.left-f.right) > onFace {
		upright(b.Max.X, f.right)
		right = b.Max.X
	}
	return taken, right
}

// sizeRow is the pitch of dimension lines beside each other, mm.
const sizeRow = 4.4

// stops are where openings begin and end along a wall and in height, with the ends of the wall; the height at its left
// end. m.
func (c Wall) stops(f WallFace) (along, up []float64) {
	along, up = []float64{0, f.wall.Length()}, []float64{f.room.Base, f.left}
	for i := range c.In.Setup.Openings {
		if cut, ok := f.hole(&c.In.Setup.Openings[i]); ok {
			along, up = append(along, cut.Min.X, cut.Max.X), append(up, cut.Min.Y, math.Min(cut.Max.Y, f.left))
		}
	}
	return distinct(along), distinct(up)
}

// distinct are places in order, those that are one once.
func distinct(all []float64) []float64 {
	slices.Sort(all)
	return slices.CompactFunc(all, func(a, b float64) bool { return math.Abs(a-b) < onFace })
}

// drawSize draws a dimension line with its length in a gap, or none where the line has no room for it.
func (c Wall) drawSize(p Pad, from, to r2.Vec, metres float64) []carto.Obstacle {
	d := dimension{from: from, to: to, words: c.Length(metres), angle: 90 - box.Bearing(r2.Sub(to, from))}
	if long := r2.Norm(r2.Sub(to, from)); p.Small().Width(d.words)+2*sizeTick > long {
		if d.words = c.Bare(metres); p.Small().Width(d.words)+2*sizeTick > long {
			return nil
		}
	}
	d.draw(p)
	c.used("size")
	return []carto.Obstacle{d.figure(p)}
}
