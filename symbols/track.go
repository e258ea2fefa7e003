package symbols

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/symbols/ink"
)

// The sleepers of a track reach so far past its rails, mm; mostMitre is how many times the half of its gauge the outer rail reaches out
// at a corner.
const (
	sleeperOver = 0.7
	mostMitre   = 2.0
)

// Rails are the two rails of a track through some corners, mm, so far from its middle line to either side.
func Rails(path []r2.Vec, half float64) (rails [2][]r2.Vec) {
	side := func(a, b r2.Vec) r2.Vec {
		way := r2.Unit(r2.Sub(b, a))
		return r2.Vec{X: way.Y, Y: -way.X}
	}
	for i, p := range path {
		before, after := side(path[max(i-1, 0)], path[max(i, 1)]), side(path[min(i, len(path)-2)], path[min(i+1, len(path)-1)])
		out := r2.Add(before, after)
		if n := r2.Norm(out); n > 1e-6 {
			out = r2.Scale(1/n, out)
		} else {
			out = before // it turns back
		}
		out = r2.Scale(half*math.Min(mostMitre, 1/math.Max(r2.Dot(out, before), 1e-6)), out)
		rails[0], rails[1] = append(rails[0], r2.Sub(p, out)), append(rails[1], r2.Add(p, out))
	}
	return rails
}

// DrawTrack draws a piece of the two rails of a track, and sleepers across them: at each a place of its middle line and the way on.
func DrawTrack(c ink.Canvas, k Look, rails [][]r2.Vec, sleepers []WalkTick, half float64) {
	b := brush{c, k}.on(ink.People)
	for _, rail := range rails {
		b.Polyline(b.pen(Fine), rail...)
	}
	var across [][2]r2.Vec
	for _, t := range sleepers {
		side := r2.Scale(half+sleeperOver, r2.Vec{X: -t.Way.Y, Y: t.Way.X})
		across = append(across, [2]r2.Vec{r2.Add(t.At, side), r2.Sub(t.At, side)})
	}
	if len(across) > 0 {
		b.Segments(b.pen(Fine), across...)
	}
}

// exampleTrack is a straight track.
func exampleTrack(c ink.Canvas, k Look, s float64) Drawn {
	half, long := 0.15*s, s/2
	path := []r2.Vec{vec(-long, 0), vec(long, 0)}
	rails := Rails(path, half)
	DrawTrack(c, k, rails[:], []WalkTick{{path[0], vec(1, 0)}, {vec(0, 0), vec(1, 0)}, {path[1], vec(1, 0)}}, half)
	b := brush{c, k}.on(ink.People)
	return Drawn{Body: b.outline(-long, -half-sleeperOver, long, half+sleeperOver)}
}

// lineDash is a long dash and two dots (ISO 128-2 no. 05), mm; lineEnd is half of the bar at an end of the line of action, mm.
var lineDash = []float64{5, 1, 0.4, 1, 0.4, 1}

const lineEnd = 1.6

// DrawLine draws a piece of the line of action, with a bar across it where it ends with the piece.
func DrawLine(c ink.Canvas, k Look, a, b r2.Vec, endsAtA, endsAtB bool) {
	on := brush{c, k}.on(ink.People)
	on.Polyline(on.pen(Line).Dashed(lineDash...), a, b)
	way := r2.Unit(r2.Sub(b, a))
	bar := r2.Scale(lineEnd, r2.Vec{X: -way.Y, Y: way.X})
	if endsAtA {
		on.Segments(on.pen(Line), [2]r2.Vec{r2.Add(a, bar), r2.Sub(a, bar)})
	}
	if endsAtB {
		on.Segments(on.pen(Line), [2]r2.Vec{r2.Add(b, bar), r2.Sub(b, bar)})
	}
}

// exampleLine is a line of action through two heads.
func exampleLine(c ink.Canvas, k Look, s float64) Drawn {
	long, head := 0.55*s, 0.07*s
	DrawLine(c, k, vec(-long, 0), vec(long, 0), true, true)
	b := brush{c, k}.on(ink.People)
	for _, x := range [...]float64{-long / 2, long / 2} {
		b.Circle(b.open(Line), vec(x, 0), head)
	}
	return Drawn{Body: b.outline(-long, -head, long, head)}
}
