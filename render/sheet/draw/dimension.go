package draw

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/symbols/ink"
)

// Where the dimension lines of a room stand outside its walls, mm.
const (
	sizeOff   = 8.0 // from the wall
	sizeLeast = 2.2 // where there is no more room
	sizePitch = 2.6 // from one try to the next
	sizeTries = 12
	sizeCross = 9.0 // what it costs to cross a line, as mm of way from the wall
	sizeTick  = 1.6 // of the stroke across an end, along each axis
)

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
	fine     bool    // quieter than the others
	foot     float64 // where the lines begin that extend what is measured up to it; 0: there are none
}

// letter finds a place for the figure that meets nothing, rather about the middle of the line.
func (d *dimension) letter(p Pad, taken []carto.Obstacle) bool {
	half := (d.gap(p)/2 + 2) / r2.Norm(r2.Sub(d.to, d.from))
	for _, d.off = range [...]float64{0, -0.1, 0.1, -0.2, 0.2, -0.3, 0.3, -0.4, 0.4} {
		if math.Abs(d.off)+half <= 0.5 && !meets(d.figure(p), taken) {
			return true
		}
	}
	return false
}

// gap is how much of the line the figure takes, mm: along it, or across it where it stands level in a line that does not.
func (d *dimension) gap(p Pad) float64 {
	const air = 1.0
	st := p.plan()
	if sin, cos := math.Sincos((d.angle - carto.Upright(r2.Sub(d.to, d.from))) * math.Pi / 180); math.Abs(sin) > 0.01 {
		return math.Min((st.Width(d.words)+2*air)/math.Max(math.Abs(cos), 1e-9), (st.Cap+2*air)/math.Abs(sin))
	}
	return st.Width(d.words) + 2*air
}

// strokes are its line and those that extend what is measured up to it.
func (d *dimension) strokes() [][]r2.Vec {
	lines := [][]r2.Vec{{d.from, d.to}}
	if d.foot != 0 {
		lines = append(lines, []r2.Vec{d.root(d.from), d.from}, []r2.Vec{d.root(d.to), d.to})
	}
	return lines
}

// paper is what it takes, figure and lines.
func (d *dimension) paper(p Pad) []carto.Obstacle {
	taken := []carto.Obstacle{d.figure(p)}
	for _, line := range d.strokes() {
		taken = append(taken, carto.Obstacle{Outline: line})
	}
	return taken
}

// runsAlong says whether most of its line lies beside another one, so close that the two are taken for one.
func (d *dimension) runsAlong(other carto.Obstacle) bool {
	for _, share := range [...]float64{0.25, 0.5, 0.75} {
		if carto.Distance(box.Interpolate(d.from, d.to, share), other.Outline[0], other.Outline[1]) > leastApart {
			return false
		}
	}
	return true
}

// leastApart is the distance, mm, beyond which two lines that run side by side look like two.
const leastApart = 2.0

// clear says whether none of the lines meets a symbol or a label.
func (d *dimension) clear(taken []carto.Obstacle) bool {
	for _, line := range d.strokes() {
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
	return carto.Obstacle{Outline: ink.TurnedBox(d.middle(), p.plan().boxOf(d.words), d.angle), Leaders: true}
}

// middle is that of the figure.
func (d *dimension) middle() r2.Vec { return box.Interpolate(d.from, d.to, 0.5+d.off) }

// draw draws the line with a stroke across each end, broken for its figure.
func (d *dimension) draw(p Pad) {
	st, colour, across := p.plan(), p.Look.Ink, Thin
	if d.fine {
		st, colour, across = p.place(), p.Look.Place, Hair
	}
	gap := d.gap(p) / 2 / r2.Norm(r2.Sub(d.to, d.from))
	if gap < 0.5 {
		p.Line(Hair, colour, d.from, box.Interpolate(d.from, d.to, 0.5+d.off-gap))
		p.Line(Hair, colour, box.Interpolate(d.from, d.to, 0.5+d.off+gap), d.to)
	}
	tick := r2.Scale(sizeTick/math.Sqrt2, ink.Direction(box.Bearing(r2.Sub(d.to, d.from))+45))
	for _, end := range [...]r2.Vec{d.from, d.to} {
		p.Line(across, colour, r2.Sub(end, tick), r2.Add(end, tick))
		if d.foot != 0 {
			p.Line(Hair, p.Look.Ink, box.Interpolate(d.root(end), end, 0.25), end)
		}
	}
	p.turned(underMiddle(d.middle(), st.Cap, d.angle), d.words, st, ink.Centre, d.angle, p.Look.rim())
}

// root is where the line that extends what is measured up to an end begins.
func (d *dimension) root(end r2.Vec) r2.Vec {
	if d.angle == 90 {
		return box.At(d.foot, end.Y)
	}
	return box.At(end.X, d.foot)
}
