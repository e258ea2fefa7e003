package ink

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// Direction is the unit vector of a bearing, degrees clockwise from up the paper. Multiples of 90
// are exact.
func Direction(bearing float64) r2.Vec {
	sin, cos := sincos(bearing)
	return r2.Vec{X: sin, Y: cos}
}

// sincos is math.Sincos of degrees, exact at multiples of 90.
func sincos(degrees float64) (sin, cos float64) {
	switch math.Mod(degrees, 360) {
	case 0:
		return 0, 1
	case 90, -270:
		return 1, 0
	case 180, -180:
		return 0, -1
	case 270, -90:
		return -1, 0
	}
	return math.Sincos(degrees * math.Pi / 180)
}

// Bearing is the direction from a to b, degrees clockwise from up the paper, 0 to under 360.
func Bearing(a, b r2.Vec) float64 {
	d := r2.Sub(b, a)
	degrees := math.Atan2(d.X, d.Y) * 180 / math.Pi
	if degrees < 0 {
		degrees += 360
	}
	return math.Mod(degrees, 360) // of a negative that vanishes against 360
}

// Frame is where a drawing's own axes lie on paper: its origin, the bearing of its y axis in
// degrees clockwise from up the paper, and millimetres on paper to one of its units. Its x axis
// points to the right of its y axis.
type Frame struct {
	Origin  r2.Vec
	Bearing float64
	Scale   float64
}

// Paper is the frame in which a drawing's own axes are those of the paper.
func Paper() Frame { return Frame{Scale: 1} }

// Place returns where a point of the frame lies on paper.
func (f Frame) Place(p r2.Vec) r2.Vec { return r2.Add(f.Origin, f.Turn(p)) }

// Turn returns a step in the frame as a step on paper.
func (f Frame) Turn(p r2.Vec) r2.Vec {
	sin, cos := sincos(f.Bearing)
	return r2.Vec{X: f.Scale * (p.X*cos + p.Y*sin), Y: f.Scale * (p.Y*cos - p.X*sin)}
}

// At is the frame of a thing that stands in f with its origin at p, turned by bearing and drawn
// scale times as large.
func (f Frame) At(p r2.Vec, bearing, scale float64) Frame {
	return Frame{Origin: f.Place(p), Bearing: f.Bearing + bearing, Scale: f.Scale * scale}
}

// Path returns a path of the frame on paper.
func (f Frame) Path(p Path) Path {
	out := make(Path, len(p))
	for i, s := range p {
		for j := range s.points() {
			s.P[j] = f.Place(s.P[j])
		}
		out[i] = s
	}
	return out
}

// TurnedBox is a box about a middle, turned counter-clockwise by degrees.
func TurnedBox(centre, size r2.Vec, degrees float64) []r2.Vec {
	along, up := r2.Scale(size.X/2, Direction(90-degrees)), r2.Scale(size.Y/2, Direction(-degrees))
	return []r2.Vec{
		r2.Sub(r2.Sub(centre, along), up), r2.Sub(r2.Add(centre, along), up),
		r2.Add(r2.Add(centre, along), up), r2.Add(r2.Sub(centre, along), up),
	}
}
