package light

import "gonum.org/v1/gonum/spatial/r3"

// shadePointlike is how many times its reach a shade is away from where it counts as a point of its intensity, for what
// falls on surfaces and lattices.
const shadePointlike = 12.0

// shade finds what a shade gives to a receptor.
func (t *tracer) shade(l *lamp, r *Receptor) { t.shadePast(l, r, t.between(l, r)) }

// shadePast finds what a shade gives to a receptor past some parts of the set.
func (t *tracer) shadePast(l *lamp, r *Receptor, past []int32) {
	s := l.shade
	facets := &s.fine
	if t.quick {
		facets = &s.rough
		far := shadePointlike * s.reach()
		if len(past) == 0 && r3.Norm2(r3.Sub(r.At, s.at)) > far*far {
			if value := l.fromPoint(s.at, r); value > 0 {
				t.add(value, nil)
			}
			return
		}
	}
	figures := t.from(s, facets, r.At)
	if len(past) == 0 {
		sum := 0.0
		for i := range figures {
			sum += figures[i].light(figures[i].corners, r)
		}
		if sum > 0 {
			t.add(sum, nil)
		}
		return
	}
	for i := range figures {
		g := &figures[i]
		all := t.Visible(r.At, g.corners, past, true)
		for k := range all {
			t.through(&all[k], r, g.light(all[k].Corners, r))
		}
	}
	for i := range t.shares { // what bands take from each other leaves last digits
		t.shares[i].value = max(0, t.shares[i].value)
	}
}
