package radiosity

import (
	"sort"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/light/internal/sobol"
	"scrimshaw/plan/light/receptor"
	"scrimshaw/plan/solid"
)

// hotSample is one look at a hot element: what is got of each lm/m² that it returns.
type hotSample struct {
	number int
	part   *hotPart
	gain   colour.RGB
}

// viewpoint is where hot elements are looked at from: a patch, a cell of one, or a point of a lattice.
type viewpoint struct {
	middle, normal r3.Vec
	reach          float64 // m from the middle, how far it may lie behind the plane of what it looks at
	response       receptor.Response
	skip           []solid.ID // what is not there for it
	samples        int        // looks at what is not close
	closeSamples   int        // looks at each part that is close
	shift          sobol.Sample
	offset         float64                   // of the first far look, 0 to 1
	turn, turns    int                       // its place among those that look in turn, and how many these are
	place          func(x, y float64) r3.Vec // of a look, by a point of the unit square
}

// ofPatch is the viewpoint of a patch.
func (t *Transport) ofPatch(slot int) viewpoint {
	p := &t.patches[slot]
	f := &t.mesh.faces[p.face]
	// A patch on which more hangs than on most looks more often.
	samples := t.quality.HotSamples * int(min(mostHotSamples, max(1, p.importance*float64(len(t.patches)))))
	shift := sobol.Shift(p.number)
	return viewpoint{
		middle: f.at(p.x+f.du/2, p.y+f.dv/2), normal: f.n, reach: f.du, shift: shift, offset: offsetOf(shift),
		samples: samples, closeSamples: closeSamples(samples), turns: 1,
		place: func(x, y float64) r3.Vec { return placeOn(f, p, x, y) },
	}
}

// offsetOf is an offset that has nothing to do with places and directions.
func offsetOf(shift sobol.Sample) float64 { return sobol.Unit(shift[0] ^ shift[3]) }

// mostHotSamples is how many times as often, at most, a patch looks on which much hangs.
const mostHotSamples = 16

// closeSamples is how often a part close by is looked at by who looks so often at the others.
func closeSamples(samples int) int { return max(1, samples/(hotAcross*hotAcross/2)) }

// cellSamples is how many times as often as a patch a cell looks: it has fewer rays.
const cellSamples = 4

// ofCell is the viewpoint of a cell.
func (t *Transport) ofCell(i int) viewpoint {
	c := &t.cells[i]
	samples := cellSamples * t.quality.HotSamples
	shift := sobol.Shift(uint32(i))
	return viewpoint{middle: c.at, normal: c.normal, shift: shift, offset: offsetOf(shift),
		samples: samples, closeSamples: closeSamples(samples), turns: 1,
		place: func(_, _ float64) r3.Vec { return c.at }}
}

// sampleHot looks at hot elements: at each that is close by, and at some of the others, spread over all
// that is got of them. Of one close by so much is got that it may not be left to chance.
func (t *Transport) sampleHot(e *tracer, s *hotParts, from *viewpoint, each func(g hotSample)) {
	e.choice.update(s, from)
	for _, i := range e.choice.close {
		t.sampleClose(e, s, &s.patches[i], from, each)
	}
	t.sampleFar(e, s, e.choice.chances, from, each)
}

// sampleClose looks at those parts of a hot patch that are close by, each time from a place of its own: from close by, places
// differ much.
func (t *Transport) sampleClose(e *tracer, s *hotParts, of *hotPatch, from *viewpoint, each func(g hotSample)) {
	for k := of.from; k < of.to; k++ {
		way := r3.Sub(s.parts[k].middle, from.middle)
		if s.parts[k].isClose(r3.Norm2(way)) && (from.response == receptor.Dome || r3.Dot(way, from.normal) > -from.reach) {
			for m := range from.closeSamples {
				point := (k*from.closeSamples+m)*from.turns + from.turn
				t.sample(e, from, hotSample{number: k + m, part: &s.parts[k]}, point, 1/float64(from.closeSamples), each)
			}
		}
	}
}

// sampleFar looks at some of the parts that are not close by, of patches by their chances and of parts by what they
// return.
func (t *Transport) sampleFar(e *tracer, s *hotParts, chances []float64, from *viewpoint, each func(g hotSample)) {
	looks := float64(from.samples)
	all := chances[len(chances)-1]
	if all == 0 {
		return // all parts are close
	}
	for m := range from.samples {
		point := m*from.turns + from.turn
		k, rest, chance := pick(chances, (float64(point)+from.offset)/(looks*float64(from.turns))*all)
		of := &s.patches[k]
		before := 0.0
		if of.from > 0 {
			before = s.upTo[of.from-1]
		}
		n := min(of.from+sort.SearchFloat64s(s.upTo[of.from:of.to], before+rest*of.power), of.to-1)
		part := &s.parts[n]
		if part.isClose(r3.Norm2(r3.Sub(part.middle, from.middle))) {
			continue
		}
		t.sample(e, from, hotSample{number: m, part: part}, point, all*of.power/(chance*part.power()*looks), each)
	}
}

// sample is one look, by a point of the sequence. It counts for so much.
func (t *Transport) sample(e *tracer, from *viewpoint, g hotSample, point int, counts float64, each func(g hotSample)) {
	x, y, way := t.samples[point%len(t.samples)].Shifted(&from.shift)
	if seen := e.seenFrom(from.place(x, y), from, g.part, way); seen != (colour.RGB{}) {
		g.gain = seen.Scale(counts)
		each(g)
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
	if e.panes, blocked = e.m.bvh.Segment(place, at, from.skip, e.panes[:0]); blocked {
		return colour.RGB{}
	}
	seen := colour.RGB{factor, factor, factor}
	for i := range e.panes {
		seen = seen.Times(e.panes[i].Factor)
	}
	return seen
}
