package resolve

import (
	"slices"

	"scrimshaw/plan"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
)

// What stays in a set-up keeps the place, the height and the facing that it had in the set-up
// before, whatever it was placed by; keys that the set-up itself writes still hold.

// freeze notes what stays, and refuses what cannot.
func (r *history) freeze() {
	r.frozen = map[string]bool{}
	defer r.About("setups." + r.s.Setup)()
	for _, ref := range r.s.Stays {
		t, ok := r.named(ref, aFurniture, aPerson, aCamera, aLight, aGrip)
		if !ok {
			continue
		}
		if r.before == nil {
			r.Errorf(ref.Span, CodeNothingBefore, "remove stays, or say which set-up this one is after", "%s cannot stay: no set-up comes before this one", ref.Name)
			return
		}
		if _, stood := r.before.Spots[ref.Name]; !stood {
			r.Errorf(ref.Span, source.CodeUnknownName, "leave it out of stays", "%s cannot stay: it did not stand in the set-up before", ref.Name)
			continue
		}
		if r.writtenHere(r.nodeOf(t), "at") {
			r.Errorf(ref.Span, CodeStaysMoved, "leave it out of stays, or out of the change", "%s is said to stay and to move", ref.Name)
			continue
		}
		r.frozen[ref.Name] = true
	}
}

// nodeOf is what was written of a thing.
func (r *register) nodeOf(t thing) *source.Node {
	switch t.kind {
	case aFurniture:
		return r.s.Furniture[t.index].Node
	case aPerson:
		return r.s.People[t.index].Node
	case aCamera:
		return r.s.Cameras[t.index].Node
	case aLight:
		return r.s.Lights[t.index].Node
	case aGrip:
		return r.s.Grip[t.index].Node
	}
	return nil
}

// writtenHere reports whether the set-up at hand wrote a key of a thing.
func (r *register) writtenHere(n *source.Node, key string) bool {
	v := n.Get(key)
	return v != nil && v.Layer != "" && v.Layer == r.s.Setup
}

func (r *history) frozenSpot(name string) (plan.Spot, bool) {
	if !r.frozen[name] {
		return plan.Spot{}, false
	}
	s, ok := r.before.Spots[name]
	return s, ok
}

func (r *history) frozenPerson(name string) *plan.Person {
	return stood(r, name, func(s *plan.Setup) []plan.Person { return s.People }, func(p *plan.Person) string { return p.Name })
}

func (r *history) frozenCamera(name string) *plan.Camera {
	return stood(r, name, func(s *plan.Setup) []plan.Camera { return s.Cameras }, func(c *plan.Camera) string { return c.Name })
}

func (r *history) frozenLight(name string) *plan.Light {
	return stood(r, name, func(s *plan.Setup) []plan.Light { return s.Lights }, func(l *plan.Light) string { return l.Name })
}

func (r *history) frozenGrip(name string) *plan.Grip {
	return stood(r, name, func(s *plan.Setup) []plan.Grip { return s.Grip }, func(g *plan.Grip) string { return g.Name })
}

// stood is a thing that stays, as it was in the set-up before; nil for one that does not stay.
func stood[T any](r *history, name string, list func(*plan.Setup) []T, called func(*T) string) *T {
	if !r.frozen[name] {
		return nil
	}
	all := list(r.before)
	for i := range all {
		if called(&all[i]) == name {
			return &all[i]
		}
	}
	return nil
}

// setupBefore resolves the set-up that comes before a scene's own, where something stays: the one
// it is a change of, else the one before it in the file. Its faults are told when it is resolved
// itself. waiting are the set-ups that wait for it.
func setupBefore(doc *scene.Document, s *scene.Scene, waiting []string) *plan.Setup {
	name := nameBefore(s)
	if doc == nil || len(s.Stays) == 0 || name == "" || slices.Contains(waiting, name) {
		return nil
	}
	quiet := &source.Log{}
	earlier := doc.Scene(name, quiet)
	if earlier == nil {
		return nil
	}
	return resolve(doc, earlier, setupBefore(doc, earlier, append(waiting, s.Setup)), quiet)
}

// nameBefore is the name of that set-up, or "".
func nameBefore(s *scene.Scene) string {
	for i := range s.Setups {
		if s.Setups[i].Name != s.Setup {
			continue
		}
		if after := s.Setups[i].After.Name; after != "" {
			return after
		}
		if i > 0 {
			return s.Setups[i-1].Name
		}
	}
	return ""
}
