package sheet

import (
	"slices"

	"scrimshaw/plan"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
	"scrimshaw/plan/study"
)

// The words for what is mapped.
const (
	mapFloor = "floor"
	mapFace  = "face" // the dome at face height
)

// FieldNames lists what can be mapped, the default first.
func FieldNames() []string { return []string{mapFloor, mapFace} }

// mapped is the word for what is mapped. A scene that asks for a plane has it in place of what its field says;
// an option goes before both.
func (o Options) mapped(s *scene.Scene, plane bool) string {
	switch {
	case o.Field != "":
		return o.Field
	case plane || s == nil:
		return mapFloor
	}
	return s.Sheet.Field.Or(mapFloor)
}

// checkField reports a word for no map, and a map of faces where there is nobody.
func checkField(s placedWord, setup *plan.Setup, log *faults) {
	names := FieldNames()
	switch {
	case s.word != "" && !slices.Contains(names, s.word):
		unknown(log, s, "field", names)
	case s.word == mapFace && !study.HasFace(setup):
		log.add(source.Diagnostic{Severity: source.Error, Code: "no-face", Span: s.span, Path: s.path, Setup: setup.Name,
			Message: "the map of domes at face height needs a person and a camera", Hint: "add people and cameras, or map the floor"})
	}
}
