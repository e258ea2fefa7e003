package sheet

import (
	"slices"

	"scrimshaw/plan"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
	"scrimshaw/plan/study"
	"scrimshaw/plan/term"
)

// mapped is the word for what is mapped. A scene that asks for a plane has it in place of what its field says;
// an option goes before both.
func (o Options) mapped(s *scene.Scene, plane bool) term.Map {
	switch {
	case o.Field != "":
		return term.Map(o.Field)
	case plane || s == nil:
		return term.FloorMap
	}
	return s.Sheet.Field.Or(term.FloorMap)
}

// checkField reports a word for no map, and a map of faces where there is nobody.
func checkField(s placedWord, setup *plan.Setup, log *faults) {
	names := term.Words(term.Maps)
	switch {
	case s.word != "" && !slices.Contains(names, s.word):
		unknown(log, s, "field", names)
	case s.word == string(term.FaceMap) && !study.HasFace(setup):
		log.add(source.Diagnostic{Severity: source.Error, Code: "no-face", Span: s.span, Path: s.path, Setup: setup.Name,
			Message: "the map of domes at face height needs a person and a camera", Hint: "add people and cameras, or map the floor"})
	}
}
