package draw

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/plane"
	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/layout"
)

// meets says whether an outline meets any of those that must not be covered.
func meets(o carto.Obstacle, taken []carto.Obstacle) bool {
	for _, q := range taken {
		if q.Cost == 0 && carto.Overlap(o.Outline, q.Outline) {
			return true
		}
	}
	return false
}

// hard is an obstacle of a box that neither lettering nor leaders may cover.
func hard(b r2.Box) carto.Obstacle {
	return carto.Obstacle{Outline: carto.BoxOutline(b), Leaders: true}
}

// soft is a line that lettering avoids where it can, at a cost.
func soft(cost float64, a, b r2.Vec) carto.Obstacle {
	return carto.Obstacle{Outline: []r2.Vec{a, b}, Cost: cost}
}

// outlinesOf are obstacles that cost nothing but are to be kept off where there is other room.
func outlinesOf(all []carto.Obstacle) []carto.Obstacle {
	out := slices.Clone(all)
	for i := range out {
		out[i].Cost = 0
	}
	return out
}

// bodies are the boxes of the marks that labels belong to.
func bodies(p Pad, things []placeable) []carto.Obstacle {
	var all []carto.Obstacle
	for _, t := range things {
		all = append(all, hard(t.label(p).Body))
	}
	return all
}

// dressingDeep is how far from its line a curtain or a blind is drawn, mm.
const dressingDeep = 0.5

// dressingObstacles are the curtains and blinds of the openings, under which no name reads.
func dressingObstacles(s *plan.Setup, v layout.View) (all []carto.Obstacle) {
	for i := range s.Openings {
		for k := range s.Openings[i].Dressing {
			d := &s.Openings[i].Dressing[k]
			a, b := v.Paper(d.A), v.Paper(d.B)
			if way := r2.Sub(b, a); r2.Norm(way) > 0 {
				across := r2.Unit(r2.Vec{X: -way.Y, Y: way.X})
				all = append(all, carto.Obstacle{Outline: plane.Slab(a, b, across, -dressingDeep, dressingDeep)})
			}
		}
	}
	return all
}

// wallObstacles keep lettering off the walls; a leader may cross them.
func wallObstacles(s *plan.Setup, v layout.View) []carto.Obstacle {
	var all []carto.Obstacle
	for _, q := range wallPieces(s, v) {
		all = append(all, carto.Obstacle{Outline: q})
	}
	return all
}

// peopleObstacles keep lettering off people, legs and all. A leader may cross them but for the head:
// one that came to a side of a face from across it would point at the other.
func (c *Drawing) peopleObstacles(v layout.View) []carto.Obstacle {
	var all []carto.Obstacle
	for i := range c.In.Setup.People {
		who := &c.In.Setup.People[i]
		head := personOf(v, who).Head()
		all = append(all, carto.Obstacle{Outline: c.People[who.Name].Body}, carto.Obstacle{Outline: head, Leaders: true})
	}
	return all
}

// peopleAround are the grounds about people who are close together: a name between two of them is read as either's.
func (c *Drawing) peopleAround() []carto.Obstacle {
	const around, apart = 5, 15 // mm
	var all []carto.Obstacle
	for i := range c.In.Setup.People {
		b := c.People[c.In.Setup.People[i].Name].Box()
		for j := range c.In.Setup.People {
			if i != j && box.Distance(b, c.People[c.In.Setup.People[j].Name].Box()) < apart {
				all = append(all, carto.Obstacle{Outline: box.Corners(box.Inset(b, -around, -around)), Cost: costNear})
				break
			}
		}
	}
	return all
}

// furnitureObstacles keep the contours' figures off what is drawn over the contours.
func (c *Drawing) furnitureObstacles() []carto.Obstacle {
	var all []carto.Obstacle
	for i, d := range c.furniture {
		if !mappedOver(c.In, &c.In.Setup.Furniture[i]) {
			all = append(all, carto.Obstacle{Outline: d.Body})
		}
	}
	return all
}

// What covering a line costs a label, as mm of leader, and what covering a square of floor does:
// a tag stands outside the room where its leader is no longer than that is worth.
const (
	costThrow = 14.0
	costSize  = 70.0 // of a dimension line, which has few other places
	costBeam  = 9.0
	costTable = 2.0
	costEdge  = 14.0
	costRest  = 40.0
	costCable = 30.0
	costGhost = 30.0
	costCloud = 60.0 // of one scallop
	costNear  = 25.0 // of the ground about somebody else; about oneself it is as dear everywhere
	costFloor = 3.0
	floorUnit = 8.0 // mm
)

// floorSquares are squares of paper over the floor of rooms, which the map is read on.
func floorSquares(s *plan.Setup, v layout.View) []carto.Obstacle {
	var all []carto.Obstacle
	for x := v.Panel.Min.X; x < v.Panel.Max.X; x += floorUnit {
		for y := v.Panel.Min.Y; y < v.Panel.Max.Y; y += floorUnit {
			square := box.Of(x, y, x+floorUnit, y+floorUnit)
			if onFloor(s, v.Metres(box.Middle(square.Min, square.Max))) {
				all = append(all, carto.Obstacle{Outline: box.Corners(square), Cost: costFloor})
			}
		}
	}
	return all
}

// standObstacles are the symbols as they stand on the plan.
func (c *Drawing) standObstacles() []carto.Obstacle {
	var all []carto.Obstacle
	for _, d := range c.Stands {
		all = append(all, carto.Obstacle{Outline: d.Body})
	}
	return all
}

// floorOutlines are the floors of the rooms, which the map is read on.
func floorOutlines(s *plan.Setup, v layout.View) []carto.Obstacle {
	var all []carto.Obstacle
	for i := range s.Rooms {
		for _, part := range s.Rooms[i].Parts {
			all = append(all, carto.Obstacle{Outline: v.All(part)})
		}
	}
	return all
}
