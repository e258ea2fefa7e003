package truth

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
)

// weigh is a receptor's weight for light that travels along d.
func (r *Receptor) weigh(d r3.Vec) float64 {
	cos := -r3.Dot(d, r.Axis)
	if r.Response == Dome {
		return max(0, (1+cos)/2)
	}
	return max(0, cos)
}

// whole is the integral of a receptor's weight over all directions.
func (r *Receptor) whole() float64 {
	if r.Response == Dome {
		return 2 * math.Pi
	}
	return math.Pi
}

// pick gives a direction to look in, as likely as the receptor weighs it.
func (r *Receptor) pick(u, v float64) r3.Vec {
	cos := math.Sqrt(1 - u)
	if r.Response == Dome {
		cos = 2*cos - 1
	}
	return tiltedFrom(r.Axis, cos, v)
}

// direct is what a point of a lamp gives straight to a receptor.
func (s *set) direct(l *lamp, r *Receptor, u, v float64, plain *PCG) (e colour.RGB) {
	p := l.sample(r, u, v, plain)
	if !(p.value > 0) {
		return e
	}
	if l.stopped(p.point, r.At) {
		return e
	}
	return s.reaching(r, p.point).Times(l.output).Scale(p.value)
}

// reaching is what surfaces and panes leave of light on its way from a point.
func (s *set) reaching(r *Receptor, point r3.Vec) colour.RGB {
	d := r3.Sub(point, r.At)
	far := r3.Norm(d)
	d = r3.Scale(1/far, d)
	if s.opaque.blocked(r.At, d, far-touching, r.Skip) {
		return colour.RGB{}
	}
	return s.passed(r.At, d, far-touching)
}
