package plan

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// Bearings are degrees clockwise from the sheet's up, as on a map.

// sincos is the sine and the cosine of an angle in degrees, exact at quarter turns.
func sincos(degrees float64) (sin, cos float64) {
	turn := math.Mod(degrees, 360)
	if turn < 0 {
		turn += 360
	}
	quarter := math.Round(turn / 90)
	sin, cos = math.Sincos((turn - 90*quarter) * math.Pi / 180)
	switch int(quarter) % 4 {
	case 1:
		return cos, -sin
	case 2:
		return -sin, -cos
	case 3:
		return -cos, sin
	}
	return sin, cos
}

// toward is the unit vector of a bearing.
func toward(bearing float64) r2.Vec {
	sin, cos := sincos(bearing)
	return r2.Vec{X: sin, Y: cos}
}

// bearingOf is the bearing of a direction, 0 to 360.
func bearingOf(d r2.Vec) float64 {
	b := math.Atan2(d.X, d.Y) * 180 / math.Pi
	if b < 0 {
		b += 360
	}
	return b
}

// clockwise turns a direction by degrees.
func clockwise(d r2.Vec, degrees float64) r2.Vec {
	sin, cos := sincos(degrees)
	return r2.Vec{X: d.X*cos + d.Y*sin, Y: d.Y*cos - d.X*sin}
}

// directed is the unit vector of a bearing and a tilt above the horizontal.
func directed(pan, tilt float64) r3.Vec {
	flat := toward(pan)
	sin, cos := sincos(tilt)
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
		flat := toward(pan + 90)
		right = r3.Vec{X: flat.X, Y: flat.Y}
	}
	if roll != 0 {
		up := r3.Cross(right, axis)
		sin, cos := sincos(roll)
		right = r3.Unit(r3.Sub(r3.Scale(cos, right), r3.Scale(sin, up)))
	}
	return Frame{At: at, Axis: axis, Right: right}
}

// over lifts a point of the plan to a height.
func over(p r2.Vec, z float64) r3.Vec { return r3.Vec{X: p.X, Y: p.Y, Z: z} }

// inPlan drops a point to the plan.
func inPlan(p r3.Vec) r2.Vec { return r2.Vec{X: p.X, Y: p.Y} }
