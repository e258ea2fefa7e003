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
	}
	far := shadePointlike * s.reach()
	switch {
	case len(past) == 0 && t.quick && r3.Norm2(r3.Sub(r.At, s.at)) > far*far:
		t.addLight(l.fromPoint(s.at, r))
	case len(past) == 0:
		sum := 0.0
		for _, g := range t.from(s, facets, r.At) {
			sum += g.light(g.corners, r)
		}
		t.addLight(sum)
	default:
		t.hiddenShade(s, facets, r, past)
	}
}

// addLight adds light that has passed no pane.
func (t *tracer) addLight(value float64) {
	if value > 0 {
		t.add(value, nil)
	}
}

// hiddenShade adds what is seen of the figures of a shade.
func (t *tracer) hiddenShade(s *shadeLamp, facets *shadeFacets, r *Receptor, past []int32) {
	t.LookFrom(r.At, past, true)
	if t.PassOver(s.body[:]) {
		return
	}
	figures := t.from(s, facets, r.At)
	for i := range figures {
		g := &figures[i]
		all := t.See(g.corners)
		for k := range all {
			t.through(&all[k], r, g.light(all[k].Corners, r))
		}
	}
	for i := range t.shares { // what bands take from each other leaves last digits
		t.shares[i].value = max(0, t.shares[i].value)
	}
}
