package scene

import (
	"slices"
	"strings"

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

// checkNames refuses one name for two things, and, in the keys that this package alone reads,
// names that nothing bears. Places, aims and mounts of things are looked up where they are
// resolved, in package plan.
func (s *Scene) checkNames(c *source.Context) {
	order := s.things()
	checkTwice(order, c)
	order = borne(order, s.Circuits, aCircuit)
	order = borne(order, s.Cues, aCue)
	order = borne(order, s.Setups, aSetup)
	for _, u := range s.uses() {
		u.check(order, c)
	}
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

// use is a name that is written where one of some kinds of thing is meant.
type use struct {
	path   string // of the key it is written under
	ref    Ref
	wanted []string
}

// check refuses a name that nothing of the wanted kinds bears.
func (u use) check(order []named, c *source.Context) {
	name, _, _ := strings.Cut(u.ref.Name, ".")
	var near []string
	other := ""
	for _, n := range order {
		fits := slices.Contains(u.wanted, n.kind)
		switch {
		case n.thing.Name == name && fits:
			return
		case n.thing.Name == name:
			other = n.kind
		case fits:
			near = append(near, n.thing.Name)
		}
	}
	meant := orList(u.wanted)
	if len(u.wanted) > 3 {
		meant = "something with a place"
	}
	d := source.Diagnostic{Severity: source.Error, Code: source.CodeUnknownName, Span: u.ref.Span, Path: u.path, Setup: c.Setup,
		Message: "nothing is called " + name + ", where " + meant + " belongs", Hint: source.DidYouMean(name, near)}
	if other != "" {
		d.Code, d.Message = CodeWrongThing, name+" is "+other+", where "+meant+" belongs"
	}
	if d.Hint == "" && len(near) > 0 && len(near) <= mostOffered {
		d.Hint = "there is " + orList(near)
	}
	c.Log.Add(d)
}

// mostOffered is how many names a hint lists.
const mostOffered = 8
