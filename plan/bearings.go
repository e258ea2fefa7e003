package plan

import (
	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/plane"
)

// directed is the unit vector of a bearing and a tilt above the horizontal.
func directed(pan, tilt float64) r3.Vec {
	flat := plane.Direction(pan)
	sin, cos := plane.Sincos(tilt)
	return r3.Vec{X: flat.X * cos, Y: flat.Y * cos, Z: sin}
}

// frame is the orientation of something at a place that points along axis. pan decides which way
// is right where the axis is vertical; roll turns it clockwise as seen from behind.
func frame(at, axis r3.Vec, pan, roll float64) Frame {
	axis = r3.Unit(axis)
	right := r3.Cross(axis, r3.Vec{Z: 1})
	if n := r3.Norm(right); n > 1e-9 {
		right = r3.Scale(1/n, right)
	} else {
		flat := plane.Direction(pan + 90)
		right = r3.Vec{X: flat.X, Y: flat.Y}
	}
	if roll != 0 {
		up := r3.Cross(right, axis)
		sin, cos := plane.Sincos(roll)
		right = r3.Unit(r3.Sub(r3.Scale(cos, right), r3.Scale(sin, up)))
	}
	return Frame{At: at, Axis: axis, Right: right}
}

// over lifts a point of the plan to a height.
func over(p r2.Vec, z float64) r3.Vec { return r3.Vec{X: p.X, Y: p.Y, Z: z} }

// inPlan drops a point to the plan.
func inPlan(p r3.Vec) r2.Vec { return r2.Vec{X: p.X, Y: p.Y} }
