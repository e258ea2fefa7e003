package symbols

import (
	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/symbols/ink"
)

// Lengths of a cable, mm: its dots and the gaps between them.
const (
	cableDot = 0.45
	cableGap = 0.75
)

// outletWide is the width of an outlet, mm.
const outletWide = 2.6

// DrawCable draws a piece of a cable on the floor: a dotted line.
func DrawCable(c ink.Canvas, k Look, path []r2.Vec) {
	b := brush{c, k}.on(ink.Cables)
	b.Polyline(b.pen(Line).Dashed(cableDot, cableGap), path...)
}

// DrawOutlet draws where cables come from: a round face with the two holes of a socket.
func DrawOutlet(c ink.Canvas, k Look, at r2.Vec) Drawn {
	b := brush{c, k}.on(ink.Cables).at(at, 0)
	const r = outletWide / 2
	b.Circle(b.open(Line), vec(0, 0), r-Line/2)
	b.Circle(b.solid(), vec(-0.42*r, 0), 0.27)
	b.Circle(b.solid(), vec(0.42*r, 0), 0.27)
	return Drawn{Body: b.outline(-r, -r, r, r)}
}

// exampleCable is a cable from its outlet round a corner.
func exampleCable(c ink.Canvas, k Look, s float64) Drawn {
	step := s / 4
	DrawCable(c, k, []r2.Vec{vec(-1.5*step, -step), vec(0.4*step, -step), vec(1.5*step, step)})
	DrawOutlet(c, k, vec(-1.5*step, -step))
	b := brush{c, k}.on(ink.Cables)
	return Drawn{Body: b.outline(-1.5*step-outletWide/2, -step-outletWide/2, 1.5*step, step)}
}
