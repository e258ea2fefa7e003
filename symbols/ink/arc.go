package ink

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// Circle is a full circle, counter-clockwise.
func Circle(centre r2.Vec, radius float64) Path { return Arc(centre, radius, 90, -270).Close() }

// Arc is a part of a circle from one bearing to another, degrees clockwise from the y axis: it
// runs clockwise where to is the greater. It is open, and made of cubics of 90° at most, which
// leave the circle by less than 0.03 % of its radius.
func Arc(centre r2.Vec, radius, from, to float64) Path {
	return Path{}.MoveTo(onCircle(centre, radius, from)).ArcTo(centre, radius, from, to)
}

// Sector is a slice of a disc between two bearings.
func Sector(centre r2.Vec, radius, from, to float64) Path {
	return Polyline(centre, onCircle(centre, radius, from)).ArcTo(centre, radius, from, to).Close()
}

// Capsule is the area within radius of the line from a to b, counter-clockwise.
func Capsule(a, b r2.Vec, radius float64) Path {
	along := Bearing(a, b)
	p := Path{}.MoveTo(onCircle(a, radius, along+90)).LineTo(onCircle(b, radius, along+90))
	p = p.ArcTo(b, radius, along+90, along-90).LineTo(onCircle(a, radius, along-90))
	return p.ArcTo(a, radius, along-90, along-270).Close()
}

// RoundRect is the box between two corners with its corners rounded, counter-clockwise.
func RoundRect(a, b r2.Vec, radius float64) Path {
	c := Corners(a, b)
	radius = min(radius, (c[2].X-c[0].X)/2, (c[2].Y-c[0].Y)/2)
	if radius <= 0 {
		return Polygon(c...)
	}
	var p Path
	inward := [4]r2.Vec{{X: 1, Y: 1}, {X: -1, Y: 1}, {X: -1, Y: -1}, {X: 1, Y: -1}}
	for i := range c {
		centre, from := r2.Add(c[i], r2.Scale(radius, inward[i])), 270-90*float64(i)
		if i == 0 {
			p = p.MoveTo(onCircle(centre, radius, from))
		} else {
			p = p.LineTo(onCircle(centre, radius, from))
		}
		p = p.ArcTo(centre, radius, from, from-90)
	}
	return p.Close()
}

// ArcTo goes on along a circle, on which the pen must be at bearing from.
func (p Path) ArcTo(centre r2.Vec, radius, from, to float64) Path {
	n := max(1, math.Ceil(math.Abs(to-from)/90-1e-9))
	step := (to - from) / n
	// A cubic meets the circle at its ends and its middle where the control points lie this far
	// along the tangents.
	reach := radius * 4 / 3 * math.Tan(step*math.Pi/180/4)
	for i := range int(n) {
		a, b := from+float64(i)*step, from+float64(i+1)*step
		start, end := onCircle(centre, radius, a), onCircle(centre, radius, b)
		p = p.CurveTo(r2.Add(start, r2.Scale(reach, Direction(a+90))), r2.Sub(end, r2.Scale(reach, Direction(b+90))), end)
	}
	return p
}

func onCircle(centre r2.Vec, radius, bearing float64) r2.Vec {
	return r2.Add(centre, r2.Scale(radius, Direction(bearing)))
}
