package resolve

import "scrimshaw/plan/source"

// thingKind is what a named thing is, in the words of messages.
type thingKind string

const (
	roomKind      thingKind = "room"
	openingKind   thingKind = "opening"
	furnitureKind thingKind = "piece of furniture"
	personKind    thingKind = "person"
	cameraKind    thingKind = "camera"
	lightKind     thingKind = "light"
	gripKind      thingKind = "piece of grip"
	meterKind     thingKind = "meter"
	markKind      thingKind = "mark"
)

// roomPart is a part of a room that every room has.
type roomPart string

const (
	floorPart   roomPart = "floor"
	ceilingPart roomPart = "ceiling"
	wallsPart   roomPart = "walls"
)

// of is the part's name: kitchen.floor.
func (p roomPart) of(room string) string { return room + "." + string(p) }

// article is the kind with its article.
func (k thingKind) article() string {
	if k == openingKind {
		return "an " + string(k)
	}
	return "a " + string(k)
}

// thing is one named thing: what it is and where it stands in its list.
type thing struct {
	kind  thingKind
	index int
	path  string
	span  source.Span
	rank  int // its place in the order of the lists
}
