package symbols

import (
	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/symbols/ink"
)

// Hold is a way of holding a thing up.
type Hold string

// The holds. "" draws nothing.
const (
	Stand  Hold = "stand"
	Boom   Hold = "boom"
	Clamp  Hold = "clamp"
	Pole   Hold = "pole"
	Floor  Hold = "floor"
	Lift   Hold = "lift"
	Wall   Hold = "wall"
	InHand Hold = "hand"
	Hung   Hold = "ceiling"
)

// Holds lists them in the order of a legend.
func Holds() []Hold { return []Hold{Stand, Boom, Clamp, Pole, Floor, Lift, Wall, InHand, Hung} }

// Mount is what carries a light or grip. Lengths are mm on paper.
type Mount struct {
	Hold      Hold
	Base      r2.Vec    // where it stands, or holds on
	Footprint float64   // true diameter of the ground a stand's legs take, width of a lift, or of what hangs from the ceiling
	Depth     float64   // of a lift, along its bearing
	Ends      [2]r2.Vec // of a pole, at the walls
}

// mount draws what carries a thing at p that points along a bearing, and returns what it covers.
func (b brush) mount(m Mount, p r2.Vec, bearing float64) [][]r2.Vec {
	switch m.Hold {
	case Stand:
		return b.stand(m, bearing)
	case Boom:
		return b.boom(m, p)
	case Clamp:
		return b.clamp(m, p, bearing)
	case Pole:
		return b.pole(m, p)
	case Floor:
		return b.floor(m, bearing)
	case Lift:
		return b.lift(m, bearing)
	case Wall:
		return b.wall(m, p, bearing)
	case Hung:
		return b.hung(m, p, bearing)
	}
	return nil // a hand reaches from behind the body, which has to be drawn first
}

// stand is the circle of ground that the legs take, one leg under the load.
func (b brush) stand(m Mount, bearing float64) [][]r2.Vec {
	b = b.at(m.Base, bearing)
	r := max(m.Footprint/2, 1.6)
	b.Circle(b.pen(Hair).Dashed(0.9, 0.6), vec(0, 0), r)
	for _, leg := range []float64{0, 120, 240} {
		b.Polyline(b.pen(Fine), vec(0, 0), r2.Scale(r, ink.Direction(leg)))
	}
	b.Circle(b.solid(), vec(0, 0), 0.5)
	return [][]r2.Vec{b.outline(-r, -r, r, r)}
}

// toward returns the brush at a, pointing at c, and how far that is; where they are one it keeps
// the bearing.
func (b brush) toward(a, c r2.Vec, bearing float64) (brush, float64) {
	length := r2.Norm(r2.Sub(c, a))
	if length > 1e-9 {
		bearing = ink.Bearing(a, c)
	}
	return b.at(a, bearing), length
}

// BoomTail is how far the weight of a boom lies behind its stand as it is drawn, as a share of its arm.
const BoomTail = 0.3

// boom is a stand with an arm over its pivot and a weight at the arm's far end.
func (b brush) boom(m Mount, p r2.Vec) [][]r2.Vec {
	rest := b.stand(m, ink.Bearing(m.Base, p))
	arm, length := b.toward(m.Base, p, 0)
	tail := min(max(BoomTail*length, 3), 8)
	arm.Polyline(arm.pen(Bold), vec(0, -tail), vec(0, length))
	arm.box(arm.solid(), 1.7, -tail-1.1, -tail+0.7)
	arm.Circle(arm.open(Line), vec(0, 0), 0.85)
	return append(rest, arm.outline(-0.9, -tail-1.1, 0.9, length))
}

// clamp is a pair of jaws, with an arm to the thing where that is off.
func (b brush) clamp(m Mount, p r2.Vec, bearing float64) [][]r2.Vec {
	arm, length := b.toward(m.Base, p, bearing)
	const jaw, deep = 1.5, 2.4
	length = max(length, 1.6)
	arm.Polyline(arm.pen(Line), vec(0, 0), vec(0, length))
	arm.Polyline(arm.pen(Heavy), vec(-jaw, -deep), vec(-jaw, 0), vec(jaw, 0), vec(jaw, -deep))
	arm.Polyline(arm.pen(Line), vec(-jaw-1.1, -deep+0.6), vec(-0.4, -deep+0.6)) // the screw
	return [][]r2.Vec{arm.outline(-jaw-1.1, -deep, jaw+0.4, length)}
}

