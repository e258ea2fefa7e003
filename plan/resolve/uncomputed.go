package resolve

import (
	"slices"

	"scrimshaw/plan"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
)

// takeUncomputed lists the keys that are not computed yet, once all that they are on has its number. What is on
// a camera that the set-up does not show is no matter of it.
func (r *finisher) takeUncomputed() {
	for _, u := range append(slices.Clone(r.s.Uncomputed), r.uncomputed...) {
		if t, known := r.things[u.Thing()]; known && t.kind == aCamera && !r.shown(u.Thing()) {
			continue
		}
		r.out.Uncomputed = append(r.out.Uncomputed, plan.Uncomputed{Uncomputed: u, Words: worded(r.out, &u)})
	}
}

// notComputed adds a key that the loader cannot know of.
func (r *draft) notComputed(l scene.Later, path string, span source.Span) {
	r.uncomputed = append(r.uncomputed, scene.Uncomputed{Later: l, Path: path + "." + l.Key, Span: span})
}

// formNotComputed tells of a thing at a path whose form is not computed yet, in a scene that was made by hand: of
// a file the loader has told.
func (r *draft) formNotComputed(table, form, path string, span source.Span) {
	l, later := scene.LaterForm(table, form)
	told := func(u scene.Uncomputed) bool { return u.Path == path+"."+form }
	if !later || slices.ContainsFunc(r.s.Uncomputed, told) {
		return
	}
	r.notComputed(l, path, span)
	r.Warnf(span, source.CodeLater, "take the figures as those without it", "%s is drawn and not computed yet: %s", form, l.Waits)
}

// worded says a key with what it is on, by its number on the plan.
func worded(s *plan.Setup, u *scene.Uncomputed) string {
	thing := u.Thing()
	switch {
	case u.Table == "site" && u.Key == "when":
		return "sun and sky"
	case u.Table == "site":
		return u.Key + " of the site"
	case u.Table == "set-up":
		return u.Key + " of the set-up " + thing
	case u.Table == "piece of grip":
		return wordedGrip(s, u.Key, thing)
	case u.Table == "piece of furniture":
		return u.Key + " " + thing
	case thing == "":
		return u.Key
	}
	return u.Key + " of " + s.Numbered(thing)
}

// wordedGrip says a piece of grip with its cloth: "half-diffusion on frame G1 soft".
func wordedGrip(s *plan.Setup, kind, name string) string {
	words := kind + " " + s.Numbered(name)
	for i := range s.Grip {
		if g := &s.Grip[i]; g.Name == name && g.Cloth != "" {
			return g.Cloth + " on " + words
		}
	}
	return words
}
