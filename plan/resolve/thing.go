package resolve

import "scrimshaw/plan/source"

// kind is what a named thing is, in the words of messages.
type kind string

const (
	aRoom      kind = "room"
	anOpening  kind = "opening"
	aFurniture kind = "piece of furniture"
	aPerson    kind = "person"
	aCamera    kind = "camera"
	aLight     kind = "light"
	aGrip      kind = "piece of grip"
	aMeter     kind = "meter"
)

// article is the kind with its article.
func (k kind) article() string {
	if k == anOpening {
		return "an " + string(k)
	}
	return "a " + string(k)
}

// thing is one named thing: what it is and where it stands in its list.
type thing struct {
	kind  kind
	index int
	path  string
	span  source.Span
	rank  int // its place in the order of the lists
}
