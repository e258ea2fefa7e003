package scene

import (
	"strings"

	"scrimshaw/plan/source"
)

// Change says which figures would be others if a key were computed.
type Change uint8

// What a key could change. Where nobody can say how far its light goes, it is all light that goes there.
const (
	NoFigure     Change = iota // it asks for a thing that is not made
	OwnLight                   // what the light that it is on gives
	OpeningLight               // what comes through the opening that it is on, or leaves a room by it
	SkyLight                   // all light in rooms that are open to the outside, and outdoors
	AllLight                   // all light
	OwnStops                   // the stops that are judged by the camera that it is on
)

// Later is a key of the language that is read and checked, and not computed yet.
type Later struct {
	Table, Key string // the map that it stands in, as the reference calls it, and the key: "opening", "outside"
	Waits      string // for what: "the load on circuits"
	Changes    Change
	Beside     string // the key without which it changes no figure; "": there is none
	Colours    bool   // it gives the light that it is on another colour than the lists say
}

// Uncomputed is a key that a scene writes and nothing computes yet.
type Uncomputed struct {
	Later
	Path string      // "openings.w.outside"
	Span source.Span // of the key
}

// Thing is the name of what the key is on; "" of a key of the scene itself.
func (u *Uncomputed) Thing() string {
	parts := strings.Split(u.Path, ".")
	if len(parts) < 3 {
		return ""
	}
	return parts[1]
}

// What several keys wait for.
const (
	bySun     = "the sun and the sky"
	byBalance = "the balance"
)

// laters is the one list of such keys. The loader warns of them, the schema and the reference say so, every
// figure that they could change is struck through, and the sheet names what they ask for. A key that is
// computed loses its line here, and nothing else has to change.
var laters = []Later{
	{Table: "opening", Key: "outside", Waits: "the view outside", Changes: OpeningLight},
	{Table: "site", Key: "when", Waits: bySun, Changes: SkyLight, Beside: "latitude"},
	{Table: "scene", Key: "haze", Waits: "light scattered by the air", Changes: AllLight},

	{Table: "scene", Key: "wants", Waits: byBalance},
	{Table: "scene", Key: "measured", Waits: "comparing with readings of the day"},
	{Table: "site", Key: "latitude", Waits: bySun},
	{Table: "site", Key: "longitude", Waits: bySun},
	{Table: "site", Key: "zone", Waits: bySun},
	{Table: "site", Key: "until", Waits: "the way of the sun until then"},
	{Table: "site", Key: "sky", Waits: bySun},
}

// Unfocused is a focus of a lamp that has no figures by focus: the key is computed, and here nothing follows
// from it.
var Unfocused = Later{Table: "light", Key: "focus", Waits: "figures by focus", Changes: OwnLight}

// laterNamed returns what waits to be computed under a key of a table, or nil.
func laterNamed(table, key string) *Later {
	for i := range laters {
		if l := &laters[i]; l.Table == table && l.Key == key {
			return l
		}
	}
	return nil
}

// until says what to do as long as the key is not computed.
func (l *Later) until() string {
	if l.Changes == NoFigure {
		return "until it is, the sheet leaves it out"
	}
	return "until it is, the figures leave it out, and each figure that it could change is struck through"
}

// otherwise says the same where the key lacks that it changes no figure without.
func (l *Later) otherwise() string {
	return "until it is, no figure is struck: without a " + l.Beside + " no sun is asked for"
}

// AltersLight says whether light would be other if the key were computed.
func (l *Later) AltersLight() bool { return l.Changes >= OwnLight && l.Changes <= AllLight }
