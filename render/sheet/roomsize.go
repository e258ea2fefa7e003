package sheet

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/render/carto"
	"scrimshaw/symbols/ink"
)

// roomSizes letters how large the rooms are.
type roomSizes struct{ *drawing }

// Where the dimension lines of a room stand outside its walls, mm.
const (
	sizeOff   = 2.5 // the first from the wall
	sizePitch = 2.6 // from one try to the next
	sizeTries = 8
)

// drawRoomSizes letters the clear width and depth of every room along dimension lines outside its
// walls, where they find room there, and returns the paper they take.
func (c roomSizes) drawRoomSizes(p pad, v view, taken []carto.Obstacle) []carto.Obstacle {
	var own []carto.Obstacle
	for _, d := range c.roomSizes(v, taken) {
		d.draw(p.on(ink.Notes).of("room:"+d.room, ""))
		own = append(own, d.figure(p), carto.Obstacle{Outline: []r2.Vec{d.from, d.to}})
	}
	return own
}

// roomSizes are the dimension lines of the rooms that find a place clear of what is taken.
func (c roomSizes) roomSizes(v view, taken []carto.Obstacle) []dimension {
	var all []dimension
	taken = slices.Clone(taken)
	for i := range c.in.Setup.Rooms {
		for _, upright := range [...]bool{false, true} {
			if d, ok := c.roomSize(v, &c.in.Setup.Rooms[i], upright, taken); ok {
				d.room = c.in.Setup.Rooms[i].Name
				all = append(all, d)
				taken = append(taken, d.figure(c.p), carto.Obstacle{Outline: []r2.Vec{d.from, d.to}})
			}
		}
	}
	return all
}

// spared are the places that the dimension lines of rooms would like best, which labels had better
// leave to them.
func (c roomSizes) spared(v view, taken []carto.Obstacle) []carto.Obstacle {
	var all []carto.Obstacle
	for _, d := range c.roomSizes(v, taken) {
		figure := d.figure(c.p)
		figure.Cost, figure.Leaders = costThrow, false
		all = append(all, figure, soft(costThrow, d.from, d.to))
	}
	return all
}

// roomSize is the first dimension line of a room that is clear: below it and then above, or at its left
// and then at its right.
func (c roomSizes) roomSize(v view, r *plan.Room, upright bool, taken []carto.Obstacle) (dimension, bool) {
	in, out := roomBoxes(c.in.Setup, v, r)
	panel := inset(v.panel, 1.6, 1.6) // half the figure
	for n := range sizeTries {
		off := sizeOff + sizePitch*float64(n)
		for _, d := range [...]dimension{
			{from: at(in.Min.X, out.Min.Y-off), to: at(in.Max.X, out.Min.Y-off), foot: out.Min.Y},
			{from: at(in.Min.X, out.Max.Y+off), to: at(in.Max.X, out.Max.Y+off), foot: out.Max.Y},
			{from: at(out.Min.X-off, in.Min.Y), to: at(out.Min.X-off, in.Max.Y), foot: out.Min.X, angle: 90},
			{from: at(out.Max.X+off, in.Min.Y), to: at(out.Max.X+off, in.Max.Y), foot: out.Max.X, angle: 90},
		} {
			if (d.angle == 90) != upright {
				continue
			}
			d.words = c.length(r2.Norm(r2.Sub(d.to, d.from)) / v.scale)
			if !contains(panel, d.from) || !contains(panel, d.to) || !outdoors(c.in.Setup, v, &d) || !d.clear(taken) {
				continue
			}
			if d.letter(c.p, taken) {
				return d, true
			}
		}
	}
	return dimension{}, false
}

// roomBoxes are the boxes on paper round the inside of a room and round its walls.
func roomBoxes(s *plan.Setup, v view, r *plan.Room) (in, out r2.Box) {
	g := gatherer{}
	g.all(v.all(r.Inside), 0)
	in = g.box()
	for i := range s.Walls {
		if w := &s.Walls[i]; w.Room == r.Name {
			g.all(v.all(w.Outline), 0)
		}
	}
	return in, g.box()
}

// outdoors says whether a dimension line runs over no floor.
func outdoors(s *plan.Setup, v view, d *dimension) bool {
	for share := 0.02; share < 1; share += 0.04 {
		if onFloor(s, v.metres(mix(d.from, d.to, share))) {
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
func (d *dimension) letter(p pad, taken []carto.Obstacle) bool {
	half := (p.small().width(d.words)/2 + 3) / r2.Norm(r2.Sub(d.to, d.from))
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
func (d *dimension) figure(p pad) carto.Obstacle {
	return carto.Obstacle{Outline: turnedBox(d.middle(), p.small().boxOf(d.words), d.angle), Leaders: true}
}

// middle is that of the figure.
func (d *dimension) middle() r2.Vec { return mix(d.from, d.to, 0.5+d.off) }

// draw draws the line with a stroke across each end, broken for its figure.
func (d *dimension) draw(p pad) {
	st := p.small()
	gap := (st.width(d.words)/2 + 1) / r2.Norm(r2.Sub(d.to, d.from))
	if gap < 0.5 {
		p.line(hair, p.look.Ink, d.from, mix(d.from, d.to, 0.5+d.off-gap))
		p.line(hair, p.look.Ink, mix(d.from, d.to, 0.5+d.off+gap), d.to)
	}
	tick := r2.Scale(1.1, ink.Direction(bearing(r2.Sub(d.to, d.from))+45))
	for _, end := range [...]r2.Vec{d.from, d.to} {
		p.line(thin, p.look.Ink, r2.Sub(end, tick), r2.Add(end, tick))
		if d.foot != 0 {
			p.line(hair, p.look.Ink, mix(d.root(end), end, 0.25), end)
		}
	}
	p.turned(underMiddle(d.middle(), st.cap, d.angle), d.words, st, ink.Centre, d.angle, nil)
}

// root is where the line that extends what is measured up to an end begins.
func (d *dimension) root(end r2.Vec) r2.Vec {
	if d.angle == 90 {
		return at(d.foot, end.Y)
	}
	return at(end.X, d.foot)
}
