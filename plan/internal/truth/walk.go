package truth

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
)

// Reflected light is found by walks from both ends. A path from the receptor goes from surface to surface by
// chance, and so does one from a lamp over a few surfaces. Every surface of the first, and the receptor itself,
// is joined straight to a point of every lamp and to every surface of the second. The same way of light can so be
// found in several ways, which differ in the leg that is joined instead of being come upon. Each counts
// by the square of how likely it is (E. Veach, Robust Monte Carlo Methods for Light Transport Simulation,
// 1997, chapters 9 and 10): a walk from the receptor seldom meets a small spot of light close to a lamp or a doorway far off,
// and a leg that is joined seldom is a short one.
//
// As surfaces are matt, a leg between two of them is as likely to be gone one way as the other, g. Of a way
// whose legs, from the lamp, are g1, g2 and so on, the finding by joining leg s is likely by l/g_s, l being how likely a ray of
// the lamp lands on the first surface, and that by joining the lamp's point by o, how likely that point is picked.

// The most surfaces of a walk from a lamp, and the share of what a walk began with below which chance
// decides whether it goes on.
const (
	maxLanded = 3
	faintPath = 0.3
)

// walk is what the two walks of one sample have met.
type walk struct {
	*set
	worth  float64 // the share of the light below which chance decides whether a leg is looked along
	p      *points
	landed []landing
	legs   []float64 // of the walk from the receptor: 1/g², the last first
	space  [maxLanded]landing
	back   [maxLanded]float64
}

// landing is a surface on the walk from a lamp.
type landing struct {
	place  Receptor
	face   *face
	sent   colour.RGB // what the place sends back, lm by pi
	before float64    // the sum of 1/g² of the legs before it
}

// lampEnd is the end of a way at a lamp: how likely its point is picked from the first surface, and
// how likely a ray lands there.
type lampEnd struct{ odds, landing float64 }

// reflected gives what one pair of walks brings of light that surfaces sent back to a receptor.
func (s *set) reflected(r Receptor, p *points, worth float64) (e colour.RGB) {
	if s.cloth || len(s.mirrors) > 0 {
		return s.walked(r, p)
	}
	w := walk{set: s, worth: worth, p: p}
	w.legs = w.back[:0]
	whole := r.whole()
	carry := colour.RGB{1, 1, 1} // of the light that reaches where the walk is
	n := p.next()
	end := w.fromLamp()
	for {
		for i := range w.landed {
			e = e.Add(w.join(&r, carry, i, end))
		}
		h, ok := s.look(r.At, r.pick(n[0], n[1]), r.Skip)
		if !ok {
			return e
		}
		carry = carry.Times(h.passed).Times(h.reflect).Scale(r.whole() / math.Pi)
		strength := max(carry[0], carry[1], carry[2]) * math.Pi / whole
		if strength == 0 {
			return e
		}
		w.recordLeg(r.finding(h.at, h.normal))
		r = Receptor{At: h.at, Axis: h.normal}
		for _, l := range s.lamps {
			e = e.Add(w.lit(l, &r, carry, n[2], n[3]))
		}
		if strength < faintPath {
			live := strength / faintPath
			if p.plain.Float() >= live {
				return e
			}
			carry = carry.Scale(1 / live)
		}
		n = p.next()
	}
}

// recordLeg notes a leg of the walk from the receptor.
func (w *walk) recordLeg(g float64) {
	if len(w.legs) < maxLanded {
		w.legs = append(w.legs, 0)
	}
	copy(w.legs[1:], w.legs)
	w.legs[0] = 1 / (g * g)
}

// behind is the sum of 1/g² of so many of the last legs of the walk from the receptor.
func (w *walk) behind(legs int) (sum float64) {
	for _, g := range w.legs[:min(legs, len(w.legs))] {
		sum += g
	}
	return sum
}

// finding is how likely a walk from the receptor comes upon a place of a surface, by its area.
func (r *Receptor) finding(at, normal r3.Vec) float64 {
	way := r3.Sub(at, r.At)
	square := r3.Norm2(way)
	d := r3.Scale(1/math.Sqrt(square), way)
	return r.weigh(r3.Scale(-1, d)) / r.whole() * math.Abs(r3.Dot(d, normal)) / square
}

// survives decides whether a leg that would bring so much is looked along, and what it counts then.
func (w *walk) survives(e colour.RGB) (colour.RGB, bool) {
	y := e.Y()
	if y >= w.worth {
		return e, y > 0
	}
	if w.p.plain.Float()*w.worth >= y {
		return e, false
	}
	return e.Scale(w.worth / y), true
}

