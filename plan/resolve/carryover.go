package resolve

import (
	"scrimshaw/plan"
	"scrimshaw/plan/source"
)

// What stays in a set-up keeps the place, the height and the facing that it had in the set-up
// before, whatever it was placed by; keys that the set-up itself writes still hold.

// findKept notes what stays, and refuses what cannot.
func (r *carryOver) findKept() {
	r.kept = map[string]bool{}
	defer r.About("setups." + r.s.Setup)()
	for _, ref := range r.s.Stays {
		t, ok := r.named(ref, furnitureKind, personKind, cameraKind, lightKind, gripKind)
		if !ok {
			continue
		}
		if r.previous == nil {
			r.Errorf(ref.Span, CodeNothingBefore, "remove stays, or say which set-up this one is after", "%s cannot stay: no set-up comes before this one", ref.Name)
			return
		}
		if _, stood := r.previous.Spots[ref.Name]; !stood {
			r.Errorf(ref.Span, source.CodeUnknownName, "take it out of stays", "%s cannot stay: it did not stand in the set-up before", ref.Name)
			continue
		}
		if r.writtenHere(r.nodeOf(t), "at") {
			r.Errorf(ref.Span, CodeStaysMoved, "take it out of stays, or take its new place out of the change", "the set-up makes %s both stay and move", ref.Name)
			continue
		}
		r.kept[ref.Name] = true
	}
}

func (r *carryOver) keptSpot(name string) (plan.Spot, bool) {
	if !r.kept[name] {
		return plan.Spot{}, false
	}
	s, ok := r.previous.Spots[name]
	return s, ok
}

func (r *carryOver) keptPerson(name string) *plan.Person {
	return keptThing(r, name, func(s *plan.Setup) []plan.Person { return s.People }, func(p *plan.Person) string { return p.Name })
}

func (r *carryOver) keptCamera(name string) *plan.Camera {
	return keptThing(r, name, func(s *plan.Setup) []plan.Camera { return s.Cameras }, func(c *plan.Camera) string { return c.Name })
}

func (r *carryOver) keptLight(name string) *plan.Light {
	return keptThing(r, name, func(s *plan.Setup) []plan.Light { return s.Lights }, func(l *plan.Light) string { return l.Name })
}

func (r *carryOver) keptGrip(name string) *plan.Grip {
	return keptThing(r, name, func(s *plan.Setup) []plan.Grip { return s.Grip }, func(g *plan.Grip) string { return g.Name })
}

// keptThing is a thing that stays, as it was in the set-up before; nil for one that does not stay.
func keptThing[T any](r *carryOver, name string, list func(*plan.Setup) []T, called func(*T) string) *T {
	if !r.kept[name] {
		return nil
	}
	all := list(r.previous)
	for i := range all {
		if called(&all[i]) == name {
			return &all[i]
		}
	}
	return nil
}
