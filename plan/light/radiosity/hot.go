package radiosity

import (
	"math"
	"sort"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/photometry/formfactor"
	"scrimshaw/plan/solid"
)

// A beam close before a surface makes a spot that shines by itself, so small that the rays of most patches miss it and
// those that meet it take it for far more than it is. Such elements are hot: the rays leave out what they return of
// the lamp's own light, and each patch looks at some of them by name.

// hotTimes is how many times brighter than the mean of all surfaces an element is that counts as hot.
const hotTimes = 20

// spotted are the hot elements of one lamp, and the sums of what they return, channels together, up to each.
type spotted struct {
	elements []int
	upTo     []float64
	middles  []r3.Vec
	areas    []float64 // m²
}

// spots finds the hot elements of a lamp.
func (t *Transport) spots(lamp first) (s spotted) {
	all, open := 0.0, 0.0
	for slot := 1; slot < len(t.patches); slot++ {
		for k, a := range t.patches[slot].area {
			all += a * t.returned(lamp, 4*slot+k)
			open += a
		}
	}
	if open == 0 {
		return s
	}
	threshold, sum := hotTimes*all/open, 0.0
	for slot := 1; slot < len(t.patches) && threshold > 0; slot++ {
		for k, a := range t.patches[slot].area {
			if v := t.returned(lamp, 4*slot+k); v > threshold && a > 0 {
				sum += a * v
				p := &t.patches[slot]
				f := &t.mesh.faces[p.face]
				corners := f.element4(p.x, p.y, k)
				s.elements, s.upTo = append(s.elements, 4*slot+k), append(s.upTo, sum)
				s.middles, s.areas = append(s.middles, solid.Centre(corners[:])), append(s.areas, f.du*f.dv/4)
			}
		}
	}
	return s
}

// returned is what an element returns of what comes straight from a lamp, lm/m², channels together.
func (t *Transport) returned(lamp first, element int) (sum float64) {
	reflect := &t.mesh.faces[t.patches[element/4].face].reflect
	channels := t.Channels()
	for c := range channels {
		sum += reflect[c] * float64(lamp[element*channels+c])
	}
	return sum
}

// glance is one look from a patch at a hot element: what the patch gets of each lm/m² that it returns.
type glance struct {
	element int
	gain    colour.RGB
}

// glances looks from a patch at hot elements: at each that is close by, and at some of the others, spread over all
// that they return. Of one close by a patch gets so much that it may not be left to chance.
func (t *Transport) glances(e *eye, s *spotted, slot int, each func(g glance)) {
	p := &t.patches[slot]
	f := &t.mesh.faces[p.face]
	turn := turns(p.number)
	// A patch on which more hangs than on most looks more often.
	looks := t.quality.Looks * int(min(mostLooks, max(1, p.importance*float64(len(t.patches)))))
	middle := f.at(p.x+f.du/2, p.y+f.dv/2)
	look := func(m, k int, gain float64) {
		x, y, way := t.stars[m].turned(&turn)
		g := glance{element: s.elements[k]}
		if seen := t.seenFrom(e, t.placeOn(f, p, x, y), f.n, g.element, way); seen != (colour.RGB{}) {
			g.gain = seen.Scale(gain)
			each(g)
		}
	}
	for k, at := range s.middles {
		if s.isClose(k, r3.Norm2(r3.Sub(at, middle))) && r3.Dot(r3.Sub(at, middle), f.n) > -f.du {
			for m := range looks {
				look(m, k, 1/float64(looks))
			}
		}
	}
	all := s.upTo[len(s.upTo)-1]
	for m := range looks {
		aim := (float64(m) + unit(turn[0]^turn[3])) / float64(looks) * all
		k := min(sort.SearchFloat64s(s.upTo, aim), len(s.upTo)-1)
		if s.isClose(k, r3.Norm2(r3.Sub(s.middles[k], middle))) {
			continue
		}
		part := s.upTo[k]
		if k > 0 {
			part -= s.upTo[k-1]
		}
		look(m, k, all/(part*float64(looks)))
	}
}

// mostLooks is how many times as often, at most, a patch looks on which much hangs.
const mostLooks = 16

// closeShare is the form factor, about, from which on a hot element is close.
const closeShare = 0.02

// isClose says whether hot element k is close at the square of a distance, m².
func (s *spotted) isClose(k int, square float64) bool {
	return s.areas[k] > closeShare*math.Pi*square
}

// placeOn is a place of a patch in the air.
func (t *Transport) placeOn(f *face, p *patch, x, y float64) r3.Vec {
	if p.parts != nil {
		for k := range p.parts {
			if parts := p.parts[(k+part(x, y))%4]; len(parts) > 0 {
				return solid.Centre(parts[int(x*7919)%len(parts)])
			}
		}
	}
	return f.at(p.x+x*f.du, p.y+y*f.dv)
}

// seenFrom is what a place gets of an element for each lm/m² that it returns: its form factor, where a ray to a place
// on it meets nothing.
func (t *Transport) seenFrom(e *eye, at, normal r3.Vec, element int, way [2]float64) colour.RGB {
	p := &t.patches[element/4]
	f := &t.mesh.faces[p.face]
	corners := f.element4(p.x, p.y, element&3)
	factor := formfactor.Polygon(corners[:], at, normal) / math.Pi * p.area[element&3] / (f.du * f.dv / 4)
	if factor <= 0 {
		return colour.RGB{}
	}
	to := f.at(p.x+f.du/2*(float64(element&1)+way[0]), p.y+f.dv/2*(float64(element>>1&1)+way[1]))
	var blocked bool
	if e.panes, blocked = t.mesh.bvh.Segment(to, at, nil, e.panes[:0]); blocked {
		return colour.RGB{}
	}
	seen := colour.RGB{factor, factor, factor}
	for i := range e.panes {
		seen = seen.Times(e.panes[i].Factor)
	}
	return seen
}
