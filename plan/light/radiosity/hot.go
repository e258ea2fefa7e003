package radiosity

import (
	"math"

	"scrimshaw/plan/colour"
)

// A beam close before a surface makes a spot that shines by itself, so small that the rays of most patches miss it and
// those that meet it take it for far more than it is. Such elements are hot: the rays leave out what they return of
// the lamp's own light, and each patch looks at some of them by name.

// hotTimes is how many times brighter than the mean of all surfaces an element is that counts as hot; so does one that returns
// more than largeShare of all that is returned, for of few surfaces the mean is high.
// Where less than openShare of the rays of surfaces meet any, the mean of all that they look at is the lower, and so is what of a cloth is
// hot, down to that of surfaces: few rays meet cloth on a head.
const (
	hotTimes   = 20
	largeShare = 0.02
	openShare  = 0.5
)

// hotAcross is how many parts a hot element has each way: within one that a beam close by lights, the light is uneven. One on
// which the parts of half as many each way get the same, but for a share of the brightest, has these.
const (
	hotAcross = 4
	evenShare = 0.25
)

// hotParts are the parts of the hot elements of one lamp, and the sums of what they return, channels together, up to each.
type hotParts struct {
	parts   []hotPart
	upTo    []float64
	patches []hotPatch
	of      map[uint32][2]int // by hot element: its first part and the one after its last
	all     float64           // lm, channels together, that all elements return of what comes straight from the lamp
	looks   float64           // the share of the usual looks that it gets
}

// manyLamps is from how many lamps on each is looked at less often: what looks are off by for one, others make good. A lamp
// that gives more of the light than others is looked at as one of as few as would make up all.
const manyLamps = 16

// shareLooks gives each lamp its share of the usual looks.
func shareLooks(lamps []hotParts) {
	all := 0.0
	for i := range lamps {
		all += lamps[i].all
	}
	for i := range lamps {
		part := 1 / float64(len(lamps))
		if all > 0 {
			part = max(part, lamps[i].all/all)
		}
		lamps[i].looks = min(1, manyLamps*part)
	}
}

// leastLooks is how many looks are taken at least: halves are compared.
const leastLooks = 2

// some is a share of so many looks.
func some(looks int, share float64) int {
	return max(min(looks, leastLooks), int(math.Ceil(share*float64(looks))))
}

// share is the part that hot elements have in what is returned of what comes straight from the lamp.
func (s *hotParts) share() float64 {
	if len(s.parts) == 0 {
		return 0
	}
	return s.upTo[len(s.parts)-1] / s.all
}

// findHot finds the hot elements of a lamp.
func (t *Transport) findHot(worker int, lamp Lamp, straight directLux) (s hotParts) {
	all, followed, met := 0.0, 0.0, 0.0
	for slot := 1; slot < len(t.patches); slot++ {
		for k, a := range t.patches[slot].area {
			all += a * t.returned(straight, 4*slot+k)
			followed += a
		}
		met += t.patches[slot].whole() * t.patches[slot].kept.Y()
	}
	if followed == 0 || t.quality.HotSamples == 0 {
		return s
	}
	s.of, s.all = map[uint32][2]int{}, all
	mean := all / (followed + t.blackArea) // rays look at what is black as often as at the rest
	ofCloth := mean * max(1, hotTimes*min(1, met/(openShare*followed)))
	for slot := 1; slot < len(t.patches) && mean > 0; slot++ {
		p := &t.patches[slot]
		f := &t.mesh.faces[p.face]
		threshold := hotTimes * mean
		if f.otherSide != 0 {
			threshold = ofCloth
		}
		var lit *aimed
		from := len(s.parts)
		for k, a := range p.area {
			if e := t.returned(straight, 4*slot+k); a == 0 || e <= threshold && e*a <= largeShare*all {
				continue
			}
			if lit == nil {
				lit = t.mesh.aim(lamp, worker, p)
			}
			t.addHot(&s, lit, straight, uint32(4*slot+k))
		}
		if len(s.parts) > from {
			s.patches = append(s.patches, newHotPatch(f.id, s.parts, from))
		}
	}
	return s
}

// addHot adds the parts of a hot element of the patch that the lamp has been aimed at.
func (t *Transport) addHot(s *hotParts, lamp *aimed, straight directLux, element uint32) {
	from := len(s.parts)
	p := &t.patches[element/4]
	f := &t.mesh.faces[p.face]
	whole := p.area[element&3]
	flux := t.addLit(s, lamp, element, hotAcross/2)
	if !areEven(s.parts[from:], flux) {
		s.parts = s.parts[:from]
		flux = t.addLit(s, lamp, element, hotAcross)
	}
	if len(flux) == 0 {
		return
	}
	var all colour.RGB
	for _, e := range flux {
		all = all.Add(e)
	}
	channels := t.Channels()
	sum := 0.0
	if n := len(s.upTo); n > 0 {
		sum = s.upTo[n-1]
	}
	for i := range flux {
		part := &s.parts[from+i]
		for c := range part.own {
			if all[c] > 0 {
				lit := whole * float64(straight[int(element)*channels+c%channels])
				part.own[c] = f.reflect[c] * f.met * lit * flux[i][c] / (all[c] * part.area)
			}
		}
		sum += part.power()
		s.upTo = append(s.upTo, sum)
	}
	s.of[element] = [2]int{from, len(s.parts)}
}

// addLit adds the parts of an element that a lamp lights, some each way, and gives what falls on each, lm.
func (t *Transport) addLit(s *hotParts, lamp *aimed, element uint32, across int) (flux []colour.RGB) {
	p := &t.patches[element/4]
	f := &t.mesh.faces[p.face]
	for _, figure := range p.split(f, int(element&3), across) {
		if e := lamp.flux(figure, false); e != (colour.RGB{}) {
			s.parts = append(s.parts, newHotPart(figure, f, p.area[element&3]))
			flux = append(flux, e)
		}
	}
	return flux
}

// areEven says whether the parts of an element get the same, but for a share.
func areEven(parts []hotPart, flux []colour.RGB) bool {
	least, most := math.Inf(1), 0.0
	for i := range parts {
		lux := flux[i].Y() / parts[i].area
		least, most = min(least, lux), max(most, lux)
	}
	return least >= (1-evenShare)*most
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
