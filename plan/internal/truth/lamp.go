package truth

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/photometry"
)

// lamp is a light: an opening of which every point sends out the same distribution.
type lamp struct {
	at, axis, right, up r3.Vec
	flux                float64
	drive               colour.RGB
	form                photometry.Form
	width, height       float64
	shape               spread
	onesided            bool
	even                bool // of a sphere: Lambertian
}

// newLamp makes a light ready. An opening without size is a point.
func newLamp(l *plan.Light) *lamp {
	source := &l.Head.Source
	p := &lamp{
		at: l.Frame.At, axis: l.Frame.Axis, right: l.Frame.Right, up: r3.Cross(l.Frame.Right, l.Frame.Axis),
		flux: source.Flux, drive: l.Drive, form: source.Opening.Form,
		width: source.Opening.Width, height: source.Opening.Height,
		shape: spreadOf(source.Distribution),
	}
	if p.width <= 0 || p.form == photometry.Rectangle && p.height <= 0 {
		p.form = photometry.Point
	}
	if p.form == photometry.Rectangle || p.form == photometry.Disc {
		p.onesided = !photometry.Behind(source.Distribution)
	}
	_, p.even = source.Distribution.(photometry.Uniform)
	return p
}

// intensity is that of the whole lamp, cd, in a unit direction.
func (l *lamp) intensity(d r3.Vec) float64 {
	ahead := r3.Dot(d, l.axis)
	if l.onesided && ahead <= 0 {
		return 0
	}
	return l.flux * l.shape(r3.Dot(d, l.right), r3.Dot(d, l.up), ahead)
}

// sight is how one point of a lamp is seen from a place: over all points, the mean of value times the
// receptor's weight for light along way is what the lamp gives where nothing hides it.
type sight struct {
	point, way r3.Vec // way is a unit vector from the lamp to the place
	distance   float64
	value      float64
}

// see picks a point of the lamp by two numbers from 0 to 1.
func (l *lamp) see(at r3.Vec, u, v float64) sight {
	switch l.form {
	case photometry.Rectangle:
		return l.seeRectangle(at, u, v)
	case photometry.Disc:
		return l.seeDisc(at, u, v)
	case photometry.Tube:
		return l.seeTube(at, u)
	case photometry.Sphere:
		if l.even {
			return l.seeSphere(at, u, v)
		}
		return l.seeBall(at, u, v)
	}
	return l.toward(l.at, at)
}

// toward is the sight of a point that sends out the whole lamp's light.
func (l *lamp) toward(point, at r3.Vec) sight {
	way := r3.Sub(at, point)
	square := r3.Norm2(way)
	if square == 0 {
		return sight{}
	}
	s := sight{point: point, distance: math.Sqrt(square)}
	s.way = r3.Scale(1/s.distance, way)
	s.value = l.intensity(s.way) / square
	return s
}

// local is a place in the lamp's frame: along right, up and axis.
func (l *lamp) local(p r3.Vec) (x, y, z float64) {
	d := r3.Sub(p, l.at)
	return r3.Dot(d, l.right), r3.Dot(d, l.up), r3.Dot(d, l.axis)
}

// on is a point of the plane of the opening.
func (l *lamp) on(x, y float64) r3.Vec {
	return r3.Add(l.at, r3.Add(r3.Scale(x, l.right), r3.Scale(y, l.up)))
}

// closeBy is how many times its size a face is away where its points are no longer picked by solid angle, and
// least over its plane, of its size, where they are not either.
const (
	closeBy  = 4.0
	overFace = 1e-4
)

func (l *lamp) seeRectangle(at r3.Vec, u, v float64) sight {
	if s, ok := l.bySolidAngle(at, l.width, l.height, u, v); ok {
		return s
	}
	return l.toward(l.on((u-0.5)*l.width, (v-0.5)*l.height), at)
}

// seeDisc picks a point of the square around the disc when close, and of the disc from afar.
func (l *lamp) seeDisc(at r3.Vec, u, v float64) sight {
	radius := l.width / 2
	if s, ok := l.bySolidAngle(at, l.width, l.width, u, v); ok {
		s.value *= 4 / math.Pi
		if r3.Norm2(r3.Sub(s.point, l.at)) > radius*radius {
			s.value = 0
		}
		return s
	}
	sin, cos := math.Sincos(2 * math.Pi * v)
	r := radius * math.Sqrt(u)
	return l.toward(l.on(r*cos, r*sin), at)
}

