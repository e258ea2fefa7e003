package scene

import (
	"slices"

	"scrimshaw/plan/source"
)

// Kinds of thing, in the words of messages.
const (
	kindRoom      = "a room"
	kindOpening   = "an opening"
	kindFurniture = "a piece of furniture"
	kindPerson    = "a person"
	kindCamera    = "a camera"
	kindLight     = "a light"
	kindGrip      = "a piece of grip"
	kindMeter     = "a meter"
	kindCircuit   = "a circuit"
	kindCue       = "a cue"
	kindSetup     = "a set-up"
)

// named is one name with what bears it.
type named struct {
	thing *Thing
	kind  string
}

// things lists all that shares the one name space, in the order of the file.
func (s *Scene) things() []named {
	var all []named
	all = appendNamed(all, s.Rooms, kindRoom)
	all = appendNamed(all, s.Openings, kindOpening)
	all = appendNamed(all, s.Furniture, kindFurniture)
	all = appendNamed(all, s.People, kindPerson)
	all = appendNamed(all, s.Cameras, kindCamera)
	all = appendNamed(all, s.Lights, kindLight)
	all = appendNamed(all, s.Grip, kindGrip)
	all = appendNamed(all, s.Meters, kindMeter)
	slices.SortStableFunc(all, func(a, b named) int { return a.thing.Span.Start - b.thing.Span.Start })
	return all
}

// appendNamed adds the names of a list of things.
func appendNamed[T any, P namedThing[T]](all []named, list []T, kind string) []named {
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
