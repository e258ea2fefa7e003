package sheet

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/render/carto"
	"scrimshaw/symbols"
)

// bodies are the boxes of the marks that labels belong to.
func bodies(p pad, things []placeable) []carto.Obstacle {
	var all []carto.Obstacle
	for _, t := range things {
		all = append(all, hard(t.label(p).Body))
	}
	return all
}

// wallObstacles keep lettering off the walls; a leader may cross them.
func wallObstacles(s *plan.Setup, v view) []carto.Obstacle {
	var all []carto.Obstacle
	for i := range s.Walls {
		if w := &s.Walls[i]; w.Opening == "" {
			all = append(all, carto.Obstacle{Outline: v.all(w.Outline)})
		}
	}
	return all
}

// peopleObstacles keep lettering off people, legs and all. A leader may cross them but for the head:
// one that came to a side of a face from across it would point at the other.
func (c planDrawing) peopleObstacles(v view) []carto.Obstacle {
	var all []carto.Obstacle
	for i := range c.in.Setup.People {
		who := &c.in.Setup.People[i]
		head := symbols.Person{At: v.mm(who.At), Scale: v.scale}.Head()
		all = append(all, carto.Obstacle{Outline: c.people[who.Name].Body}, carto.Obstacle{Outline: head, Leaders: true})
	}
	return all
}

// furnitureObstacles keep the contours' figures off what is drawn over the contours.
func (c *drawing) furnitureObstacles() []carto.Obstacle {
	var all []carto.Obstacle
	for i, d := range c.furniture {
		if !mappedOver(c.in, &c.in.Setup.Furniture[i]) {
			all = append(all, carto.Obstacle{Outline: d.Body})
		}
	}
	return all
}

// What covering a line costs a label, as mm of leader, and what covering a square of floor does:
// a tag stands outside the room where its leader is no longer than that is worth.
const (
	costThrow = 10.0
	costBeam  = 9.0
	costTable = 6.0
	costEdge  = 4.0
	costRest  = 40.0
	costFloor = 3.0
	floorUnit = 8.0 // mm
)

// softLines are the lines that labels had better not cover: throws, beams, views, edges of
// furniture.
func (c planDrawing) softLines(v view, throws []throw) []carto.Obstacle {
	var all []carto.Obstacle
	for i := range throws {
		all = append(all, soft(costThrow, throws[i].from, throws[i].to))
	}
	for _, o := range (beams{c.drawing}).rays(v) {
		o.Cost = costBeam
		all = append(all, o)
	}
	for _, o := range c.furnitureObstacles() {
		o.Cost = costTable
		all = append(all, o)
		for i, q := range o.Outline {
			all = append(all, soft(costEdge, q, o.Outline[(i+1)%len(o.Outline)]))
		}
	}
	return append(all, floorSquares(c.in.Setup, v)...)
}

// rays are the sides of beams and views within the panel.
func (c beams) rays(v view) []carto.Obstacle {
	var lines [][]r2.Vec
	for i := range c.in.Beams {
		if l := lightNamed(c.in.Setup, c.in.Beams[i].Light); l != nil {
			half, tenth := c.beamLines(l, &c.in.Beams[i], v)
			lines = append(append(lines, half...), tenth...)
		}
	}
	for i := range c.in.Views {
		lines = append(lines, c.sides(&c.in.Views[i])...)
	}
	var all []carto.Obstacle
	for _, line := range lines {
		for _, piece := range v.seen(line) {
			for i := 1; i < len(piece); i++ {
				all = append(all, carto.Obstacle{Outline: piece[i-1 : i+1]})
			}
		}
	}
	return all
}

// floorSquares are squares of paper over the floor of rooms, which the map is read on.
func floorSquares(s *plan.Setup, v view) []carto.Obstacle {
	var all []carto.Obstacle
	for x := v.panel.Min.X; x < v.panel.Max.X; x += floorUnit {
		for y := v.panel.Min.Y; y < v.panel.Max.Y; y += floorUnit {
			square := box(x, y, x+floorUnit, y+floorUnit)
			if onFloor(s, v.metres(middle(square.Min, square.Max))) {
				all = append(all, carto.Obstacle{Outline: corners(square), Cost: costFloor})
			}
		}
	}
	return all
}

// onFloor says whether a point in plan lies in a room.
func onFloor(s *plan.Setup, p r2.Vec) bool {
	return slices.ContainsFunc(s.Rooms, func(r plan.Room) bool { return inRing(r.Inside, p) })
}

// throwObstacles keep labels off the lettering of the throws.
func throwObstacles(p pad, throws []throw) []carto.Obstacle {
	var all []carto.Obstacle
	st := p.small()
	for i := range throws {
		t := &throws[i]
		all = append(all, carto.Obstacle{Outline: turnedBox(mix(t.from, t.to, t.at), st.boxOf(t.words), t.angle), Leaders: true})
	}
	return all
}

// throwLines keep names off the dimension lines.
func throwLines(throws []throw) []carto.Obstacle {
	var all []carto.Obstacle
	for i := range throws {
		all = append(all, carto.Obstacle{Outline: []r2.Vec{throws[i].from, throws[i].to}})
	}
	return all
}
