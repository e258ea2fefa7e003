package truth

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
)

// A cloth sends light on from both of its sides, whichever it falls on. Walks from both ends do not know of that: where
// there is cloth, light is found by walks from the receptor alone, with a look at every lamp from both sides of a cloth.

// walked gives what one walk from a receptor brings of light that surfaces and cloths have sent on.
func (s *set) walked(r Receptor, p *points) (e colour.RGB) {
	carry := colour.RGB{1, 1, 1}
	for {
		n := p.next()
		d := r.pick(n[0], n[1])
		f, distance, front, weight := s.meet(&r, d, p)
		if f == nil {
			return e
		}
		h := s.hitOn(r.At, d, f, distance, front)
		through := f.scatter[1]
		if !front {
			through = f.scatter[0]
		}
		carry = carry.Times(weight).Times(s.glass(r.At, d, distance)).Scale(r.whole() / math.Pi)
		before, behind := Receptor{At: h.at, Axis: h.normal}, Receptor{At: h.at, Axis: r3.Scale(-1, h.normal)}
		for _, l := range s.lamps {
			e = e.Add(carry.Times(h.reflect).Times(s.direct(l, &before, n[2], n[3])))
			if through != (colour.RGB{}) {
				e = e.Add(carry.Times(through).Times(s.direct(l, &behind, n[2], n[3])))
			}
		}
		back, on := h.reflect.Y(), through.Y()
		if back+on == 0 {
			return e
		}
		if live := back / (back + on); p.plain.Float() < live {
			r, carry = before, carry.Times(h.reflect).Scale(1/live)
		} else {
			r, carry = behind, carry.Times(through).Scale(1/(1-live))
		}
		strength := max(carry[0], carry[1], carry[2])
		if strength < faintPath {
			live := strength / faintPath
			if p.plain.Float() >= live {
				return e
			}
			carry = carry.Scale(1 / live)
		}
	}
}

// crossing is a cloth on a ray.
type crossing struct {
	face     *face
	distance float64
	front    bool
}

// meet finds what a ray ends on: the first opaque surface, or a cloth before it that it does not pass, as chance decides.
// What comes of it counts by a weight.
func (s *set) meet(r *Receptor, d r3.Vec, p *points) (f *face, distance float64, front bool, weight colour.RGB) {
	f, distance, front = s.opaque.first(r.At, d, math.Inf(1), r.Skip)
	if f == nil {
		distance = math.Inf(1)
	}
	var on []crossing
	for i := range s.cloths {
		c := &s.cloths[i]
		if t, front, ok := c.meets(r.At, d, distance); ok && !slices.Contains(r.Skip, c.id) {
			on = append(on, crossing{c, t, front})
		}
	}
	slices.SortFunc(on, func(a, b crossing) int {
		if a.distance < b.distance {
			return -1
		}
		return 1
	})
	weight = colour.RGB{1, 1, 1}
	for _, c := range on {
		pass := c.face.pass[1]
		if !c.front {
			pass = c.face.pass[0]
		}
		share := pass.Y()
		if p.plain.Float() >= share {
			return c.face, c.distance, c.front, weight.Scale(1 / (1 - share))
		}
		weight = weight.Times(pass).Scale(1 / share)
	}
	return f, distance, front, weight
}

// glass is what clear panes leave of light along a ray from as far away as far.
func (s *set) glass(o, d r3.Vec, far float64) colour.RGB {
	factor := colour.RGB{1, 1, 1}
	for i := range s.panes {
		f := &s.panes[i]
		if f.scatter != [2]colour.RGB{} {
			continue
		}
		if _, front, ok := f.meets(o, d, far); ok && front {
			factor = factor.Times(f.pass[1])
		} else if ok {
			factor = factor.Times(f.pass[0])
		}
	}
	return factor
}
