package truth

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/photometry"
)

// view is a lamp as seen from a place: how its points are picked from there.
type view struct {
	lamp   *lamp
	at     r3.Vec
	how    picking
	x, y   float64 // of the place in the lamp's frame
	z      float64
	square spherical // of a face picked by solid angle
	size   float64   // of what is seen: the solid angle, or of a tube the angle
	low    float64   // of a tube: the angle at which it begins
	far    float64   // of a sphere: how far its middle is
}

// picking is how points of an opening are picked from a place.
type picking uint8

const (
	evenly   picking = iota // all points equally likely
	byAngle                 // equal solid angles equally likely; of a tube, equal angles
	asCentre                // all light from the middle, hidden as a disc before the place would be
	unseen
)

// A rectangle and a disc are so many times their size away where their points are no longer picked by solid angle,
// and so little over their plane, of their size, where they are not either.
const (
	rectangleClose = 4.0
	discClose      = 1.2 // a fifth of the points of the square around it are lost
	overFace       = 1e-4
)

func (l *lamp) seenFrom(at r3.Vec) view {
	v := view{lamp: l, at: at}
	switch l.form {
	case photometry.Rectangle:
		v.face(l.width, l.height, rectangleClose)
	case photometry.Disc:
		v.face(l.width, l.width, discClose)
	case photometry.Tube:
		v.tube()
	case photometry.Sphere:
		v.sphere()
	}
	return v
}

// face sees a rectangle, or the square around a disc.
func (v *view) face(width, height, near float64) {
	v.x, v.y, v.z = v.lamp.local(v.at)
	size := max(width, height)
	switch distance2 := v.x*v.x + v.y*v.y + v.z*v.z; {
	case v.lamp.onesided && v.z <= 0:
		v.how = unseen
	case distance2 <= near*near*size*size && math.Abs(v.z) > overFace*size:
		v.how = byAngle
		v.square = newSpherical(-width/2-v.x, -height/2-v.y, width, height, math.Abs(v.z))
		v.size = v.square.angle
	}
}

// tube sees a line: z is how far the place is from it.
func (v *view) tube() {
	x, y, z := v.lamp.local(v.at)
	v.x, v.z, v.how = x, math.Hypot(y, z), byAngle
	if v.z == 0 {
		v.how = unseen
		return
	}
	half := v.lamp.width / 2
	v.low = math.Atan((-half - x) / v.z)
	v.size = math.Atan((half-x)/v.z) - v.low
}

// sphere sees an even sphere as a cone of directions.
func (v *view) sphere() {
	radius := v.lamp.width / 2
	v.far, v.how = r3.Norm(r3.Sub(v.lamp.at, v.at)), byAngle
	switch sin2 := radius * radius / (v.far * v.far); {
	case !v.lamp.even:
		v.how = asCentre
	case v.far <= radius:
		v.how = unseen
	default:
		v.size = 2 * math.Pi * sin2 / (1 + math.Sqrt(1-sin2))
	}
}

// pick gives a point of the lamp; not ok where none is seen.
func (v *view) pick(u, w float64) (point r3.Vec, ok bool) {
	l := v.lamp
	switch {
	case v.how == unseen:
		return point, false
	case v.how == evenly:
		return l.samplePoint(u, w), true
	case v.how == asCentre:
		return v.before(u, w), true
	case l.form == photometry.Tube:
		return l.on(v.x+v.z*math.Tan(v.low+u*v.size), 0), true
	case l.form == photometry.Sphere:
		return v.onSphere(u, w), true
	}
	x, y := v.square.point(u, w)
	x, y = x+v.x, y+v.y
	return l.on(x, y), l.form != photometry.Disc || x*x+y*y <= l.width*l.width/4
}

// onSphere is a point of the near side of a sphere.
func (v *view) onSphere(u, w float64) r3.Vec {
	radius := v.lamp.width / 2
	cos := 1 - u*v.size/(2*math.Pi)
	d := tiltedFrom(r3.Scale(1/v.far, r3.Sub(v.lamp.at, v.at)), cos, w)
	distance := v.far*cos - math.Sqrt(max(0, radius*radius-v.far*v.far*(1-cos*cos)))
	return r3.Add(v.at, r3.Scale(distance, d))
}

// before is a point of the disc as which a sphere is seen.
func (v *view) before(u, w float64) r3.Vec {
	a, b := orthonormal(r3.Unit(r3.Sub(v.lamp.at, v.at)))
	x, y := round(v.lamp.width/2, u, w)
	return r3.Add(v.lamp.at, r3.Add(r3.Scale(x, a), r3.Scale(y, b)))
}

// densityRatio are how many times likelier a point is picked from the place than evenly from all over the lamp; d is
// the unit vector from the point to the place.
func (v *view) densityRatio(point, d r3.Vec, distance float64) float64 {
	if v.how != byAngle {
		return 1
	}
	l := v.lamp
	cos := 0.0
	switch l.form {
	case photometry.Tube:
		cos = v.z // of a line, the angle falls with one distance fewer
	case photometry.Sphere:
		cos = max(0, r3.Dot(d, r3.Sub(point, l.at))) / (l.width / 2)
	default:
		cos = math.Abs(v.z) / distance
	}
	return cos * l.surface() / (distance * distance * v.size)
}

// sight is one point of a lamp as seen from a receptor: over all points, the mean of value is what the lamp gives
// it where nothing hides any of it.
type sight struct {
	point r3.Vec
	value float64
	odds  float64
}

// sampleFrom picks a point of the lamp by two numbers from 0 to 1.
func (l *lamp) sampleFrom(r *Receptor, u, w float64) (s sight) {
	v := l.seenFrom(r.At)
	point, ok := v.pick(u, w)
	if !ok {
		return s
	}
	from := point
	if v.how == asCentre {
		from = l.at
	}
	way := r3.Sub(r.At, from)
	square := r3.Norm2(way)
	if square == 0 {
		return s
	}
	distance := math.Sqrt(square)
	d := r3.Scale(1/distance, way)
	weight := r.weigh(d)
	if weight == 0 {
		return s
	}
	s.point, s.odds = point, v.densityRatio(point, d, distance)
	if s.odds > 0 {
		s.value = weight * l.sent(point, d) / square / s.odds
	}
	return s
}
