package radiosity

import (
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/light/internal/sobol"
	"scrimshaw/plan/light/receptor"
)

// hotSample is one look at a hot element: what is got of each lm/m² that it returns.
type hotSample struct {
	number int
	part   *hotPart
	gain   colour.RGB
}

// sampleHot looks at hot elements, by the choice that the tracer has made: at each that is close by, and at some of the others,
// spread over all that is got of them. Of one close by so much is got that it may not be left to chance.
func (t *Transport) sampleHot(e *tracer, s *hotParts, from *viewpoint, each func(g hotSample)) {
	sampler := hotSampler{samples: t.samples, tracer: e, of: s, from: from, each: each}
	for _, i := range e.choice.close {
		sampler.close(&s.patches[i])
	}
	sampler.far(e.choice.chances)
}

// hotSampler samples hot elements from a viewpoint, by points of a sequence.
type hotSampler struct {
	samples []sobol.Sample
	tracer  *tracer
	of      *hotParts
	from    *viewpoint
	each    func(g hotSample)
	beside  int // looks so far at parts that only their elements are close for
}

// close looks at a hot patch of which parts may be close by: at each part that is close for its own size, each time from a place of its
// own, since from close by places differ much; and at some of those that only their elements are close for, since many of them lie side by
// side.
func (l *hotSampler) close(of *hotPatch) {
	from, c := l.from, &l.tracer.choice
	c.nearby, c.weights = c.nearby[:0], 0
	for k := of.from; k < of.to; k++ {
		part := &l.of.parts[k]
		way := r3.Sub(part.middle, from.middle)
		square := r3.Norm2(way)
		if !part.isClose(square) || from.response != receptor.Dome && r3.Dot(way, from.normal) <= -from.reach {
			continue
		}
		if !part.isCloseItself(square) {
			c.addNearby(k, part.power()/(square+from.size))
			continue
		}
		for m := range from.closeSamples {
			point := (k*from.closeSamples+m)*from.turns + from.turn
			l.one(hotSample{number: k + m, part: part}, point, 1/float64(from.closeSamples))
		}
	}
	l.lookNearby()
}

// lookNearby looks at some of the parts that the choice has as nearby.
func (l *hotSampler) lookNearby() {
	from, c := l.from, &l.tracer.choice
	step := c.weights / (from.besideSamples * float64(len(c.nearby))) // the weight for which one look stands
	left := step * from.besideOffset()
	for _, n := range c.nearby {
		for left -= n.weight; left < 0; left += step {
			l.one(hotSample{number: l.beside, part: &l.of.parts[n.number]}, n.number*from.turns+from.turn, step/n.weight)
			l.beside++
		}
	}
}

// far looks at some of the parts that are not close by, of patches by their chances and of parts by what they
// return.
func (l *hotSampler) far(chances []float64) {
	from, s := l.from, l.of
	looks := float64(from.samples) / from.standsFor
	all := chances[len(chances)-1]
	if all == 0 {
		return // all parts are close
	}
	for m := range from.samples {
		point := m*from.turns + from.turn
		k, rest, chance := pick(chances, (float64(point)+from.offset)/float64(from.samples*from.turns)*all)
		of := &s.patches[k]
		before := 0.0
		if of.from > 0 {
			before = s.upTo[of.from-1]
		}
		n := min(of.from+reaching(s.upTo[of.from:of.to], before+rest*of.power), of.to-1)
		part := &s.parts[n]
		if part.isClose(r3.Norm2(r3.Sub(part.middle, from.middle))) {
			continue
		}
		l.one(hotSample{number: m, part: part}, point, all*of.power/(chance*part.power()*looks))
	}
}

// one is one look, by a point of the sequence. It counts for so much.
func (l *hotSampler) one(g hotSample, point int, counts float64) {
	if point >= len(l.samples) {
		point %= len(l.samples)
	}
	x, y, way := l.samples[point].Shifted(&l.from.shift)
	if seen := l.tracer.seenFrom(l.from.at(x, y), l.from, g.part, way); seen != (colour.RGB{}) {
		g.gain = seen.Scale(counts)
		l.each(g)
	}
}

// seenFrom is what a place gets of a part for each lm/m² that it returns: its form factor, where a ray to a place
// on it meets nothing.
func (e *tracer) seenFrom(at r3.Vec, from *viewpoint, part *hotPart, way [2]float64) colour.RGB {
	place := part.place(way)
	factor := part.factor(from, at, place)
	if factor <= 0 {
		return colour.RGB{}
	}
	var blocked bool
	if e.panes, blocked = e.m.bvh.SegmentAgain(&e.stopper, place, at, from.skip, e.panes[:0]); blocked {
		return colour.RGB{}
	}
	seen := colour.RGB{factor, factor, factor}
	for i := range e.panes {
		seen = seen.Times(e.panes[i].Factor())
	}
	return seen
}
