package truth

import (
	"math"
	"slices"

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
	return turned(r.Axis, cos, v)
}

// direct is what a point of a lamp gives straight to a receptor.
func (s *set) direct(l *lamp, r *Receptor, u, v float64) colour.RGB {
	p := l.see(r.At, u, v)
	return s.seen(l, r, &p, 1)
}

// seen is what comes of the light of a point of a lamp, which counts as much as share.
func (s *set) seen(l *lamp, r *Receptor, p *sight, share float64) (e colour.RGB) {
	if p.value == 0 {
		return e
	}
	value := p.value * r.weigh(p.way) * share
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

// reflected follows one path from a receptor and one ray from a lamp, and gives what they bring of light that
// surfaces sent back. The last surface before the lamp is found in two ways: the path comes upon it, or the ray
// does. Each way counts as it is likely to find that surface and that point of the lamp, by the squares (E. Veach, Robust
// Monte Carlo Methods for Light Transport Simulation, 1997, chapter 9): a path seldom meets a small spot of light
// close to a lamp, and a ray seldom meets a wall close to the receptor.
func (s *set) reflected(r Receptor, p *points) (e colour.RGB) {
	whole := r.whole()
	carry := colour.RGB{whole, whole, whole}
	n := p.next()
	spot := s.light(p.next(), p.plain.Float())
	for {
		e = e.Add(carry.Times(s.spotlit(&r, &spot)).Scale(1 / r.whole()))
		h, ok := s.look(r.At, r.pick(n[0], n[1]), r.Skip)
		if !ok {
			return e
		}
		carry = carry.Times(h.passed).Times(h.reflect).Scale(1 / math.Pi)
		strength := max(carry[0], carry[1], carry[2]) * math.Pi / whole
		if strength == 0 {
			return e
		}
		found := r.finding(h.at, h.normal)
		r = Receptor{At: h.at, Axis: h.normal}
		for _, l := range s.lamps {
			e = e.Add(carry.Times(s.lit(l, &r, found, n[2], n[3])))
		}
		if strength < faintPath {
			live := strength / faintPath
			if p.plain.Float() >= live {
				return e
			}
			carry = carry.Scale(1 / live)
		}
		carry = carry.Scale(math.Pi)
		n = p.next()
	}
}

// finding is how likely a path from the receptor comes upon a place of a surface, by its area.
func (r *Receptor) finding(at, normal r3.Vec) float64 {
	way := r3.Sub(at, r.At)
	square := r3.Norm2(way)
	d := r3.Scale(1/math.Sqrt(square), way)
	return r.weigh(r3.Scale(-1, d)) / r.whole() * math.Abs(r3.Dot(d, normal)) / square
}

// lit is what a lamp gives to a surface that a path has come upon as likely as found, as it counts.
func (s *set) lit(l *lamp, r *Receptor, found, u, v float64) colour.RGB {
	p := l.see(r.At, u, v)
	if p.value == 0 {
		return colour.RGB{}
	}
	mine := found * p.odds
	other := l.landing(p.point, r.At, r.Axis)
	return s.seen(l, r, &p, favour(mine, other))
}

// favour is how much a way counts that is as likely as mine, beside one that is as likely as other.
func favour(mine, other float64) float64 {
	if !(mine > 0) {
		return 0
	}
	return 1 / (1 + other/mine*(other/mine))
}

// landing is how likely a ray from a point of the lamp meets a place of a surface, by its area.
func (l *lamp) landing(point, at, normal r3.Vec) float64 {
	way := r3.Sub(at, point)
	square := r3.Norm2(way)
	d := r3.Scale(1/math.Sqrt(square), way)
	return l.share * l.likely(point, d) * math.Abs(r3.Dot(d, normal)) / square
}

// spot is a place of a surface that a ray from a lamp has met.
type spot struct {
	place Receptor
	face  *face
	point r3.Vec     // of the lamp
	sent  colour.RGB // what the place sends back, lm by pi
	lamp  *lamp
}

// light sends a ray from one of the lamps.
func (s *set) light(n [4]float64, which float64) (t spot) {
	for _, l := range s.lamps {
		if t.lamp = l; which < l.share {
			break
		}
		which -= l.share
	}
	if t.lamp == nil {
		return t
	}
	point, d, strength, _, ok := t.lamp.emit(n)
	if !ok {
		return t
	}
	f, distance, front := s.opaque.first(point, d, math.Inf(1), nil)
	if f == nil {
		return t
	}
	h := s.hitOn(point, d, f, distance, front)
	t.place, t.face, t.point = Receptor{At: h.at, Axis: h.normal}, f, point
	// Panes are met from the other side than by a path.
	through := s.passed(h.at, r3.Scale(-1, d), distance)
	t.sent = t.lamp.drive.Times(h.reflect).Times(through).Scale(strength / t.lamp.share / math.Pi)
	return t
}

// spotlit is what a receptor gets of the light of a spot, as it counts.
func (s *set) spotlit(r *Receptor, t *spot) (e colour.RGB) {
	if t.face == nil || slices.Contains(r.Skip, t.face.id) {
		return e
	}
	way := r3.Sub(r.At, t.place.At)
	square := r3.Norm2(way)
	d := r3.Scale(1/math.Sqrt(square), way)
	value := r.weigh(d) * max(0, r3.Dot(d, t.place.Axis)) / square
	if !(value > 0) || square < touching {
		return e
	}
	view := t.lamp.seenFrom(t.place.At)
	out := r3.Sub(t.place.At, t.point)
	distance := r3.Norm(out)
	other := r.finding(t.place.At, t.place.Axis) * view.odds(t.point, r3.Scale(1/distance, out), distance)
	mine := t.lamp.landing(t.point, t.place.At, t.place.Axis)
	return s.reaching(r, t.place.At).Times(t.sent).Scale(value * favour(mine, other))
}
