package radiosity

import (
	"math"
	"sort"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/light/internal/sobol"
	"scrimshaw/plan/light/receptor"
	"scrimshaw/plan/photometry/formfactor"
	"scrimshaw/plan/solid"
)

// A beam close before a surface makes a spot that shines by itself, so small that the rays of most patches miss it and
// those that meet it take it for far more than it is. Such elements are hot: the rays leave out what they return of
// the lamp's own light, and each patch looks at some of them by name.

// hotTimes is how many times brighter than the mean of all surfaces an element is that counts as hot.
const hotTimes = 20

// hotAcross is how many parts a hot element has each way: within one that a beam close by lights, the light is uneven.
const hotAcross = 4

// hotPart is a part of a hot element.
type hotPart struct {
	element uint32
	figure  []r3.Vec // convex
	middle  r3.Vec
	area    float64    // m²
	near    float64    // m² by the distance from which it is close: the area of its element
	own     colour.RGB // what it returns of what comes straight from the lamp, lm/m²
}

// hotParts are the parts of the hot elements of one lamp, and the sums of what they return, channels together, up to each.
type hotParts struct {
	parts []hotPart
	upTo  []float64
	of    map[uint32][2]int // by hot element: its first part and the one after its last
	all   float64           // lm, channels together, that all elements return of what comes straight from the lamp
}

// share is the part that hot elements have in what is returned of what comes straight from the lamp.
func (s *hotParts) share() float64 {
	if len(s.parts) == 0 {
		return 0
	}
	return s.upTo[len(s.parts)-1] / s.all
}

// findHot finds the hot elements of a lamp.
func (t *Transport) findHot(lamp Lamp, straight directLux) (s hotParts) {
	all, open := 0.0, 0.0
	for slot := 1; slot < len(t.patches); slot++ {
		for k, a := range t.patches[slot].area {
			all += a * t.returned(straight, 4*slot+k)
			open += a
		}
	}
	if open == 0 || t.quality.HotSamples == 0 {
		return s
	}
	s.of, s.all = map[uint32][2]int{}, all
	threshold := hotTimes * all / open
	for slot := 1; slot < len(t.patches) && threshold > 0; slot++ {
		p := &t.patches[slot]
		f := &t.mesh.faces[p.face]
		aimed := false
		for k, a := range p.area {
			if t.returned(straight, 4*slot+k) <= threshold || a == 0 {
				continue
			}
			if !aimed {
				corners := f.rectangle(p.x, p.y, f.du, f.dv)
				lamp.SetPatch(0, corners[:], f.n)
				aimed = true
			}
			t.addHot(&s, lamp, straight, uint32(4*slot+k))
		}
	}
	return s
}

// addHot adds the parts of a hot element of the patch that the lamp has been aimed at.
func (t *Transport) addHot(s *hotParts, lamp Lamp, straight directLux, element uint32) {
	from := len(s.parts)
	p := &t.patches[element/4]
	whole := p.area[element&3]
	var flux []colour.RGB
	var all colour.RGB
	for _, figure := range t.split(element) {
		if e := lamp.Flux(0, figure, false); e != (colour.RGB{}) {
			s.parts = append(s.parts, hotPart{element: element, figure: figure, middle: solid.Centre(figure), area: areaOf(figure), near: whole})
			flux, all = append(flux, e), all.Add(e)
		}
	}
	channels, reflect := t.Channels(), &t.mesh.faces[p.face].reflect
	sum := 0.0
	if n := len(s.upTo); n > 0 {
		sum = s.upTo[n-1]
	}
	for i := range flux {
		part := &s.parts[from+i]
		for c := range part.own {
			if all[c] > 0 {
				lit := whole * float64(straight[int(element)*channels+c%channels])
				part.own[c] = reflect[c] * lit * flux[i][c] / (all[c] * part.area)
			}
		}
		sum += part.area * (part.own[0] + part.own[1] + part.own[2])
		s.upTo = append(s.upTo, sum)
	}
	s.of[element] = [2]int{from, len(s.parts)}
}