// pole spans from wall to wall, with a pad at each end and a collar where the thing hangs.
func (b brush) pole(m Mount, p r2.Vec) [][]r2.Vec {
	pole, length := b.toward(m.Ends[0], m.Ends[1], 0)
	pole.box(pole.open(Fine), 0.9, 0, length)
	for _, y := range []float64{0.35, length - 0.35} {
		pole.Polyline(pole.pen(Heavy), vec(-1.3, y), vec(1.3, y))
	}
	along := r2.Dot(r2.Sub(p, m.Ends[0]), r2.Scale(1/max(length, 1e-9), r2.Sub(m.Ends[1], m.Ends[0])))
	foot := min(max(along, 0), length)
	pole.box(pole.solid(), 1.7, foot-0.7, foot+0.7)
	return [][]r2.Vec{pole.outline(-1.3, 0, 1.3, length)}
}

// floor is a low three-footed plate.
func (b brush) floor(m Mount, bearing float64) [][]r2.Vec {
	b = b.at(m.Base, bearing)
	r := max(m.Footprint/2, 2.8)
	var ring []r2.Vec
	for _, foot := range []float64{60, 180, 300} {
		ring = append(ring, r2.Scale(r, ink.Direction(foot)))
	}
	b.Polygon(b.open(Fine), ring...)
	for _, p := range ring {
		b.Circle(b.solid(), p, 0.45)
	}
	return [][]r2.Vec{b.outline(-r, -r, r, r/2)}
}

// lift is a platform on four wheels with its scissors.
func (b brush) lift(m Mount, bearing float64) [][]r2.Vec {
	b = b.at(m.Base, bearing)
	w, h := max(m.Footprint, 5), max(m.Depth, 5)
	for _, x := range []float64{-w / 2, w / 2} {
		for _, y := range []float64{-0.36 * h, 0.36 * h} {
			b.Rect(b.solid(), vec(x-0.35, y-0.7), vec(x+0.35, y+0.7))
		}
	}
	b.box(b.open(Line), w, -h/2, h/2)
	b.Segments(b.pen(Hair), [2]r2.Vec{vec(-w/2, -h/2), vec(w/2, h/2)}, [2]r2.Vec{vec(-w/2, h/2), vec(w/2, -h/2)})
	return [][]r2.Vec{b.outline(-w/2-0.35, -h/2, w/2+0.35, h/2)}
}

// wall is a plate, hatched as what it is fixed to, and a stem.
func (b brush) wall(m Mount, p r2.Vec, bearing float64) [][]r2.Vec {
	stem, length := b.toward(m.Base, p, bearing)
	length = max(length, 1.4)
	stem.Polyline(stem.pen(Line), vec(0, 0), vec(0, length))
	const wide = 4.4
	stem.box(stem.solid(), wide, 0, 0.6)
	stem.Ticks(stem.pen(Fine), wide/5, 0.9, vec(-wide/2, 0), vec(wide/2, 0))
	return [][]r2.Vec{stem.outline(-wide/2, -0.9, wide/2, length)}
}

// hung is a square about what hangs from the ceiling, in the dashes of what lies over the cut, open at
// its corners.
func (b brush) hung(m Mount, p r2.Vec, bearing float64) [][]r2.Vec {
	const clear, least = 1.0, 3.0
	r := max(m.Footprint/2+clear, least)
	pen := b.pen(Line).Dashed(1.4, 0.8)
	for side := range 4 {
		turned := b.at(p, bearing+90*float64(side))
		turned.Polyline(pen, vec(-r+clear, r), vec(r-clear, r))
		turned.Polyline(turned.pen(Fine), vec(0, r), vec(0, r+clear))
	}
	return [][]r2.Vec{b.at(p, bearing).outline(-r-clear, -r-clear, r+clear, r+clear)}
}

// hand is somebody behind a body that ends at y, both arms to it.
func (b brush) hand(y float64) []r2.Vec {
	const reach, wide, deep = 2.2, 2.5, 1.35
	at := vec(0, y-reach-deep)
	for _, side := range []float64{-1, 1} {
		b.Polyline(b.pen(Line), vec(side*0.8*wide, at.Y), vec(side*0.25, y))
	}
	b.Draw(b.open(Line), ellipse(at, wide, deep))
	b.Circle(b.open(Line), at, 0.9)
	return b.outline(-wide, at.Y-deep, wide, y)
}
