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

// Where the dimension lines of a room stand outside its walls, mm.
const (
	sizeOff   = 2.5 // the first from the wall
	sizePitch = 2.6 // from one try to the next
	sizeTries = 8
	sizeTick  = 1.6 // of the stroke across an end, along each axis
)

// drawRoomSizes letters the clear width and depth of every room along dimension lines outside its
// walls, where they find room there, and returns the paper they take.
func (c roomSizes) drawRoomSizes(p Pad, v layout.View, taken []carto.Obstacle) []carto.Obstacle {
	var own []carto.Obstacle
	for _, d := range c.roomSizes(v, taken) {
		d.draw(p.On(ink.Notes).of("room:"+d.room, ""))
		c.used("size")
		own = append(own, d.figure(p), carto.Obstacle{Outline: []r2.Vec{d.from, d.to}})
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
		figure.Cost, figure.Leaders = costThrow, false
		all = append(all, figure, soft(costThrow, d.from, d.to))
	}
	return all
}

// roomSize is the first dimension line of a room that is clear: below it and then above, or at its left
// and then at its right.
func (c roomSizes) roomSize(v layout.View, r *plan.Room, upright bool, taken []carto.Obstacle) (dimension, bool) {
	in, out := roomBoxes(c.In.Setup, v, r)
	panel := box.Inset(v.Panel, 1.6, 1.6) // half the figure
	for n := range sizeTries {
		off := sizeOff + sizePitch*float64(n)
		for _, d := range [...]dimension{
			{from: box.At(in.Min.X, out.Min.Y-off), to: box.At(in.Max.X, out.Min.Y-off), foot: out.Min.Y},
			{from: box.At(in.Min.X, out.Max.Y+off), to: box.At(in.Max.X, out.Max.Y+off), foot: out.Max.Y},
			{from: box.At(out.Min.X-off, in.Min.Y), to: box.At(out.Min.X-off, in.Max.Y), foot: out.Min.X, angle: 90},
			{from: box.At(out.Max.X+off, in.Min.Y), to: box.At(out.Max.X+off, in.Max.Y), foot: out.Max.X, angle: 90},
		} {
			if (d.angle == 90) != upright {
				continue
			}
			d.words = c.Length(r2.Norm(r2.Sub(d.to, d.from)) / v.Scale)
			if !box.Contains(panel, d.from) || !box.Contains(panel, d.to) || !outdoors(c.In.Setup, v, &d) || !d.clear(taken) {
				continue
			}
			if d.letter(c.Pad, taken) {
				return d, true
			}
		}
	}
	return dimension{}, false
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

// outdoors says whether a dimension line runs over no floor.
func outdoors(s *plan.Setup, v layout.View, d *dimension) bool {
	for share := 0.02; share < 1; share += 0.04 {
		if onFloor(s, v.Metres(box.Interpolate(d.from, d.to, share))) {
			return false
		}
	}
	return true
}

// dimension is a level or upright dimension line, mm.
type dimension struct {
	room     string
	from, to r2.Vec
	words    string
	angle    float64 // of the lettering, 0 or 90
	off      float64 // of its middle from that of the line, as a share of its length
	foot     float64 // where the lines begin that extend what is measured up to it; 0: there are none
}

// letter finds a place for the figure that meets nothing, rather about the middle of the line.
func (d *dimension) letter(p Pad, taken []carto.Obstacle) bool {
	half := (p.Small().Width(d.words)/2 + 3) / r2.Norm(r2.Sub(d.to, d.from))
	for _, d.off = range [...]float64{0, -0.1, 0.1, -0.2, 0.2, -0.3, 0.3, -0.4, 0.4} {
		if math.Abs(d.off)+half <= 0.5 && !meets(d.figure(p), taken) {
			return true
		}
	}
	return false
}

// clear says whether none of the lines meets a symbol or a label.
func (d *dimension) clear(taken []carto.Obstacle) bool {
	for _, line := range [...][]r2.Vec{{d.from, d.to}, {d.root(d.from), d.from}, {d.root(d.to), d.to}} {
		for _, o := range taken {
			if len(o.Outline) > 2 && o.Leaders && meets(carto.Obstacle{Outline: line}, []carto.Obstacle{o}) {
				return false
			}
		}
	}
	return true
}

// figure is the paper that the lettering takes.
func (d *dimension) figure(p Pad) carto.Obstacle {
	return carto.Obstacle{Outline: ink.TurnedBox(d.middle(), p.Small().boxOf(d.words), d.angle), Leaders: true}
}

// middle is that of the figure.
func (d *dimension) middle() r2.Vec { return box.Interpolate(d.from, d.to, 0.5+d.off) }

// draw draws the line with a stroke across each end, broken for its figure.
func (d *dimension) draw(p Pad) {
	st := p.Small()
	gap := (st.Width(d.words)/2 + 1) / r2.Norm(r2.Sub(d.to, d.from))
	if gap < 0.5 {
		p.Line(Hair, p.Look.Ink, d.from, box.Interpolate(d.from, d.to, 0.5+d.off-gap))
		p.Line(Hair, p.Look.Ink, box.Interpolate(d.from, d.to, 0.5+d.off+gap), d.to)
	}
	tick := r2.Scale(sizeTick/math.Sqrt2, ink.Direction(box.Bearing(r2.Sub(d.to, d.from))+45))
	for _, end := range [...]r2.Vec{d.from, d.to} {
		p.Line(Thin, p.Look.Ink, r2.Sub(end, tick), r2.Add(end, tick))
		if d.foot != 0 {
			p.Line(Hair, p.Look.Ink, box.Interpolate(d.root(end), end, 0.25), end)
		}
	}
	p.turned(underMiddle(d.middle(), st.Cap, d.angle), d.words, st, ink.Centre, d.angle, nil)
}

// root is where the line that extends what is measured up to an end begins.
func (d *dimension) root(end r2.Vec) r2.Vec {
	if d.angle == 90 {
		return box.At(d.foot, end.Y)
	}
	return box.At(end.X, d.foot)
}
