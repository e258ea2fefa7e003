package truth

import (
	"cmp"
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
		f, h, front, weight := s.leg(&r, r.pick(n[0], n[1]), p)
		if f == nil {
			return e
		}
		carry = carry.Times(weight).Scale(r.whole() / math.Pi)
		sides := bothSides(f, &h, front)
		for i := range sides {
			e = e.Add(s.litBy(&sides[i], carry, n, p))
		}
		r, carry = onward(sides, carry, p)
		if carry == (colour.RGB{}) {
			return e
		}
	}
}

// mostShines is how many mirrors a leg meets at most; what is left then is next to nothing.
const mostShines = 64

// leg follows a ray to a surface that scatters, from mirror to mirror, and gives by what weight what comes of it counts; no
// face where there is none.
func (s *set) leg(r *Receptor, d r3.Vec, p *points) (f *face, h hit, front bool, weight colour.RGB) {
	weight = colour.RGB{1, 1, 1}
	for range mostShines {
		var distance float64
		var counts colour.RGB
		f, distance, front, counts = s.meet(r, d, p)
		if f == nil {
			return nil, h, front, weight
		}
		h = s.hitOn(r.At, d, f, distance, front)
		weight = weight.Times(counts).Times(s.glass(r.At, d, distance))
		counts, on := shines(f, front, p)
		weight = weight.Times(counts)
		if !on {
			return f, h, front, weight
		}
		var counted float64
		d, counted, on = f.spread(d, front, p)
		if weight = weight.Scale(counted); !on {
			return nil, h, front, weight
		}
		r = &Receptor{At: h.at, Skip: r.Skip}
	}
	return nil, h, front, weight
}

// side is a side of a surface, and what of the light on it leaves toward where the walk came from.
type side struct {
	at    Receptor
	sends colour.RGB
}

// bothSides are the side that a look has met, which reflects, and the one behind it, which a cloth lets light through from.
func bothSides(f *face, h *hit, front bool) [2]side {
	through := f.scatter[1]
	if !front {
		through = f.scatter[0]
	}
	return [2]side{{Receptor{At: h.at, Axis: h.normal}, h.reflect}, {Receptor{At: h.at, Axis: r3.Scale(-1, h.normal)}, through}}
}

// litBy is what the lamps bring by a side.
func (s *set) litBy(on *side, carry colour.RGB, n [4]float64, p *points) (e colour.RGB) {
	if on.sends == (colour.RGB{}) {
		return e
	}
	four := [4]float64{n[2], n[3]}
	if len(s.mirrors) > 0 {
		four[2], four[3] = p.plain.Float(), p.plain.Float()
	}
	for _, l := range s.lamps {
		e = e.Add(carry.Times(on.sends).Times(s.direct(l, &on.at, four, &p.plain)))
	}
	return e
}

// onward chooses the side that the walk goes on from, and whether it does: what it carries on is nought where not.
func onward(sides [2]side, carry colour.RGB, p *points) (Receptor, colour.RGB) {
	back, on := sides[0].sends.Y(), sides[1].sends.Y()
	if back+on == 0 {
		return Receptor{}, colour.RGB{}
	}
	chosen, likely := 0, back/(back+on)
	if p.plain.Float() >= likely {
		chosen, likely = 1, 1-likely
	}
	carry = carry.Times(sides[chosen].sends).Scale(1 / likely)
	if strength := max(carry[0], carry[1], carry[2]); strength < faintPath {
		live := strength / faintPath
		if p.plain.Float() >= live {
			return Receptor{}, colour.RGB{}
		}
		carry = carry.Scale(1 / live)
	}
	return sides[chosen].at, carry
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
	slices.SortFunc(on, func(a, b crossing) int { return cmp.Compare(a.distance, b.distance) })
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
			factor = factor.Times(f.pass[1]).Scale(f.fromAside(d))
		} else if ok {
			factor = factor.Times(f.pass[0]).Scale(f.fromAside(d))
		}
	}
	return factor
}
