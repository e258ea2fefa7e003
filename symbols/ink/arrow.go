package ink

import (
	"gonum.org/v1/gonum/spatial/r2"
)

// ArrowHead is a solid head whose tip is at p and that points along a bearing: length long, a
// third as wide.
func ArrowHead(tip r2.Vec, bearing, length float64) Path {
	back, across := Direction(bearing), Direction(bearing+90)
	base := r2.Sub(tip, r2.Scale(length, back))
	return Polygon(tip, r2.Add(base, r2.Scale(-length/6, across)), r2.Add(base, r2.Scale(length/6, across)))
}

// Ticks are short strokes of a length across a line, spacing apart from half a spacing on, to the
// right of its direction (to the left where length is negative).
func Ticks(points []r2.Vec, spacing, length float64) [][2]r2.Vec {
	if !(spacing > 0) {
		return nil
	}
	var ticks [][2]r2.Vec
	next := spacing / 2 // from the start of the segment at hand
	for i := range len(points) - 1 {
		p, q := points[i], points[i+1]
		run := r2.Norm(r2.Sub(q, p))
		if run == 0 {
			continue
		}
		step := r2.Scale(1/run, r2.Sub(q, p))
		right := r2.Vec{X: step.Y, Y: -step.X}
		for ; next <= run; next += spacing {
			foot := r2.Add(p, r2.Scale(next, step))
			ticks = append(ticks, [2]r2.Vec{foot, r2.Add(foot, r2.Scale(length, right))})
		}
		next -= run
	}
	return ticks
}
