package formfactor

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// Sphere gives what a flat receptor receives from a luminous sphere. Above the horizon it is pi
// (R/D)² cos t; a sphere cut by the horizon follows the closed form for a cap of the sky (as given
// by S. Lagarde and C. de Rousiers, SIGGRAPH 2014 course, after J. M. Snyder 1996).
func Sphere(centre r3.Vec, radius float64, at, axis r3.Vec) float64 {
	toward := r3.Sub(centre, at)
	distance := r3.Norm(toward)
	if distance <= radius {
		return 0 // inside: no figure has a meaning there
	}
	sin2 := radius * radius / (distance * distance)
	cos := math.Min(math.Max(r3.Dot(toward, axis)/distance, -1), 1)
	if cos*cos >= sin2 {
		return math.Pi * sin2 * math.Max(cos, 0)
	}
	sin := math.Sqrt(1 - cos*cos)
	x := math.Sqrt(1/sin2 - 1)
	y := -x * cos / sin
	below := math.Sqrt(1 - y*y)
	return (cos*math.Acos(y)-x*sin*below)*sin2 + math.Atan(sin*below/x)
}

// SphereDome gives what an incident dome receives from a luminous sphere.
func SphereDome(centre r3.Vec, radius float64, at, axis r3.Vec) float64 {
	toward := r3.Sub(centre, at)
	distance := r3.Norm(toward)
	if distance <= radius {
		return 0
	}
	sin2 := radius * radius / (distance * distance)
	angle := 2 * math.Pi * sin2 / (1 + math.Sqrt(1-sin2)) // 2 pi (1 - cos), without cancellation
	return dome(angle, r3.Scale(math.Pi*sin2/distance, toward), axis)
}

// Line gives what a flat receptor receives from a straight line that is Lambertian about its axis
// (a thin tube with dark ends), for an intensity of 1 cd/m square to it.
func Line(a, b, at, axis r3.Vec) float64 {
	l, ok := lineFrom(a, b, at)
	if !ok {
		return 0
	}
	toward, along := r3.Dot(l.toward, axis), r3.Dot(l.along, axis)
	t0, t1 := l.t0, l.t1
	// Light comes from above the receptor's plane only: toward + along tan t > 0.
	switch {
	case along > 0:
		t0 = math.Max(t0, math.Atan2(-toward, along))
	case along < 0:
		t1 = math.Min(t1, math.Atan2(toward, -along))
	case toward <= 0:
		return 0
	}
	if t1 <= t0 {
		return 0
	}
	return math.Max(0, l.part(toward, along, t1)-l.part(toward, along, t0))
}

// LineDome gives what an incident dome receives from a straight line, for 1 cd/m square to it.
func LineDome(a, b, at, axis r3.Vec) float64 {
	l, ok := lineFrom(a, b, at)
	if !ok {
		return 0
	}
	toward, along := r3.Dot(l.toward, axis), r3.Dot(l.along, axis)
	scalar := (math.Sin(l.t1) - math.Sin(l.t0)) / l.distance
	return math.Max(0, (scalar+l.part(toward, along, l.t1)-l.part(toward, along, l.t0))/2)
}

// line is a straight line seen from a receptor: the distance to its foot, unit vectors toward
// the foot and along the line, and the angles from the foot to its ends.
type line struct {
	distance      float64
	toward, along r3.Vec
	t0, t1        float64
}

// lineFrom is the line from a to b as seen from at; not ok from a point on the line's own
// course, to which it sends nothing.
func lineFrom(a, b, at r3.Vec) (line, bool) {
	along := r3.Sub(b, a)
	length := r3.Norm(along)
	if length == 0 {
		return line{}, false
	}
	along = r3.Scale(1/length, along)
	first := r3.Sub(a, at)
	s := r3.Dot(first, along)
	foot := r3.Sub(first, r3.Scale(s, along))
	distance := r3.Norm(foot)
	if distance < 1e-9*length {
		return line{}, false
	}
	return line{
		distance, r3.Scale(1/distance, foot), along,
		math.Atan2(s, distance), math.Atan2(s+length, distance),
	}, true
}

// part is the integral up to angle t: (toward (t + sin t cos t) - along cos² t) / 2d.
func (l *line) part(toward, along, t float64) float64 {
	sin, cos := math.Sincos(t)
	return (toward*(t+sin*cos) - along*cos*cos) / (2 * l.distance)
}
