package resolve

import (
	"scrimshaw/plan/kit"
	"scrimshaw/plan/source"
)

// unlisted reports whether a name that the catalogue does not hold needs no fault of its own: no catalogue was
// given, which is told once, or a kit file of the scene that may hold the name could not be read, which the
// loader has told.
func (r *catalogue) unlisted(span source.Span) bool {
	if r.doc != nil && r.doc.KitLacks {
		return true
	}
	if len(r.kit.Units) > 0 {
		return false
	}
	if !r.bare {
		r.Errorf(span, CodeNoCatalogue, "resolve it with a document that was opened with a catalogue: scene.Env{Kit: …}, from kit.Shipped",
			"no catalogue was given to look this up in")
	}
	r.bare = true
	return true
}

// headOf makes the head of a choice.
func (r *catalogue) headOf(ch kit.Choice, make func(kit.Choice, *source.Log) (kit.Head, bool)) (kit.Head, bool) {
	own := &source.Log{}
	head, ok := make(ch, own)
	for _, d := range own.All() {
		switch d.Code {
		case kit.CodeUnknownUnit, kit.CodeUnknownModifier, kit.CodeUnknownGel:
			if r.unlisted(d.Span) {
				continue
			}
		}
		r.Log.Add(d)
	}
	return head, ok
}