// split cuts an element into figures: what of it lies in the air, hotAcross parts each way.
func (t *Transport) split(element uint32) (figures [][]r3.Vec) {
	p := &t.patches[element/4]
	f := &t.mesh.faces[p.face]
	du, dv := f.du/(2*hotAcross), f.dv/(2*hotAcross)
	x, y := p.x+f.du/2*float64(element&1), p.y+f.dv/2*float64(element>>1&1)
	for _, part := range p.inAir(f, int(element&3)) {
		for _, column := range strips(part, f.u, r3.Dot(f.u, f.origin)+x, du) {
			figures = append(figures, strips(column, f.v, r3.Dot(f.v, f.origin)+y, dv)...)
		}
	}
	return figures
}

// strips cuts a convex figure into hotAcross strips of a width, m, along a direction, from an offset on.
func strips(figure []r3.Vec, along r3.Vec, offset, width float64) (all [][]r3.Vec) {
	for k := range hotAcross {
		low := offset + width*float64(k)
		if strip := strip(figure, along, low, low+width); strip != nil {
			all = append(all, strip)
		}
	}
	return all
}

// returned is what an element returns of what comes straight from a lamp, lm/m², channels together.
func (t *Transport) returned(lamp directLux, element int) (sum float64) {
	reflect := &t.mesh.faces[t.patches[element/4].face].reflect
	channels := t.Channels()
	for c := range channels {
		sum += reflect[c] * float64(lamp[element*channels+c])
	}
	return sum
}

// hotSample is one look at a hot element: what is got of each lm/m² that it returns.
type hotSample struct {
	number int
	part   *hotPart
	gain   colour.RGB
}

// viewpoint is where hot elements are looked at from: a patch, or a cell of one.
type viewpoint struct {
	middle, normal r3.Vec
	reach          float64 // m from the middle, how far it may lie behind the plane of what it looks at
	response       receptor.Response
	skip           []solid.ID // what is not there for it
	samples        int
	shift          sobol.Sample
	place          func(x, y float64) r3.Vec // of a look, by a point of the unit square
}

// ofPatch is the viewpoint of a patch.
func (t *Transport) ofPatch(slot int) viewpoint {
	p := &t.patches[slot]
	f := &t.mesh.faces[p.face]
	return viewpoint{
		middle: f.at(p.x+f.du/2, p.y+f.dv/2), normal: f.n, reach: f.du, shift: sobol.Shift(p.number),
		// A patch on which more hangs than on most looks more often.
		samples: t.quality.HotSamples * int(min(mostHotSamples, max(1, p.importance*float64(len(t.patches))))),
		place:   func(x, y float64) r3.Vec { return placeOn(f, p, x, y) },
	}
}

// cellSamples is how many times as often as a patch a cell looks: it has fewer rays.
const cellSamples = 4

// ofCell is the viewpoint of a cell.
func (t *Transport) ofCell(i int) viewpoint {
	c := &t.cells[i]
	return viewpoint{middle: c.at, normal: c.normal, samples: cellSamples * t.quality.HotSamples, shift: sobol.Shift(uint32(i)),
		place: func(_, _ float64) r3.Vec { return c.at }}
}

// sampleHot looks at hot elements: at each that is close by, and at some of the others, spread over all
// that they return. Of one close by so much is got that it may not be left to chance.
func (t *Transport) sampleHot(e *tracer, s *hotParts, from *viewpoint, each func(g hotSample)) {
	sample := func(m, k, point int, gain float64) {
		x, y, way := t.samples[point%len(t.samples)].Shifted(&from.shift)
		g := hotSample{number: m, part: &s.parts[k]}
		if seen := e.seenFrom(from.place(x, y), from, g.part, way); seen != (colour.RGB{}) {
			g.gain = seen.Scale(gain)
			each(g)
		}
	}
	for k := range s.parts {
		way := r3.Sub(s.parts[k].middle, from.middle)
		if s.parts[k].isClose(r3.Norm2(way)) && (from.response == receptor.Dome || r3.Dot(way, from.normal) > -from.reach) {
			looks := max(fewestHotSamples, from.samples/(hotAcross*hotAcross/2))
			for m := range looks {
				sample(m, k, k*looks+m, 1/float64(looks)) // each from a place of its own: close by, they differ much
			}
		}
	}
	all := s.upTo[len(s.upTo)-1]
	for m := range from.samples {
		aim := (float64(m) + sobol.Unit(from.shift[0]^from.shift[3])) / float64(from.samples) * all
		k := min(sort.SearchFloat64s(s.upTo, aim), len(s.upTo)-1)
		if s.parts[k].isClose(r3.Norm2(r3.Sub(s.parts[k].middle, from.middle))) {
			continue
		}
		part := s.upTo[k]
		if k > 0 {
			part -= s.upTo[k-1]
		}
		sample(m, k, m, all/(part*float64(from.samples)))
	}
}

