package resolve

import (
	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/scene"
)

// Where people and cameras face is found in plan, from places alone, so that two people may face
// each other. Heights come after.

// facingOf is the bearing of a person's nose, their own or at a mark, or a camera's look.
func (r *placer) facingOf(name string) (float64, bool) {
	return evaluate(r, r.facings, dependency{"facing", name}, func() (float64, bool) {
		t := r.things[name]
		if t.kind == cameraKind {
			c := &r.s.Cameras[t.index]
			return r.bearing(name, c.Looks, r.firstFor(name), 0, func() (plan.Spot, bool) { return r.spotOf(name) })
		}
		if t.kind == markKind {
			p, m, _ := r.markOf(scene.Ref{Name: name})
			return r.bearing(name, atMark(p, m).Faces, r.firstCamera(), scene.DefaultFacing, func() (plan.Spot, bool) { return r.spotOf(name) })
		}
		p := &r.s.People[t.index]
		if before := r.keptPerson(name); before != nil && !r.writtenHere(p.Node, "faces") {
			return before.Faces, true
		}
		return r.bearing(name, p.Faces, r.firstCamera(), scene.DefaultFacing, func() (plan.Spot, bool) { return r.spotOf(name) })
	})
}

// bearing is where a thing faces by an aim, from where it stands; without an aim it faces the thing
// called def, and where there is none, bearing none.
func (r *placer) bearing(name string, aim scene.Given[scene.Aim], def string, none float64,
	standing func() (plan.Spot, bool)) (float64, bool) {
	a := aim.Value
	if !aim.Set {
		if def == "" || def == name {
			return none, true
		}
		a = scene.Aim{Form: scene.AtThing, Thing: scene.Ref{Name: def}}
	}
	switch a.Form {
	case scene.AtBearing, scene.AimPanTilt:
		return a.Pan, true
	case scene.AimUp, scene.AimDown:
		return 0, true
	}
	from, ok := standing()
	to, found := r.planTarget(&a)
	if !ok || !found {
		return 0, false
	}
	d := r2.Sub(to, from.At)
	if r2.Norm(d) <= plane.Grain {
		if !aim.Set {
			return none, true
		}
		r.Errorf(a.Span, CodeNoAim, "face something else, or give a bearing", "the point to face is where %s stands", name)
		return 0, false
	}
	return plane.Bearing(d), true
}

// planTarget is the point of the plan that an aim points at.
func (r *placer) planTarget(a *scene.Aim) (r2.Vec, bool) {
	switch a.Form {
	case scene.AtXYZ, scene.AtXY:
		return r2.Vec{X: a.Point[0], Y: a.Point[1]}, true
	case scene.AtPlace, scene.AtCeiling:
		if a.MeansOpening() {
			return r.inOpening(&a.Place)
		}
		s, ok := r.place(&a.Place, func(r2.Vec) float64 { return 0 })
		return s.At, ok
	case scene.AimCeiling, scene.AimFloor:
		if r.refused(a) {
			return r2.Vec{}, false
		}
	}
	if p, isPart, ok := r.partPoint(a.Thing); isPart {
		return plan.InPlan(p), ok
	}
	s, ok := r.refSpot(a.Thing)
	return s.At, ok
}
