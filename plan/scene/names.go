package scene

import (
	"slices"

	"scrimshaw/plan/source"
)

// Kinds of thing, in the words of messages.
const (
	aRoom    = "a room"
	anHole   = "an opening"
	aPiece   = "a piece of furniture"
	aPerson  = "a person"
	aCamera  = "a camera"
	aLight   = "a light"
	aRig     = "a piece of grip"
	aMeter   = "a meter"
	aCircuit = "a circuit"
	aCue     = "a cue"
	aSetup   = "a set-up"
)

// named is one name with what bears it.
type named struct {
	thing *Thing
	kind  string
}

// things lists all that shares the one name space, in the order of the file.
func (s *Scene) things() []named {
	var all []named
	all = borne(all, s.Rooms, aRoom)
	all = borne(all, s.Openings, anHole)
	all = borne(all, s.Furniture, aPiece)
	all = borne(all, s.People, aPerson)
	all = borne(all, s.Cameras, aCamera)
	all = borne(all, s.Lights, aLight)
	all = borne(all, s.Grip, aRig)
	all = borne(all, s.Meters, aMeter)
	slices.SortStableFunc(all, func(a, b named) int { return a.thing.Span.Start - b.thing.Span.Start })
	return all
}

// borne adds the names of a list of things.
func borne[T any, P bearer[T]](all []named, list []T, kind string) []named {
	for i := range list {
		all = append(all, named{P(&list[i]).self(), kind})
	}
	return all
}

// checkTwice tells the second bearer of a name.
func checkTwice(order []named, c *source.Context) {
	first := map[string]named{}
	for _, n := range order {
		f, twice := first[n.thing.Name]
		if !twice {
			first[n.thing.Name] = n
			continue
		}
		c.Log.Add(source.Diagnostic{
			Severity: source.Error, Code: CodeTwice, Span: n.thing.Span, Path: n.thing.Path, Setup: c.Setup,
			Message: n.thing.Name + " is already the name of " + f.kind,
			Hint:    "all things share one name space: give this one another name",
			Related: []source.Related{{Span: f.thing.Span, Message: f.kind + " has this name"}},
		})
	}
}
