package sheet

import (
	"fmt"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/symbols"
)

// drawFurniture draws what stands, the lowest first, so that what stands on it is not hidden, and
// keeps what it covers.
func (c *composer) drawFurniture(p pad, v view) {
	c.furniture = make([]symbols.Drawn, len(c.in.Setup.Furniture))
	for _, i := range lowestFirst(c.in.Setup.Furniture) {
		f := &c.in.Setup.Furniture[i]
		c.used("furniture:" + f.Kind)
		alt := fmt.Sprintf("%s, %s high.", f.Name, c.length(f.Z1-f.Base))
		c.furniture[i] = symbols.Furnish(p.of("furniture:"+f.Name, alt).canvas, p.symbols(), symbols.Furniture{
			Kind: symbols.FurnitureKind(f.Kind), At: v.mm(f.At), Turn: f.Turn, Size: r2.Vec{X: f.Size[0] * v.scale, Y: f.Size[1] * v.scale},
			Scale: v.scale, Steps: steps(f),
		})
	}
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
