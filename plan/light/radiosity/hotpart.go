package radiosity

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/light/receptor"
	"scrimshaw/plan/photometry/formfactor"
	"scrimshaw/plan/solid"
)

// closeShare is the form factor, about, from which on what is hot is close.
const closeShare = 0.02

// closeShareOfCloth is closeShare of parts of a cloth: one cloth hangs before another, and then a few looks at what is a little farther off
// are most of what the other gets.
const closeShareOfCloth = 0.005

// hotPart is a part of a hot element.
type hotPart struct {
	figure []r3.Vec // convex
	sides  [2]r3.Vec
	even   bool // whether the figure is the parallelogram of its sides
	middle r3.Vec
	normal r3.Vec
	area   float64    // m²
	close  float64    // m², the square of the distance below which it is close
	own    colour.RGB // what it returns of what comes straight from the lamp, lm/m²
}

// newHotPart makes a figure a part of an element of an area, m². It is close where its element would be: the parts of one
// are as different from close by as the places on it.
func newHotPart(figure []r3.Vec, of *face, ofElement float64) hotPart {
	share := closeShare
	if of.otherSide != 0 {
		share = closeShareOfCloth
	}
	h := hotPart{figure: figure, middle: solid.Centre(figure), normal: of.n, area: areaOf(figure), close: ofElement / (share * math.Pi)}
	if len(figure) == 4 {
		h.sides = [2]r3.Vec{r3.Sub(figure[1], figure[0]), r3.Sub(figure[3], figure[0])}
		off := r3.Sub(r3.Add(figure[0], r3.Add(h.sides[0], h.sides[1])), figure[2])
		h.even = r3.Norm(off) < planar
	}
	return h
}

// planar is how far, m, the corners of a parallelogram may be off.
const planar = 1e-9

// isClose says whether a part is close at the square of a distance, m².
func (h *hotPart) isClose(square float64) bool { return square < h.close }

// isCloseItself says whether a part would be close at the square of a distance, m², were it an element by itself.
func (h *hotPart) isCloseItself(square float64) bool { return square*closeShare*math.Pi < h.area }

// place is a place on a part, by a point of the unit square: as likely as any other.
func (h *hotPart) place(way [2]float64) r3.Vec {
	if h.even {
		return r3.Add(h.figure[0], r3.Add(r3.Scale(way[0], h.sides[0]), r3.Scale(way[1], h.sides[1])))
	}
	return placeIn(h.area, [][][]r3.Vec{{h.figure}}, way[0], way[1])
}

// factor is what is got at a viewpoint's place of each lm/m² that a part returns, with nothing in the way: from close by of all of
// it, else of it as if it were all at one place, drawn at random.
func (h *hotPart) factor(from *viewpoint, at, place r3.Vec) float64 {
	way := r3.Sub(place, at)
	square := r3.Norm2(way)
	if h.isCloseItself(square) {
		if from.response == receptor.Dome {
			return formfactor.PolygonDome(h.figure, at, from.normal) / math.Pi
		}
		return formfactor.Polygon(h.figure, at, from.normal) / math.Pi
	}
	length := math.Sqrt(square)
	out := -r3.Dot(way, h.normal) / length
	if out <= 0 {
		return 0
	}
	return from.response.To(r3.Dot(way, from.normal)/length) * out * h.area / (math.Pi * square)
}

// hotPatch is where the parts of the hot elements of one patch are, and what they return.
type hotPatch struct {
	of             solid.ID // the solid that it lies on
	from, to       int      // its first part and the one after its last
	middle, normal r3.Vec
	radius         float64 // m from the middle, within which its parts lie
	closest        float64 // m, the distance below which its parts are close
	reach          float64 // m from the middle, within which a part of it may be close
	power          float64 // lm, channels together, that it returns of the lamp's own light
}

// newHotPatch is the patch of the last parts, those from a number on, on a solid.
func newHotPatch(of solid.ID, parts []hotPart, from int) hotPatch {
	p := hotPatch{of: of, from: from, to: len(parts)}
	for i := from; i < p.to; i++ {
		part := &parts[i]
		p.normal = part.normal
		p.middle = r3.Add(p.middle, r3.Scale(1/float64(p.to-from), part.middle))
		p.power += part.power()
		p.closest = max(p.closest, math.Sqrt(part.close))
	}
	for i := from; i < p.to; i++ {
		for _, corner := range parts[i].figure {
			p.radius = max(p.radius, r3.Norm(r3.Sub(corner, p.middle)))
		}
	}
	p.reach = p.radius + p.closest
	return p
}

// chance is in what proportion a hot patch is looked at from within a distance, m, of a viewpoint: about as what is got of those
// parts that are not close, were nothing in the way. It is never none while there are such parts, for the cosines may be off by what the
// distance turns.
func (p *hotPatch) chance(from *viewpoint, within float64) float64 {
	way := r3.Sub(p.middle, from.middle)
	length := math.Sqrt(r3.Norm2(way))
	if length+within+p.radius < p.closest {
		return 0
	}
	far := 1 / max(length, p.closest)
	margin := (within + p.radius) * far
	in, out := r3.Dot(way, from.normal)*far, -r3.Dot(way, p.normal)*far
	if out < 0 {
		out = 0
	}
	return p.power * (out + margin) * (from.response.To(in) + margin) * (far * far)
}

// power is what a part returns of the lamp's own light, lm, channels together.
func (h *hotPart) power() float64 { return h.area * (h.own[0] + h.own[1] + h.own[2]) }
