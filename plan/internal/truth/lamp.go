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
	output              colour.RGB
	form                photometry.Form
	width, height       float64
	shape               spread
	onesided            bool
	even                bool    // of a sphere: Lambertian
	shade               *shade  // around a bulb; nil of all else
	leaves              []face  // of barn doors: they stop its own light
	beams               *beams  // by which directions are picked
	share               float64 // of all light that is sent out, how often it is this lamp's
}

// shade is a bulb within a round side, a piece of a cone. Light meets the side from inside: a share of it is thrown back
// and a share comes out of the other side, both scattered evenly. Whatever gets out by the ends is gone. The bulb hides
// nothing, and only its own light meets the side.
type shade struct {
	frame               *lamp // for places and directions
	bulb                *lamp
	low, high, half     float64 // radii at the ends, half the height, m
	passes, throws      float64
	area                float64 // of the side, m²
	outward, along, mid float64 // of the side's normal: away from the axis, and along it; the radius in the middle
}

// newLamp makes a light ready. An opening without size is a point.
func newLamp(l *plan.Light) *lamp {
	source := &l.Head.Source
	p := &lamp{
		at: l.Frame.At, axis: l.Frame.Axis, right: l.Frame.Right, up: r3.Cross(l.Frame.Right, l.Frame.Axis),
		flux: source.Flux, output: l.RelativeOutput, form: source.Opening.Form,
		width: source.Opening.Width, height: source.Opening.Height,
		shape: spreadOf(source.Distribution),
	}
	if p.width <= 0 || p.form == photometry.Rectangle && p.height <= 0 {
		p.form = photometry.Point
	}
	if p.form == photometry.Rectangle || p.form == photometry.Disc {
		p.onesided = !photometry.Behind(source.Distribution)
	}
	_, uniform := source.Distribution.(photometry.Uniform)
	p.even = uniform && p.form == photometry.Sphere
	p.beams = newBeams(p.shape, p.onesided)
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

// sent is the intensity, cd, that the whole lamp would have if all of it were a point of its opening.
func (l *lamp) sent(point, d r3.Vec) float64 {
	if l.even {
		return l.flux * max(0, r3.Dot(d, r3.Sub(point, l.at))) / (l.width / 2) / math.Pi
	}
	return l.intensity(d)
}

// surface is how large the opening is that points are picked on: m², of a tube m.
func (l *lamp) surface() float64 {
	switch l.form {
	case photometry.Rectangle:
		return l.width * l.height
	case photometry.Disc:
		return math.Pi / 4 * l.width * l.width
	case photometry.Tube:
		return l.width
	}
	return math.Pi * l.width * l.width
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

// round is a point of a disc, of equal likelihood all over it.
func round(radius, u, v float64) (x, y float64) {
	sin, cos := math.Sincos(2 * math.Pi * v)
	r := radius * math.Sqrt(u)
	return r * cos, r * sin
}

// samplePoint picks a point of the opening, all equally likely.
func (l *lamp) samplePoint(u, v float64) r3.Vec {
	switch l.form {
	case photometry.Rectangle:
		return l.on((u-0.5)*l.width, (v-0.5)*l.height)
	case photometry.Disc:
		return l.on(round(l.width/2, u, v))
	case photometry.Tube:
		return l.on((u-0.5)*l.width, 0)
	case photometry.Sphere:
		return r3.Add(l.at, r3.Scale(l.width/2, tiltedFrom(r3.Vec{Z: 1}, 1-2*u, v)))
	}
	return l.at
}

// tiltedFrom is a unit vector at an angle from a unit vector, by its cosine, turned round it by a share of a turn.
func tiltedFrom(n r3.Vec, cos, turn float64) r3.Vec {
	sin := math.Sqrt(max(0, 1-cos*cos))
	a, b := orthonormal(n)
	y, x := math.Sincos(2 * math.Pi * turn)
	return r3.Vec{
		X: cos*n.X + sin*(x*a.X+y*b.X),
		Y: cos*n.Y + sin*(x*a.Y+y*b.Y),
		Z: cos*n.Z + sin*(x*a.Z+y*b.Z),
	}
}

// orthonormal gives two unit vectors square to a unit vector and to each other.
func orthonormal(n r3.Vec) (a, b r3.Vec) {
	sign := math.Copysign(1, n.Z)
	k := -1 / (sign + n.Z)
	xy := n.X * n.Y * k
	return r3.Vec{X: 1 + sign*n.X*n.X*k, Y: sign * xy, Z: -sign * n.X}, r3.Vec{X: xy, Y: sign + n.Y*n.Y*k, Z: -n.Y}
}

// emit picks a ray that leaves the lamp. Its strength is the flux, lm, that it stands for. Not ok for a lamp whose
// light does not come from its opening.
func (l *lamp) emit(n [4]float64) (point, d r3.Vec, strength float64, ok bool) {
	if l.shade != nil {
		return point, d, 0, false
	}
	if l.form == photometry.Sphere {
		if !l.even {
			return point, d, 0, false
		}
		point = l.samplePoint(n[0], n[1])
		cos := math.Sqrt(1 - n[2])
		d = tiltedFrom(r3.Scale(2/l.width, r3.Sub(point, l.at)), cos, n[3])
		return point, d, l.flux, cos > 0
	}
	right, up, ahead, likely := l.beams.pick(n[2], n[3])
	d = r3.Add(r3.Scale(ahead, l.axis), r3.Add(r3.Scale(right, l.right), r3.Scale(up, l.up)))
	value := l.intensity(d)
	return l.samplePoint(n[0], n[1]), d, value / likely, value > 0
}

// likely is how likely a ray that leaves a point of the lamp goes along d.
func (l *lamp) likely(point, d r3.Vec) float64 {
	if l.shade != nil {
		return 0
	}
	if l.even {
		return max(0, r3.Dot(d, r3.Sub(point, l.at))) / (l.width / 2) / math.Pi
	}
	if l.form == photometry.Sphere {
		return 0
	}
	return l.beams.likely(r3.Dot(d, l.right), r3.Dot(d, l.up), r3.Dot(d, l.axis))
}
