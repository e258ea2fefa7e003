package scene

import (
	"scrimshaw/plan/source"
	"scrimshaw/plan/unit"
)

// Given is a value that may be left out. Span is where it was written; when Set is false it is
// the span of the thing that lacks it.
type Given[T any] struct {
	Value T
	Set   bool
	Span  source.Span
}

// Or returns the written value, or def.
func (g Given[T]) Or(def T) T {
	if g.Set {
		return g.Value
	}
	return def
}

// Ref is a name written where a thing is meant.
type Ref struct {
	Name string
	Span source.Span
}

// Thing is what every named thing of a scene has.
type Thing struct {
	Name string
	Path string      // "lights.key"
	Span source.Span // of its name
	Node *source.Node

	Faulty bool // an error says what is wrong with its keys; what is wrong is left out

	catalogueNames []catalogueName // entries of the catalogue in keys that are computed later
}

func (t *Thing) self() *Thing { return t }

// noteCatalogueName is the name of an entry of the catalogue in a key that no other package looks up today.
type catalogueName struct {
	key, what string // "diffusion", "cloth"
	ref       Ref
}

// noteCatalogueName notes that a thing asks the catalogue for an entry; no name asks for nothing.
func (t *Thing) noteCatalogueName(key, what string, names ...Ref) {
	for _, r := range names {
		if r.Name != "" {
			t.catalogueNames = append(t.catalogueNames, catalogueName{key, what, r})
		}
	}
}

// Shutter is an angle in degrees, or a time in seconds; one of them is zero.
type Shutter = unit.Shutter

// Stop is a T-stop: the figure as written and the exact N it stands for (T5.6 is 4 sqrt 2).
type Stop = unit.Stop

// ColourWord is a white as written: a CCT, and whether the word daylight stood before it.
type ColourWord = unit.Kelvin