// fewestHotSamples is how many times, at least, a part close by is looked at: one for each half by which the samples are judged.
const fewestHotSamples = 2

// mostHotSamples is how many times as often, at most, a patch looks on which much hangs.
const mostHotSamples = 16

// closeShare is the form factor, about, from which on a hot element is close.
const closeShare = 0.02

// isClose says whether a part is close at the square of a distance, m². It is when its element would be: the parts
// of one are as different from close by as the places on it.
func (h *hotPart) isClose(square float64) bool {
	return h.near > closeShare*math.Pi*square
}

// placeOn is a place of a patch in the air, by a point of the unit square: as likely as any other.
func placeOn(f *face, p *patch, x, y float64) r3.Vec {
	if p.parts != nil {
		return placeIn(p.parts[:], x, y)
	}
	return f.at(p.x+x*f.du, p.y+y*f.dv)
}

// placeIn is a place on convex figures that have an area, by a point of the unit square: as likely as any other.
func placeIn(groups [][][]r3.Vec, x, y float64) (at r3.Vec) {
	all := 0.0
	for _, figures := range groups {
		for _, f := range figures {
			all += areaOf(f)
		}
	}
	left := x * all
	for _, figures := range groups {
		for _, f := range figures {
			for i := 1; i+1 < len(f); i++ {
				a := areaOf([]r3.Vec{f[0], f[i], f[i+1]})
				side := r3.Add(r3.Scale(1-y, f[i]), r3.Scale(y, f[i+1]))
				along := 1.0 // what is left of x is more than all only by rounding
				if left < a {
					along = math.Sqrt(left / a)
				}
				at = r3.Add(r3.Scale(1-along, f[0]), r3.Scale(along, side))
				if left < a {
					return at
				}
				left -= a
			}
		}
	}
	return at
}

// seenFrom is what a place gets of a part for each lm/m² that it returns: its form factor, where a ray to a place
// on it meets nothing.
func (e *tracer) seenFrom(at r3.Vec, from *viewpoint, part *hotPart, way [2]float64) colour.RGB {
	weighed := formfactor.Polygon
	if from.response == receptor.Dome {
		weighed = formfactor.PolygonDome
	}
	factor := weighed(part.figure, at, from.normal) / math.Pi
	if factor <= 0 {
		return colour.RGB{}
	}
	var blocked bool
	if e.panes, blocked = e.m.bvh.Segment(part.place(way), at, from.skip, e.panes[:0]); blocked {
		return colour.RGB{}
	}
	seen := colour.RGB{factor, factor, factor}
	for i := range e.panes {
		seen = seen.Times(e.panes[i].Factor)
	}
	return seen
}

// place is a place on a part, by a point of the unit square.
func (h *hotPart) place(way [2]float64) r3.Vec {
	return placeIn([][][]r3.Vec{{h.figure}}, way[0], way[1])
}

// areaOf is the area of a convex figure, m².
func areaOf(f []r3.Vec) (area float64) {
	for i := 1; i+1 < len(f); i++ {
		area += r3.Norm(r3.Cross(r3.Sub(f[i], f[0]), r3.Sub(f[i+1], f[0]))) / 2
	}
	return area
}
