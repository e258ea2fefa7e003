package sheet

import (
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/render/carto"
	"scrimshaw/symbols"
	"scrimshaw/symbols/ink"
)

// drawFurniture draws what stands, the lowest first, so that what stands on it is not hidden, and
// keeps what it covers.
func (c things) drawFurniture(p pad, v view) {
	c.furniture = make([]symbols.Drawn, len(c.in.Setup.Furniture))
	for _, i := range lowestFirst(c.in.Setup.Furniture) {
		f := &c.in.Setup.Furniture[i]
		c.used("furniture:" + f.Kind)
		alt := fmt.Sprintf("%s, %s high.", f.Name, c.length(f.Z1-f.Base))
		first := len(p.page.Items)
		c.furniture[i] = c.furnish(p.of("furniture:"+f.Name, alt), v, f)
		if mappedOver(c.in, f) {
			hollow(p.page.Items[first:], p.look.Paper, symbols.Heavy)
		}
	}
}

// mappedOver says whether the map is of a level that passes over a thing: what is under it is drawn
// in outline, so that the map is read there too.
func mappedOver(in *Input, f *plan.Furniture) bool { return mappedAbove(in, f.At, f.Z1) }

// mappedAbove says whether the map is of a level that passes above a point.
func mappedAbove(in *Input, at r2.Vec, z float64) bool {
	return slices.ContainsFunc(in.fields(), func(m *Field) bool { return m.Level != nil && z < *m.Level && m.covers(at) })
}

// covers says whether a map has light at a point.
func (f *Field) covers(p r2.Vec) bool {
	i := int(math.Round((p.X - f.Grid.Origin.X) / f.Grid.Step))
	j := int(math.Round((p.Y - f.Grid.Origin.Y) / f.Grid.Step))
	return i >= 0 && j >= 0 && i < f.Grid.NX && j < f.Grid.NY && !f.Grid.Masked(i, j)
}

// hollow takes the paper out of marks and leaves their lines, those up to a width.
func hollow(marks []ink.Item, paper ink.Colour, width float64) {
	for i := range marks {
		if m := &marks[i]; m.Fill != nil && *m.Fill == paper && m.Stroke != nil && m.Stroke.Width <= width {
			m.Fill = nil
		}
	}
}

func (c things) furnish(p pad, v view, f *plan.Furniture) symbols.Drawn {
	return symbols.Furnish(p.canvas, p.symbols(), symbols.Furniture{
		Kind: symbols.FurnitureKind(f.Kind), At: v.mm(f.At), Turn: f.Turn, Size: r2.Vec{X: f.Size[0] * v.scale, Y: f.Size[1] * v.scale},
		Scale: v.scale, Steps: steps(f),
	})
}

// The heights, m, of a top that knees go under.
const (
	lowestTop  = 0.55
	highestTop = 1.20
)

// coverLegs draws tables once more, over the legs of who sits at them.
func (c things) coverLegs(p pad, v view) {
	for i := range c.in.Setup.Furniture {
		f := &c.in.Setup.Furniture[i]
		if high := f.Z1 - f.Base; f.Kind != "table" || high < lowestTop || high > highestTop || mappedOver(c.in, f) || !c.satAt(i) {
			continue
		}
		first := len(p.page.Items)
		c.furnish(p.of("furniture:"+f.Name, ""), v, f)
		for j := range p.page.Items[first:] {
			p.page.Items[first+j].Layer = ink.People
		}
	}
}

// satAt says whether somebody sits with their legs under a thing.
func (c things) satAt(i int) bool {
	for j := range c.in.Setup.People {
		who := &c.in.Setup.People[j]
		legs := who.Pose == "seated" || who.Pose == "crouching"
		if legs && carto.Overlap(c.people[who.Name].Body, c.furniture[i].Body) && !liesOver(c.in.Setup, i, who.At) {
			return true
		}
	}
	return false
}

// over says whether a point in plan lies over a thing.
func liesOver(s *plan.Setup, i int, at r2.Vec) bool {
	return slices.ContainsFunc(s.Furniture[i].Parts, func(q plan.Part) bool { return inRing(q.Outline, at) })
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
		if q.Kind == "step" {
			n++
		}
	}
	return n
}
