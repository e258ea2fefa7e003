package symbols

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/symbols/ink"
)

// Dressing is a curtain or a blind from above: where it hangs, mm on paper. Blind: slats on cords.
type Dressing struct {
	A, B  r2.Vec
	Blind bool
}

// The folds of a curtain and the slats of a blind as they are drawn, mm.
const (
	fold      = 1.6
	foldDeep  = 0.35
	slatApart = 1.2
	slatDeep  = 0.7
)

// DrawDressing draws a curtain as the line of its folds, and a blind as a row of slats.
func DrawDressing(c ink.Canvas, k Look, d Dressing) {
	b := brush{c, k}.on(ink.Walls)
	way := r2.Sub(d.B, d.A)
	length := r2.Norm(way)
	if length == 0 {
		return
	}
	along := r2.Scale(1/length, way)
	across := r2.Vec{X: -along.Y, Y: along.X}
	place := func(x, y float64) r2.Vec { return r2.Add(d.A, r2.Add(r2.Scale(x, along), r2.Scale(y, across))) }
	if d.Blind {
		b.Polyline(b.pen(Hair), d.A, d.B)
		n := max(2, int(length/slatApart))
		for i := range n + 1 {
			x := length * float64(i) / float64(n)
			b.Segments(b.pen(Line), [2]r2.Vec{place(x, -slatDeep/2), place(x, slatDeep/2)})
		}
		return
	}
	n := max(1, int(math.Round(length/fold)))
	const steps = 8 // of a fold
	points := make([]r2.Vec, 0, n*steps+1)
	for i := range n*steps + 1 {
		turn := 2 * math.Pi * float64(i) / steps
		points = append(points, place(length*float64(i)/float64(n*steps), foldDeep*math.Sin(turn)))
	}
	b.Polyline(b.pen(Line), points...)
}
