package plan

import (
	"slices"

	"scrimshaw/plan/scene"
	"scrimshaw/plan/term"
)

// IsKeyOf says whether a light has the role of somebody's key, or of everybody's.
func (l *Light) IsKeyOf(person string) bool {
	return slices.ContainsFunc(l.Roles, func(r scene.Role) bool { return r.Role == term.Key && (r.Person.Name == "" || r.Person.Name == person) })
}

// AimsAtThing says whether the scene aims a light at what could send its light on: a thing, a part of a room, the ceiling over
// it; a light on a background is for that.
func (s *Setup) AimsAtThing(l *Light) bool {
	if slices.ContainsFunc(l.Roles, func(r scene.Role) bool { return r.Role == term.Background }) {
		return false
	}
	for i := range s.Scene.Lights {
		w := &s.Scene.Lights[i]
		if w.Name != l.Name || !w.Aim.Set {
			continue
		}
		switch w.Aim.Value.Form {
		case scene.AtCeiling, scene.AimUp, scene.AimCeiling, scene.AimFloor:
			return true
		case scene.AtPlace:
			return w.Aim.Value.MeansOpening()
		case scene.AtThing:
			return s.Post(w.Aim.Value.Thing.Name) == nil
		}
	}
	return false
}
