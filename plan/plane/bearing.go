package plane

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// Bearings are degrees clockwise from the sheet's up, as on a map.

// Sincos is the sine and the cosine of an angle in degrees, exact at quarter turns.
func Sincos(degrees float64) (sin, cos float64) {
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

// Direction is the unit vector of a bearing.
func Direction(bearing float64) r2.Vec {
	sin, cos := Sincos(bearing)
	return r2.Vec{X: sin, Y: cos}
}

// Bearing is the bearing of a direction, 0 to 360.
func Bearing(d r2.Vec) float64 {
	b := math.Atan2(d.X, d.Y) * 180 / math.Pi
	if b < 0 {
		b += 360
	}
	return b
}

// Clockwise turns a direction by degrees.
func Clockwise(d r2.Vec, degrees float64) r2.Vec {
	sin, cos := Sincos(degrees)
	return r2.Vec{X: d.X*cos + d.Y*sin, Y: d.Y*cos - d.X*sin}
}

// Axes are the directions of a turned thing: right along its width, back along its depth. At a
// turn of 0 its back is to the sheet's up.
type Axes struct{ Right, Back r2.Vec }

// AxesAt are the axes of a thing that is turned clockwise by degrees.
func AxesAt(turn float64) Axes { return Axes{Clockwise(r2.Vec{X: 1}, turn), Direction(turn)} }

// At is the point x to the right of and y behind a centre.
func (a Axes) At(centre r2.Vec, x, y float64) r2.Vec {
	return r2.Add(centre, r2.Add(r2.Scale(x, a.Right), r2.Scale(y, a.Back)))
}

// Rectangle is the rectangle from x0 to x1 across and from y0 to y1 back, counter-clockwise.
func (a Axes) Rectangle(centre r2.Vec, x0, x1, y0, y1 float64) []r2.Vec {
	return []r2.Vec{a.At(centre, x0, y0), a.At(centre, x1, y0), a.At(centre, x1, y1), a.At(centre, x0, y1)}
}

// Vec is a point or a size that was written as two numbers.
func Vec(v [2]float64) r2.Vec { return r2.Vec{X: v[0], Y: v[1]} }
