package symbols

import (
	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/symbols/ink"
)

// markLong is the length of the bar and of the stem of a mark, mm.
const markLong = 3.8

// DrawMark draws where somebody comes to a stop: the two strips of tape on the floor, a bar before the toes and a stem between
// the feet. Bearing is the way that they face.
func DrawMark(c ink.Canvas, k Look, at r2.Vec, bearing float64) Drawn {
	b := brush{c, k}.on(ink.People).at(at, bearing)
	const half = markLong / 2
	b.Segments(b.pen(Bold), [2]r2.Vec{vec(-half, half), vec(half, half)}, [2]r2.Vec{vec(0, half), vec(0, -half)})
	return Drawn{Body: b.outline(-half, -half, half, half+Bold/2)}
}

// Lengths of a walk, mm: its dashes and gaps, its ticks to either side, its head.
const (
	walkDash = 2.2
	walkGap  = 1.0
	walkTick = 0.9
	walkHead = 2.8
)

// WalkTick is where a walk is read, and the way on from there.
type WalkTick struct {
	At  r2.Vec // mm
	Way r2.Vec // unit vector
}

// DrawWalk draws a piece of the way that somebody walks, with a tick across it at each place that is read, and a head where the
// walk ends with the piece.
func DrawWalk(c ink.Canvas, k Look, path []r2.Vec, ticks []WalkTick, ends bool) {
	b := brush{c, k}.on(ink.People)
	b.Polyline(b.pen(Fine).Dashed(walkDash, walkGap), path...)
	var across [][2]r2.Vec
	for _, t := range ticks {
		side := r2.Scale(walkTick, r2.Vec{X: -t.Way.Y, Y: t.Way.X})
		across = append(across, [2]r2.Vec{r2.Add(t.At, side), r2.Sub(t.At, side)})
	}
	if len(across) > 0 {
		b.Segments(b.pen(Fine), across...)
	}
	if n := len(path); ends && n > 1 && path[n-1] != path[n-2] {
		way := r2.Unit(r2.Sub(path[n-1], path[n-2]))
		back, side := r2.Sub(path[n-1], r2.Scale(walkHead, way)), r2.Scale(walkHead/3, r2.Vec{X: -way.Y, Y: way.X})
		b.Polygon(b.solid(), path[n-1], r2.Add(back, side), r2.Sub(back, side))
	}
}

// exampleWalk is a walk round a corner.
func exampleWalk(c ink.Canvas, k Look, s float64) Drawn {
	step := s / 4
	path := []r2.Vec{vec(-1.5*step, -step), vec(0, -step), vec(1.5*step, step)}
	way := r2.Unit(r2.Sub(path[2], path[1]))
	DrawWalk(c, k, path, []WalkTick{{path[0], vec(1, 0)}, {vec(-step/2, -step), vec(1, 0)}, {between(path[1], path[2], 0.4), way}}, true)
	b := brush{c, k}.on(ink.People)
	return Drawn{Body: b.outline(-1.5*step-Fine, -step-walkTick-Fine, 1.5*step+walkTick, step+walkTick)}
}