// lit is what a lamp brings to the walk by a surface that it has met, as it counts.
func (w *walk) lit(l *lamp, r *Receptor, carry colour.RGB, u, v float64) (e colour.RGB) {
	p := l.sample(r, u, v, &w.p.plain)
	if !(p.value > 0) {
		return e
	}
	lands := l.lands(p.point, r.At, r.Axis)
	mine, all := p.odds*p.odds, lands*lands*w.behind(w.reach)
	e, ok := w.survives(carry.Times(l.output).Scale(p.value * mine / (mine + all)))
	if !ok {
		return colour.RGB{}
	}
	if l.stopped(p.point, r.At) {
		return colour.RGB{}
	}
	return e.Times(w.reaching(r, p.point))
}

// join is what the walk gets of the light of landing i, as it counts.
func (w *walk) join(r *Receptor, carry colour.RGB, i int, end lampEnd) (e colour.RGB) {
	t := &w.landed[i]
	if slices.Contains(r.Skip, t.face.id) {
		return e
	}
	way := r3.Sub(r.At, t.place.At)
	square := r3.Norm2(way)
	d := r3.Scale(1/math.Sqrt(square), way)
	value := r.weigh(d) * max(0, r3.Dot(d, t.place.Axis)) / square
	if !(value > 0) || square < touching {
		return e
	}
	g := r.finding(t.place.At, t.place.Axis)
	mine := end.landing * end.landing / (g * g)
	all := end.odds*end.odds + mine + end.landing*end.landing*(t.before+w.behind(w.reach-i-1))
	e, ok := w.survives(carry.Times(t.sent).Scale(value * mine / all))
	if !ok {
		return colour.RGB{}
	}
	return e.Times(w.reaching(r, t.place.At))
}

// lands is how likely a ray from a point of the lamp meets a place of a surface, by its area.
func (l *lamp) lands(point, at, normal r3.Vec) float64 {
	way := r3.Sub(at, point)
	square := r3.Norm2(way)
	d := r3.Scale(1/math.Sqrt(square), way)
	return l.share * l.likely(point, d) * math.Abs(r3.Dot(d, normal)) / square
}

// fromLamp walks from one of the lamps.
func (w *walk) fromLamp() (end lampEnd) {
	w.landed = w.space[:0]
	n, turns := w.p.next(), w.p.next()
	l := w.oneLamp(w.p.plain.Float())
	if l == nil {
		return end
	}
	point, d, strength, ok := l.emit(n)
	o, power := point, l.output.Scale(strength/l.share)
	for i := 0; ok && i < w.reach; i++ {
		if ok = (i > 0 || !l.caught(o, d)) && w.land(o, d, &power); ok && i+1 < w.reach {
			r := &w.landed[i].place
			o, d = r.At, r.pick(turns[2*i], turns[2*i+1])
		}
	}
	if len(w.landed) > 0 {
		first := &w.landed[0].place
		out := r3.Sub(first.At, point)
		distance := r3.Norm(out)
		view := l.seenFrom(first.At)
		end = lampEnd{view.densityRatio(point, r3.Scale(1/distance, out), distance), l.lands(point, first.At, first.Axis)}
	}
	return end
}

// land follows light of a power to the next surface, and makes of the power what that sends back; not ok where
// there is none or it is black.
func (w *walk) land(o, d r3.Vec, power *colour.RGB) bool {
	f, distance, front := w.opaque.first(o, d, math.Inf(1), nil)
	if f == nil {
		return false
	}
	h := w.hitOn(o, d, f, distance, front)
	// Light goes this way: it meets panes from the other side than a look does.
	*power = power.Times(w.passed(h.at, r3.Scale(-1, d), distance)).Times(h.reflect)
	if *power == (colour.RGB{}) {
		return false
	}
	t := landing{place: Receptor{At: h.at, Axis: h.normal}, face: f, sent: power.Scale(1 / math.Pi)}
	if n := len(w.landed); n > 0 {
		before := &w.landed[n-1]
		g := before.place.finding(h.at, h.normal)
		t.before = before.before + 1/(g*g)
	}
	w.landed = append(w.landed, t)
	return true
}

// oneLamp is the lamp of a share of all light, 0 to 1.
func (s *set) oneLamp(which float64) (l *lamp) {
	for _, l = range s.lamps {
		if which < l.share {
			return l
		}
		which -= l.share
	}
	return l
}
