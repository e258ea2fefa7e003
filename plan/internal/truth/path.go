package truth

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
)

// weigh is a receptor's weight for light that travels along d.
func (r *Receptor) weigh(d r3.Vec) float64 {
	cos := -r3.Dot(d, r.Axis)
	if r.Weight == Dome {
		return max(0, (1+cos)/2)
	}
	return max(0, cos)
}

// whole is the integral of a receptor's weight over all directions.
func (r *Receptor) whole() float64 {
	if r.Weight == Dome {
		return 2 * math.Pi
	}
	return math.Pi
}

// pick gives a direction to look in, as likely as the receptor weighs it.
func (r *Receptor) pick(u, v float64) r3.Vec {
	cos := math.Sqrt(1 - u)
	if r.Weight == Dome {
		cos = 2*cos - 1
	}
	sin := math.Sqrt(max(0, 1-cos*cos))
	a, b := beside(r.Axis)
	y, x := math.Sincos(2 * math.Pi * v)
	return r3.Add(r3.Scale(cos, r.Axis), r3.Scale(sin, r3.Add(r3.Scale(x, a), r3.Scale(y, b))))
}

// direct is what a point of a lamp gives straight to a receptor.
func (s *set) direct(l *lamp, r *Receptor, u, v float64) (e colour.RGB) {
	p := l.see(r.At, u, v)
	value := p.value * r.weigh(p.way)
	if !(value > 0) {
		return e
	}
	return s.reaching(r, p.point).Times(l.drive).Scale(value)
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

// faintPath is the share of what a path began with below which chance decides whether it goes on.
const faintPath = 0.3

// reflected follows one path from a receptor, and gives what it brings of light that surfaces sent back.
func (s *set) reflected(r Receptor, p *points) (e colour.RGB) {
	whole := r.whole()
	carry := colour.RGB{whole, whole, whole}
	for bounce := 0; ; bounce++ {
		n := p.next()
		h, ok := s.look(r.At, r.pick(n[0], n[1]), r.Skip)
		if !ok {
			return e
		}
		carry = carry.Times(h.passed).Times(h.reflect).Scale(1 / math.Pi)
		strength := max(carry[0], carry[1], carry[2]) * math.Pi / whole
		if strength == 0 {
			return e
		}
		r = Receptor{At: h.at, Axis: h.normal}
		for _, l := range s.lamps {
			e = e.Add(carry.Times(s.direct(l, &r, n[2], n[3])))
		}
		if strength < faintPath {
			live := strength / faintPath
			if p.plain.Float() >= live {
				return e
			}
			carry = carry.Scale(1 / live)
		}
		carry = carry.Scale(math.Pi)
	}
}