// bySolidAngle picks a point of a rectangle about the lamp's middle so that equal solid angles seen from a
// place are equally likely; not ok from afar and in its plane.
func (l *lamp) bySolidAngle(at r3.Vec, width, height, u, v float64) (sight, bool) {
	x, y, z := l.local(at)
	size := max(width, height)
	if l.onesided && z <= 0 {
		return sight{}, true
	}
	if x*x+y*y+z*z > closeBy*closeBy*size*size || math.Abs(z) < overFace*size {
		return sight{}, false
	}
	r := newSpherical(-width/2-x, -height/2-y, width, height, math.Abs(z))
	px, py := r.point(u, v)
	s := l.toward(l.on(x+px, y+py), at)
	cos := math.Abs(z) / s.distance
	// toward has the light of the whole opening from there; of a part dA it is as much by dA over the area, and
	// dA = d²/cos dw.
	s.value *= s.distance * s.distance / cos * r.angle / (width * height)
	return s, true
}

// seeTube picks a point of the middle line so that equal angles seen from a place are equally likely.
func (l *lamp) seeTube(at r3.Vec, u float64) sight {
	x, y, z := l.local(at)
	over := math.Hypot(y, z)
	if over == 0 {
		return sight{}
	}
	low, high := math.Atan((-l.width/2-x)/over), math.Atan((l.width/2-x)/over)
	angle := low + u*(high-low)
	s := l.toward(l.on(x+over*math.Tan(angle), 0), at)
	s.value *= s.distance * s.distance / over * (high - low) / l.width // dx = d²/over da
	return s
}

// seeSphere picks a direction in the cone of an evenly bright sphere.
func (l *lamp) seeSphere(at r3.Vec, u, v float64) sight {
	way := r3.Sub(l.at, at)
	far, radius := r3.Norm(way), l.width/2
	if far <= radius {
		return sight{}
	}
	sin2 := radius * radius / (far * far)
	less := sin2 / (1 + math.Sqrt(1-sin2)) // 1 - cos of the cone's half angle
	cos := 1 - u*less
	sin := math.Sqrt(max(0, 1-cos*cos))
	a, b := beside(r3.Scale(1/far, way))
	sv, cv := math.Sincos(2 * math.Pi * v)
	d := r3.Add(r3.Scale(cos/far, way), r3.Scale(sin, r3.Add(r3.Scale(cv, a), r3.Scale(sv, b))))
	distance := far*cos - math.Sqrt(max(0, radius*radius-far*far*sin*sin))
	luminance := l.flux / (math.Pi * math.Pi * l.width * l.width)
	return sight{
		point: r3.Add(at, r3.Scale(distance, d)), way: r3.Scale(-1, d), distance: distance,
		value: luminance * 2 * math.Pi * less,
	}
}

// seeBall gives the light of a sphere that is not even: that of a point at its middle, hidden as points of a
// disc before the place would be, as which the sphere is seen.
func (l *lamp) seeBall(at r3.Vec, u, v float64) sight {
	s := l.toward(l.at, at)
	if s.distance <= l.width/2 {
		return s
	}
	a, b := beside(s.way)
	sin, cos := math.Sincos(2 * math.Pi * v)
	r := l.width / 2 * math.Sqrt(u)
	s.point = r3.Add(l.at, r3.Add(r3.Scale(r*cos, a), r3.Scale(r*sin, b)))
	return s
}

// beside gives two unit vectors square to a unit vector and to each other.
func beside(n r3.Vec) (a, b r3.Vec) {
	sign := math.Copysign(1, n.Z)
	k := -1 / (sign + n.Z)
	xy := n.X * n.Y * k
	return r3.Vec{X: 1 + sign*n.X*n.X*k, Y: sign * xy, Z: -sign * n.X}, r3.Vec{X: xy, Y: sign + n.Y*n.Y*k, Z: -n.Y}
}
