package resolve

import (
	"slices"
	"strings"

	"scrimshaw/plan/internal/report"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
)

// withUniqueNames is a scene in which each name means one thing. Where two things bear one name the
// loader has reported it, and the later one is left out.
func withUniqueNames(s *scene.Scene) *scene.Scene {
	own, seen := *s, map[string]bool{}
	own.Rooms = withoutRepeats(s.Rooms, seen, func(v *scene.Room) string { return v.Name })
	own.Openings = withoutRepeats(s.Openings, seen, func(v *scene.Opening) string { return v.Name })
	own.Furniture = withoutRepeats(s.Furniture, seen, func(v *scene.Furniture) string { return v.Name })
	own.People = withoutRepeats(s.People, seen, func(v *scene.Person) string { return v.Name })
	own.Cameras = withoutRepeats(s.Cameras, seen, func(v *scene.Camera) string { return v.Name })
	own.Lights = withoutRepeats(s.Lights, seen, func(v *scene.Light) string { return v.Name })
	own.Grip = withoutRepeats(s.Grip, seen, func(v *scene.Grip) string { return v.Name })
	own.Meters = withoutRepeats(s.Meters, seen, func(v *scene.Meter) string { return v.Name })
	return &own
}

// withoutRepeats leaves out of a list what bears a name that was seen before, and notes its names.
func withoutRepeats[T any](list []T, seen map[string]bool, name func(*T) string) []T {
	kept := make([]T, 0, len(list))
	for i := range list {
		if n := name(&list[i]); !seen[n] {
			seen[n] = true
			kept = append(kept, list[i])
		}
	}
	return kept
}

// index makes the table of names. There is one name space.
func (r *register) index() {
	r.things = map[string]thing{}
	add := func(k thingKind, i int, t *scene.Thing) {
		r.things[t.Name] = thing{kind: k, index: i, path: t.Path, span: t.Span, rank: len(r.names)}
		r.names = append(r.names, t.Name)
	}
	for i := range r.s.Rooms {
		add(roomKind, i, &r.s.Rooms[i].Thing)
	}
	for i := range r.s.Openings {
		add(openingKind, i, &r.s.Openings[i].Thing)
	}
	for i := range r.s.Furniture {
		add(furnitureKind, i, &r.s.Furniture[i].Thing)
	}
	for i := range r.s.People {
		add(personKind, i, &r.s.People[i].Thing)
		r.indexMarks(i)
	}
	for i := range r.s.Cameras {
		add(cameraKind, i, &r.s.Cameras[i].Thing)
	}
	for i := range r.s.Lights {
		add(lightKind, i, &r.s.Lights[i].Thing)
	}
	for i := range r.s.Grip {
		add(gripKind, i, &r.s.Grip[i].Thing)
	}
	for i := range r.s.Meters {
		add(meterKind, i, &r.s.Meters[i].Thing)
	}
}

// indexMarks adds the marks of a person, by their full names. They are no things to list among others.
func (r *register) indexMarks(person int) {
	p := &r.s.People[person]
	for _, name := range p.MarkNames() {
		m := p.MarkPlaces[name]
		r.things[markName(p, name)] = thing{kind: markKind, index: person, path: p.Path + ".marks." + name, span: report.Either(m.At.Set, m.At.Span, m.Span), rank: r.things[p.Name].rank}
	}
}

// markName is the full name of a mark: ruth.sit.
func markName(p *scene.Person, mark string) string { return p.Name + "." + mark }

// named finds a thing by its name without a part. It logs names that nothing bears; wanted, where
// there are any, are the kinds that will do.
func (r *register) named(ref scene.Ref, wanted ...thingKind) (thing, bool) {
	if ref.Name == "" {
		r.reportMissing(ref.Span, "", "a name is missing")
		return thing{}, false
	}
	t, known := r.things[ref.Name]
	if !known {
		r.unknown(ref, r.namesOf(wanted))
		return thing{}, false
	}
	if len(wanted) > 0 && !slices.Contains(wanted, t.kind) {
		r.wrongThing(ref, t.kind.article(), wanted)
		return thing{}, false
	}
	return t, true
}

// unknown logs a name that nothing bears.
func (r *register) unknown(ref scene.Ref, names []string) {
	if name, part, dotted := strings.Cut(ref.Name, "."); dotted {
		if t, known := r.things[name]; known {
			r.Errorf(ref.Span, source.CodeUnknownName, r.markHint(ref.Name, t, partHint(name, part, t.kind)),
				"%s, %s, has no part %q to stand at or aim at", name, t.kind.article(), part)
			return
		}
	}
	hint := source.DidYouMean(ref.Name, names)
	if hint == "" {
		hint = listed(names)
	}
	if hint == "" {
		hint = noneOfThem
	}
	r.Errorf(ref.Span, source.CodeUnknownName, hint, "nothing is called %s", ref.Name)
}

