package draw

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/symbols/ink"
)

// roomSizes letters how large the rooms are.
type roomSizes struct{ *Drawing }

// Lined is on which sides of a plan the dimension lines of its rooms want room: where a wall stands at its edge. Where
// walls stand at its left and right, either may be wanted.
func Lined(s *plan.Setup, extent r2.Box) (side r2.Vec) {
	const close = 0.05 // m
	g := box.Bounds{}
	for i := range s.Walls {
		g.All(s.Walls[i].Outline, 0)
	}
	if !g.Any {
		return side
	}
	at := func(a, b float64) bool { return math.Abs(a-b) < close }
	switch left, right := at(g.B.Min.X, extent.Min.X), at(g.B.Max.X, extent.Max.X); {
	case right && !left:
		side.X = 1
	case left && !right:
		side.X = -1
	}
	switch {
	case at(g.B.Min.Y, extent.Min.Y):
		side.Y = -1
	case at(g.B.Max.Y, extent.Max.Y):
		side.Y = 1
	}
	return side
}

// drawRoomSizes letters the clear width and depth of every room along dimension lines outside its
// walls, where they find room there, and returns the paper they take.
func (c roomSizes) drawRoomSizes(p Pad, v layout.View, taken []carto.Obstacle) []carto.Obstacle {
	var own []carto.Obstacle
	for _, d := range c.roomSizes(v, taken) {
		d.draw(p.On(ink.Notes).of("room:"+d.room, ""))
		c.used("size")
		own = append(own, d.paper(p)...)
	}
	return own
}

// roomSizes are the dimension lines of the rooms that find a place clear of what is taken.
func (c roomSizes) roomSizes(v layout.View, taken []carto.Obstacle) []dimension {
	var all []dimension
	if c.Second {
		return nil
	}
	taken = slices.Clone(taken)
	for i := range c.In.Setup.Rooms {
		if lines, turned := c.turnedSizes(v, &c.In.Setup.Rooms[i], taken); turned {
			all = append(all, lines...)
			for _, d := range lines {
				taken = append(taken, d.figure(c.Pad), carto.Obstacle{Outline: []r2.Vec{d.from, d.to}})
			}
			continue
		}
		for _, upright := range [...]bool{false, true} {
			if d, ok := c.roomSize(v, &c.In.Setup.Rooms[i], upright, taken); ok {
				d.room = c.In.Setup.Rooms[i].Name
				all = append(all, d)
				taken = append(taken, d.figure(c.Pad), carto.Obstacle{Outline: []r2.Vec{d.from, d.to}})
			}
		}
	}
	return all
}

// spared are the places that the dimension lines of rooms would like best, which labels should
// leave to them.
func (c roomSizes) spared(v layout.View, taken []carto.Obstacle) []carto.Obstacle {
	var all []carto.Obstacle
	for _, d := range c.roomSizes(v, taken) {
		figure := d.figure(c.Pad)
		figure.Cost, figure.Leaders = costSize, false
		all = append(all, figure, soft(costSize, d.from, d.to))
	}
	return all
}

// roomSize is the dimension line of a room on its quiet side: below or above it, or at its left or right, where it
// crosses least; closer to the wall only where neither side has room.
func (c roomSizes) roomSize(v layout.View, r *plan.Room, upright bool, taken []carto.Obstacle) (best dimension, found bool) {
	in, out := roomBoxes(c.In.Setup, v, r)
	cheapest := math.Inf(1)
	for _, far := range [...]bool{false, true} {
		first, tries := sizeOff, sizeTries
		if found {
			break
		}
		if far {
			first, tries = sizeLeast, 3
		}
		for _, up := range [...]bool{false, true} {
			for n := range tries {
				d := sizeLine(in, out, upright, up, first+sizePitch*float64(n))
				d.words = c.Length(r2.Norm(r2.Sub(d.to, d.from)) / v.Scale)
				if !c.fits(v, &d, taken) {
					continue
				}
				if cost := sizeCross*d.crossed(taken) + sizePitch*float64(n); cost < cheapest {
					best, cheapest, found = d, cost, true
				}
				break
			}
		}
	}
	return best, found
}

// sizeLine is the dimension line of a room so far from its walls: below it or up above, at its left or at its right.
func sizeLine(in, out r2.Box, upright, up bool, off float64) dimension {
	switch {
	case upright && up:
		return dimension{from: box.At(out.Max.X+off, in.Min.Y), to: box.At(out.Max.X+off, in.Max.Y), foot: out.Max.X, angle: 90}
	case upright:
		return dimension{from: box.At(out.Min.X-off, in.Min.Y), to: box.At(out.Min.X-off, in.Max.Y), foot: out.Min.X, angle: 90}
	case up:
		return dimension{from: box.At(in.Min.X, out.Max.Y+off), to: box.At(in.Max.X, out.Max.Y+off), foot: out.Max.Y}
	}
	return dimension{from: box.At(in.Min.X, out.Min.Y-off), to: box.At(in.Max.X, out.Min.Y-off), foot: out.Min.Y}
}

// fits says whether a dimension line has a place, with its figure.
func (c roomSizes) fits(v layout.View, d *dimension, taken []carto.Obstacle) bool {
	half := c.Pad.plan().boxOf("0").Y / 2
	panel := box.Inset(v.Panel, half, half)
	return box.Contains(panel, d.from) && box.Contains(panel, d.to) && outdoors(c.In.Setup, v, d) && d.clear(taken) && d.letter(c.Pad, taken)
}

// crossed is how many lines of the plan a dimension line crosses.
func (d *dimension) crossed(taken []carto.Obstacle) (n float64) {
	line := []r2.Vec{d.from, d.to}
	for _, o := range taken {
		if len(o.Outline) == 2 && carto.Overlap(line, o.Outline) {
			n++
		}
	}
	return n
}

// roomBoxes are the boxes on paper round the inside of a room and round its walls.
func roomBoxes(s *plan.Setup, v layout.View, r *plan.Room) (in, out r2.Box) {
	g := box.Bounds{}
	g.All(v.All(r.Inside), 0)
	in = g.Box()
	for i := range s.Walls {
		if w := &s.Walls[i]; w.Room == r.Name {
			g.All(v.All(w.Outline), 0)
		}
	}
	return in, g.Box()
}
