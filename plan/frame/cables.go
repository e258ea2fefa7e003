package frame

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/body"
	"scrimshaw/plan/plane"
)

// cableThick is how thick a cable of three cores is, m: common practice.
const cableThick = 0.01

// cables are the cables of the set-up to its lights and its boxes, as they lie on the floor and over sills; but that of a lamp that is meant to be in the picture may be there too.
func (v *viewing) cables() (all []thing) {
	for i := range v.setup.Lights {
		if l := &v.setup.Lights[i]; l.Cable != nil && len(l.Cable.Path) > 1 && !l.Seen.Meant {
			all = append(all, thing{kind: Cable, name: l.Name, path: l.Path, span: l.Span,
				at: func(by r3.Vec) [][]body.Piece { return [][]body.Piece{cableOn(l.Cable.Way, by)} }})
		}
	}
	for i := range v.setup.Circuits {
		if c := &v.setup.Circuits[i]; c.Feeder != nil && len(c.Feeder.Path) > 1 {
			all = append(all, thing{kind: Cable, name: c.Name, path: c.Path, span: c.Span,
				at: func(by r3.Vec) [][]body.Piece { return [][]body.Piece{cableOn(c.Feeder.Way, by)} }})
		}
	}
	return all
}

// cableOn are the pieces of a cable, leg by leg: on the floor, up a wall, over a sill.
func cableOn(way []r3.Vec, by r3.Vec) (all []body.Piece) {
	for i := 1; i < len(way); i++ {
		from, to := r3.Add(way[i-1], by), r3.Add(way[i], by)
		a, b := plan.InPlan(from), plan.InPlan(to)
		along := r2.Vec{X: cableThick / 2}
		if d := r2.Sub(b, a); r2.Norm(d) > plane.Grain {
			along = r2.Scale(cableThick/2, r2.Unit(d))
		} else if math.Abs(to.Z-from.Z) <= plane.Grain {
			continue
		} else { // upright, as thick both ways
			a, b = r2.Sub(a, along), r2.Add(b, along)
		}
		side := r2.Vec{X: along.Y, Y: -along.X}
		ring := plane.CounterClockwise([]r2.Vec{r2.Add(a, side), r2.Sub(a, side), r2.Sub(b, side), r2.Add(b, side)})
		all = append(all, body.Prism(body.Lead, ring, math.Min(from.Z, to.Z), math.Max(from.Z, to.Z)+cableThick))
	}
	return all
}
