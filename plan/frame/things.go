package frame

import (
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/body"
)

// things lists all that a camera should not see of a set-up, in the order of the scene.
func (v *viewing) things(camera string) (all []thing) {
	s := v.setup
	for i := range s.Lights {
		l := &s.Lights[i]
		all = append(all, thing{kind: Light, name: l.Name, path: l.Path, span: l.Span, seen: l.Seen, foot: l.Mount.Base, base: l.Base,
			most: liftOf(&l.Mount, l.Base), ownHeight: l.Frame.At.Z, standsOnIt: l.Mount.Kind.OnLegs(),
			at: func(by r3.Vec) [][]body.Piece { return [][]body.Piece{v.lampAt(l, by)} }})
	}
	for i := range s.Grip {
		g := &s.Grip[i]
		all = append(all, thing{kind: Grip, name: g.Name, path: "grip." + g.Name, span: g.Span, foot: g.Mount.Base, base: g.Base,
			most: liftOf(&g.Mount, g.Base), ownHeight: g.Frame.At.Z, standsOnIt: g.Mount.Kind.OnLegs(),
			at: func(by r3.Vec) [][]body.Piece { return [][]body.Piece{v.gripAt(g, by)} }})
	}
	for i := range s.Cameras {
		all = append(all, camerasOf(&s.Cameras[i])...)
	}
	all = append(all, v.cables()...)
	for i := range s.People {
		if p := &s.People[i]; !p.SeenBy(camera) {
			all = append(all, personThing(p))
		}
	}
	for i := range all {
		all[i].measure()
	}
	return all
}
