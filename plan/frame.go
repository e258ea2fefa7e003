package plan

import (
	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/plane"
)

// Pointing is the unit vector of a bearing and a tilt above the horizontal.
func Pointing(pan, tilt float64) r3.Vec {
	flat := plane.Direction(pan)
	sin, cos := plane.Sincos(tilt)
	return r3.Vec{X: flat.X * cos, Y: flat.Y * cos, Z: sin}
}

// FrameAlong is the orientation of something at a place that points along axis. pan decides which way
// is right where the axis is vertical; roll turns it clockwise as seen from behind.
func FrameAlong(at, axis r3.Vec, pan, roll float64) Frame {
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

// AtHeight lifts a point of the plan to a height.
func AtHeight(p r2.Vec, z float64) r3.Vec { return r3.Vec{X: p.X, Y: p.Y, Z: z} }

// InPlan drops a point to the plan.
func InPlan(p r3.Vec) r2.Vec { return r2.Vec{X: p.X, Y: p.Y} }

// Local is a direction in the frame's own axes: right, up and back, as lamps have them.
func (f Frame) Local(d r3.Vec) r3.Vec {
	return r3.Vec{X: r3.Dot(d, f.Right), Y: r3.Dot(d, f.Up()), Z: -r3.Dot(d, f.Axis)}
}

// Place is a point of space by how far it lies to the right of the frame's place, over it and ahead of it.
func (f Frame) Place(p r3.Vec) r3.Vec {
	return r3.Add(f.At, r3.Add(r3.Scale(p.X, f.Right), r3.Add(r3.Scale(p.Y, f.Up()), r3.Scale(p.Z, f.Axis))))
}

// Frame is a place with an orthonormal orientation. For a lamp, Axis is the aim, Right = Axis x z
// (bearing pan + 90 when the axis is vertical) turned by roll, and up is Right x Axis.
type Frame struct {
	At          r3.Vec // m
	Axis, Right r3.Vec // unit vectors
}

// Up returns Right x Axis.
func (f Frame) Up() r3.Vec { return r3.Cross(f.Right, f.Axis) }