// markHint offers the marks of a person in place of one that nobody wrote; another hint where there are none.
func (r *register) markHint(name string, t thing, other string) string {
	if t.kind != personKind {
		return other
	}
	p := &r.s.People[t.index]
	var marks []string
	for _, mark := range p.MarkNames() {
		marks = append(marks, markName(p, mark))
	}
	if hint := source.DidYouMean(name, marks); hint != "" || len(marks) == 0 {
		return report.Either(hint != "", hint, other)
	}
	return listed(marks) + "; or " + other
}

// partHint is how to write what was likely meant by a part that does not exist.
func partHint(name, part string, k thingKind) string {
	switch k {
	case personKind, furnitureKind:
		return "write " + name + " alone"
	case roomKind:
		return "for a place by a wall write {wall: " + name + "." + part + ", along: 1.2, in: 0.3}"
	}
	return ""
}

// maxKinds is how many kinds of thing a message lists.
const maxKinds = 3

// wrongThing logs a name of something else than what is meant.
func (r *register) wrongThing(ref scene.Ref, is string, wanted []thingKind) {
	words := make([]string, len(wanted))
	for i, k := range wanted {
		words[i] = k.article()
	}
	meant := strings.Join(words, " or ")
	if len(wanted) > maxKinds {
		meant = "something with a place"
	}
	hint := listed(r.namesOf(wanted))
	if hint == "" {
		hint = noneOfThem
	}
	r.Errorf(ref.Span, scene.CodeWrongThing, hint, "%s is %s, where %s belongs", ref.Name, is, meant)
}

// noneOfThem is the fix where a name is of a kind of which there is nothing.
const noneOfThem = "the scene has nothing of that kind: add it, or name something else"

// maxListed is how many names a hint offers.
const maxListed = 8

// listed offers a few names, or "".
func listed(names []string) string {
	switch {
	case len(names) == 0:
		return ""
	case len(names) > maxListed:
		return "there are " + strings.Join(names[:maxListed], ", ") + " and others"
	case len(names) == 1:
		return "there is " + names[0]
	}
	return "there are " + strings.Join(names, ", ")
}

// namesOf lists the names of some kinds of thing; of all, where wanted is empty.
func (r *register) namesOf(wanted []thingKind) []string {
	var names []string
	for _, name := range r.names {
		if len(wanted) == 0 || slices.Contains(wanted, r.things[name].kind) {
			names = append(names, name)
		}
	}
	return names
}

// shown reports whether a camera belongs to the set-up.
func (r *register) shown(name string) bool {
	for _, ref := range r.s.Shown {
		if ref.Name == name {
			return true
		}
	}
	return len(r.s.Shown) == 0
}

// firstPerson is the name of the first person of the scene, or "".
func (r *register) firstPerson() string {
	if len(r.s.People) == 0 {
		return ""
	}
	return r.s.People[0].Name
}

// firstFor is the first person to a thing: in a reverse the other one of a pair is, to what went across.
func (r *register) firstFor(thing string) string {
	return r.s.Exchanged[thing].Of(r.firstPerson())
}

// firstCamera is the name of the first camera of the set-up, or "".
func (r *register) firstCamera() string {
	for _, shown := range r.s.Shown {
		if r.things[shown.Name].kind == cameraKind {
			return shown.Name
		}
	}
	if len(r.s.Cameras) == 0 {
		return ""
	}
	return r.s.Cameras[0].Name
}

// markOf reads a name such as ruth.sit: a person at a mark.
func (r *register) markOf(ref scene.Ref) (*scene.Person, *scene.MarkPlace, bool) {
	t, known := r.things[ref.Name]
	if !known || t.kind != markKind {
		return nil, nil, false
	}
	person := &r.s.People[t.index]
	_, part, _ := strings.Cut(ref.Name, ".")
	mark, ok := person.MarkPlaces[part]
	return person, &mark, ok
}

// personAt is the name of the person that an aim means, or "".
func (r *register) personAt(a scene.Given[scene.Aim]) string {
	if a.Set && a.Value.Form == scene.AtThing && r.isKind(a.Value.Thing, personKind) {
		return a.Value.Thing.Name
	}
	return ""
}

// reportMissing logs what a thing does not say. For a file the loader has logged it: only the maker of a
// Scene by hand hears it from here.
func (r *register) reportMissing(span source.Span, hint, format string, args ...any) {
	if r.doc == nil {
		r.Errorf(span, source.CodeMissingKey, hint, format, args...)
	}
}

// isKind reports whether a name means a thing of a kind; a mark means its person.
func (r *register) isKind(ref scene.Ref, k thingKind) bool {
	if _, _, ok := r.markOf(ref); ok {
		return k == personKind
	}
	t, known := r.things[ref.Name]
	return known && t.kind == k
}
