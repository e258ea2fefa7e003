package resolve

import (
	"slices"
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
)

// drawLine lays the line of action through the heads of its two people. A set-up that lacks one of them has none.
func (r *linePass) drawLine() {
	if len(r.s.Line) != 2 {
		return
	}
	line := plan.Line{Span: r.s.Line[0].Span}
	first, second := r.s.Line[0], r.s.Line[1]
	if whose(first) == whose(second) {
		r.Errorf(second.Span, CodeLineOne, "name another person, or leave the line out", "the line of action runs from %s to %s: it needs two people", first.Name, second.Name)
		return
	}
	for i, ref := range r.s.Line {
		who := r.atEnd(ref)
		if who == nil {
			return
		}
		line.People[i], line.Ends[i] = ref.Name, who.At
	}
	if plane.SamePoint(line.Ends[0], line.Ends[1]) {
		r.Errorf(line.Span, CodeSamePlace, "move one of them, or name a mark", "%s and %s are in one place: no line runs between them", first.Name, second.Name)
		return
	}
	r.out.Line = &line
}

// whose is the person of an end of the line: "ruth" of "ruth.sit".
func whose(ref scene.Ref) string {
	person, _, _ := strings.Cut(ref.Name, ".")
	return person
}

// atEnd is who is at an end of the line; nil where the set-up lacks them, or where a fault has been reported.
func (r *linePass) atEnd(ref scene.Ref) *plan.Person {
	if r.struckHere(ref) {
		return nil
	}
	if _, known := r.named(ref, personKind, markKind); !known {
		return nil
	}
	return r.out.Post(ref.Name)
}

// struckHere says whether the set-up lacks somebody whom the scene has.
func (r *linePass) struckHere(ref scene.Ref) bool {
	name := whose(ref)
	if _, known := r.things[name]; known || r.doc == nil || r.s.Setup == "" {
		return false
	}
	return slices.ContainsFunc(r.doc.Base(&source.Log{}).People, func(p scene.Person) bool { return p.Name == name })
}
