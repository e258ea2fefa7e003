package draw

import (
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/term"
	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols"
	"scrimshaw/symbols/ink"
)

// drawFurniture draws what stands, the lowest first, so that what stands on it is not hidden, and
// keeps what it covers.
func (c things) drawFurniture(p Pad, v layout.View) {
	c.furniture = make([]symbols.Drawn, len(c.In.Setup.Furniture))
	for _, i := range lowestFirst(c.In.Setup.Furniture) {
		f := &c.In.Setup.Furniture[i]
		c.usedAs("furniture:"+string(f.Kind), func(to ink.Canvas, k symbols.Look, scale float64) symbols.Drawn {
			return drawPiece(to, k, layout.View{Scale: scale}, f, r2.Vec{}, 0)
		})
		alt := fmt.Sprintf("%s, %s high.", f.Name, c.Length(f.Z1-f.Base))
		first := len(p.page.Items)
		c.furniture[i] = c.furnish(p.of("furniture:"+f.Name, alt), v, f)
		if mappedOver(c.In, f) {
			linesOnly(p.page.Items[first:], p.Look.Solid, symbols.Heavy)
		}
	}
}

// mappedOver says whether the map is of a level that passes over a thing: what is under it is drawn
// in outline, so that the map is read there too.
func mappedOver(in *section.Input, f *plan.Furniture) bool { return mappedAbove(in, f.At, f.Z1) }

// mappedAbove says whether the map is of a level that passes above a point.
func mappedAbove(in *section.Input, at r2.Vec, z float64) bool {
	return slices.ContainsFunc(in.Maps(), func(m *section.Field) bool { return m.Level != nil && z < *m.Level && covers(m, at) })
}

// covers says whether a map has light at a point.
func covers(f *section.Field, p r2.Vec) bool {
	i := int(math.Round((p.X - f.Grid.Origin.X) / f.Grid.Step))
	j := int(math.Round((p.Y - f.Grid.Origin.Y) / f.Grid.Step))
	return i >= 0 && j >= 0 && i < f.Grid.NX && j < f.Grid.NY && !f.Grid.Masked(i, j)
}

// linesOnly takes the paper out of marks and leaves their lines, those up to a width.
func linesOnly(marks []ink.Item, paper ink.Colour, width float64) {
	for i := range marks {
		if m := &marks[i]; m.Fill != nil && *m.Fill == paper && m.Stroke != nil && m.Stroke.Width <= width {
			m.Fill = nil
		}
	}
}

func (c things) furnish(p Pad, v layout.View, f *plan.Furniture) symbols.Drawn {
	return drawPiece(p.canvas, p.furnishings(), v, f, v.Paper(f.At), f.Turn)
}

// drawPiece draws a piece of furniture at a place on paper.
func drawPiece(to ink.Canvas, k symbols.Look, v layout.View, f *plan.Furniture, at r2.Vec, turn float64) symbols.Drawn {
	return symbols.DrawFurniture(to, k, symbols.Furniture{
		Kind: symbols.FurnitureKind(f.Kind), At: at, Turn: turn, Size: r2.Vec{X: f.Size[0] * v.Scale, Y: f.Size[1] * v.Scale},
		Scale: v.Scale, Steps: steps(f),
	})
}

// The heights, m, of a top that knees go under.
const (
	lowestTop  = 0.55
	highestTop = 1.20
)

// onTop is how far under a top, m, the foot of what stands on it may lie.
const onTop = 0.005

// coverLegs draws tables once more, over the legs of who sits at them, and on them what stands there.
func (c things) coverLegs(p Pad, v layout.View) {
	for i := range c.In.Setup.Furniture {
		f := &c.In.Setup.Furniture[i]
		if high := f.Z1 - f.Base; f.Kind != term.Table || high < lowestTop || high > highestTop || mappedOver(c.In, f) || !c.isSeatOf(i) {
			continue
		}
		first := len(p.page.Items)
		c.furnish(p.of("furniture:"+f.Name, ""), v, f)
		for _, k := range lowestFirst(c.In.Setup.Furniture) {
			if on := &c.In.Setup.Furniture[k]; on.Z0 >= f.Z1-onTop && liesOver(c.In.Setup, i, on.At) {
				c.furnish(p.of("furniture:"+on.Name, ""), v, on)
			}
		}
		for j := range p.page.Items[first:] {
			p.page.Items[first+j].Layer = ink.People
		}
	}
}

// isSeatOf says whether somebody sits with their legs under a thing.
func (c things) isSeatOf(i int) bool {
	for j := range c.In.Setup.People {
		who := &c.In.Setup.People[j]
		legs := who.Pose == term.Seated || who.Pose == term.Crouching
		if legs && carto.Overlap(c.People[who.Name].Body, c.furniture[i].Body) && !liesOver(c.In.Setup, i, who.At) {
			return true
		}
	}
	return false
}

// liesOver says whether a point in plan lies over a thing.
func liesOver(s *plan.Setup, i int, at r2.Vec) bool {
	return slices.ContainsFunc(s.Furniture[i].Parts, func(q plan.Part) bool { return box.InRing(q.Outline, at) })
}

// lowestFirst is the order of things by their tops.
func lowestFirst(all []plan.Furniture) []int {
	order := make([]int, len(all))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		switch {
		case all[a].Z1 < all[b].Z1:
			return -1
		case all[a].Z1 > all[b].Z1:
			return 1
		}
		return 0
	})
	return order
}

// steps counts the steps of stairs.
func steps(f *plan.Furniture) int {
	n := 0
	for _, q := range f.Parts {
		if q.Kind == plan.StepPart {
			n++
		}
	}
	return n
}
