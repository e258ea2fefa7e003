package frame

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/body"
)

// Body is a piece of equipment's convex body, for tests that look at it in ways of their own.
type Body struct {
	Faces  [][]r3.Vec
	Middle r3.Vec
	Radius float64
}

// BodiesOf are those of what a camera should not see of a thing.
func BodiesOf(s *plan.Setup, kind Kind, name, camera string) (all []Body) {
	things := newViewing(s, camera).things(camera)
	for i := range things {
		if t := &things[i]; t.kind == kind && t.name == name {
			for _, p := range t.unmeant(camera, t.stances[0]) {
				all = append(all, Body{p.Faces, p.Middle, p.Radius})
			}
		}
	}
	return all
}

// LeastThat is the search for a least change.
var LeastThat = leastThat

// LeastShare is what something that shows takes of a picture at least.
const LeastShare = leastShare

// OpeningOf is what the light of a lamp leaves by.
func OpeningOf(l *plan.Light) (all []Body) {
	for _, p := range openingOf(l) {
		all = append(all, Body{p.Faces, p.Middle, p.Radius})
	}
	return all
}

// LitOf is what of a thing light falls on that a camera should not see.
func LitOf(s *plan.Setup, kind Kind, name, camera string) (all []Body) {
	v := newViewing(s, camera)
	g := glances{viewing: v}
	things := v.things(camera)
	for i := range things {
		if t := &things[i]; t.kind == kind && t.name == name {
			for _, p := range t.unmeant(camera, g.litPieces(t, r3.Vec{})) {
				all = append(all, Body{p.Faces, p.Middle, p.Radius})
			}
		}
	}
	return all
}

// MirrorsOf are the corners of all flat mirrors of a name, and of panes.
func MirrorsOf(s *plan.Setup, name string) (all [][]r3.Vec) {
	for _, r := range reflectors(s) {
		if r.name == name {
			all = append(all, r.mirror.Corners)
		}
	}
	return all
}

// InMirrors is what cameras see in mirrors, without what takes it out.
func InMirrors(s *plan.Setup) (all []Reflection) {
	for _, r := range reflectors(s) {
		for i := range s.Cameras {
			c := &s.Cameras[i]
			v := newViewing(s, c.Name)
			if g := v.glancesInto(&r, c); r.glass != nil {
				all = append(append(all, g.inGlass()...), g.litInGlass(v.things(c.Name))...)
			} else {
				all = append(all, g.mostOf(g.looks(), v.things(c.Name))...)
			}
		}
	}
	return slices.DeleteFunc(all, func(r Reflection) bool { return r.Share == 0 })
}

// Keeps is what keeps a thing from being moved, and whether a move of it is offered.
func Keeps(s *plan.Setup, kind Kind, name string, by r3.Vec) (why string, free bool) {
	v := newViewing(s, "")
	things := v.things("")
	for i := range things {
		if t := &things[i]; t.kind == kind && t.name == name {
			return v.obstacle(t, by), v.free(t, by)
		}
	}
	return "nothing has this name", false
}

// Better is the one of two moves that is made.
var Better = better

// PartsAt is where a shade clears a picture, of places by how far out and how far ahead they lie, m.
func PartsAt(places [][2]float64, radius, edge float64) (ahead float64, ok bool) {
	var all []lampPoint
	for _, p := range places {
		all = append(all, lampPoint{out: p[0], ahead: p[1]})
	}
	return partsAt(all, radius, edge)
}

// Clearing is a least change, and that rounded up.
var Clearing = clearing

// Turned is a frame that is moved and turned to a point as it was before.
var Turned = turned

// PeakOf is where on the track of the first camera a rank by the place is highest, m.
func PeakOf(s *plan.Setup, rank func(along float64) float64) float64 {
	c := &s.Cameras[0]
	return newEye(newViewing(s, c.Name), c).peak(func(p *post) float64 { return rank(p.along) })
}

// CableOn are the bodies of a cable that runs by some places.
func CableOn(way []r3.Vec) (all []Body) {
	for _, p := range cableOn(way, r3.Vec{}) {
		all = append(all, Body{p.Faces, p.Middle, p.Radius})
	}
	return all
}

// ShareOf is what rings take of a frame together, in thousandths of half of that.
func ShareOf(rings ...[]r2.Vec) float64 {
	var s spread
	for _, ring := range rings {
		s.add(body.Whole, ring)
	}
	return s.share()
}

// FarthestMoves is how far the first camera lets the first of its things be moved each way, m.
func FarthestMoves(s *plan.Setup) map[Way]float64 {
	c := &s.Cameras[0]
	e := newEye(newViewing(s, c.Name), c)
	most := map[Way]float64{}
	for _, d := range e.ways(&e.things[0], pictureOf(c)) {
		most[d.way] = d.most
	}
	return most
}

// SpanAt is the rectangle that shades a lens so far ahead of it from places by how far out, along and ahead they lie, m.
func SpanAt(places [][3]float64, radius, edge, ahead float64) (inner, outer, low, high float64) {
	var all []lampPoint
	for _, p := range places {
		all = append(all, lampPoint{p[0], p[1], p[2]})
	}
	return spanAt(all, radius, edge, ahead)
}
