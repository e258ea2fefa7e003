package frame

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
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
