package frame

import (
	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/body"
	"scrimshaw/plan/plane"
)

// cableThick is how thick a cable of three cores is, m: common practice.
const cableThick = 0.01

// cables are the cables of the set-up, as they lie on the floor; but that of a lamp that is meant to be in the picture may be there too.
func (v *viewing) cables() (all []thing) {
	for i := range v.setup.Lights {
		if l := &v.setup.Lights[i]; l.Cable != nil && len(l.Cable.Path) > 1 && !l.Seen.Meant {
			all = append(all, thing{kind: Cable, name: l.Name, path: l.Path, span: l.Span,
				at: func(by r3.Vec) [][]body.Piece { return [][]body.Piece{v.cableOn(l.Cable.Path, by)} }})
		}
	}
	return all
}

// cableOn are the pieces of a cable, leg by leg.
func (v *viewing) cableOn(path []r2.Vec, by r3.Vec) (all []body.Piece) {
	for i := 1; i < len(path); i++ {
		z := v.setup.Ground + by.Z
		middle := r2.Scale(0.5, r2.Add(path[i-1], path[i]))
		if room := v.setup.RoomUnder(middle, ""); room != nil {
			z = room.Base + by.Z
		}
		a, b := r2.Add(path[i-1], plan.InPlan(by)), r2.Add(path[i], plan.InPlan(by))
		way := r2.Unit(r2.Sub(b, a))
		side := r2.Scale(cableThick/2, r2.Vec{X: way.Y, Y: -way.X})
		ring := plane.CounterClockwise([]r2.Vec{r2.Add(a, side), r2.Sub(a, side), r2.Sub(b, side), r2.Add(b, side)})
		all = append(all, body.Prism(body.Lead, ring, z, z+cableThick))
	}
	return all
}
