package section

import (
	"slices"
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/meter"
	"scrimshaw/render/sheet/layout"
)

// watch is what the review found that needs attention.
func watch(in *Input) *Section {
	return &Section{Title: "Watch", Alarm: true, Points: sentences(in.Warnings)}
}

// mostWithMetering is how many lights, at most, a sheet has that says how the meter is held: with more it would often take a page for that
// alone, and the head of the sheet names the receptor and its constant anyway.
const mostWithMetering = 8

// metering says how a meter is held that shows the stops of the faces; nothing where no side of a face is read.
func metering(in *Input) *Section {
	if len(in.Setup.Lights) > mostWithMetering || !slices.ContainsFunc(in.Faces, func(f Face) bool { return f.Key != nil }) || workingLux(in.Setup) == 0 {
		return &Section{}
	}
	return &Section{Title: "How faces are metered", Rank: layout.Other, Words: []string{meter.HeldInWords(&in.Setup.Exposure)}}
}

// unchecked is what nobody has checked.
func unchecked(in *Input) *Section {
	return &Section{Title: "Not checked", Rank: layout.Other, Words: in.Unchecked}
}

// assumed lists the defaults that decided numbers, those of one thing together, and things together of which the same is assumed.
func (c Report) assumed() *Section {
	values := map[string][]string{}
	var things []string
	for _, a := range c.In.Setup.Assumed {
		if values[a.Thing] == nil {
			things = append(things, a.Thing)
		}
		values[a.Thing] = append(values[a.Thing], Joined(" ", a.What, a.Value))
	}
	t := Table{Columns: []Column{{}, {Flexible: true}}}
	for _, g := range gathered(things, values) {
		t.Entries = append(t.Entries, Entry{Cells: []string{c.called(g.things), g.words}})
	}
	return &Section{Title: "Assumed", Rank: layout.Other, Tables: []Table{t}}
}

// alike is what is assumed of some things.
type alike struct {
	things []string
	words  string
}

// gathered are things of which the same is assumed, each group where its first thing stands.
func gathered(things []string, values map[string][]string) (all []alike) {
	for _, thing := range things {
		words := strings.Join(values[thing], "; ")
		at := slices.IndexFunc(all, func(a alike) bool { return a.words == words })
		if at < 0 {
			at, all = len(all), append(all, alike{words: words})
		}
		all[at].things = append(all[at].things, thing)
	}
	return all
}

// mostNamed is how many things are named of which the same is assumed; of more, those with a number on the plan are read by that.
const mostNamed = 2

// called are the names of things of which the same is assumed.
func (c Report) called(things []string) string {
	var names, tags []string
	for _, thing := range things {
		if tag := tagOfThing(c.In.Setup, thing); tag != "" && len(things) > mostNamed {
			tags = append(tags, tag)
		} else {
			names = append(names, thingName(c.In.Setup, thing))
		}
	}
	return strings.Join(append(names, runs(tags)...), ", ")
}

// tagOfThing is the number of a light or a piece of grip by its place in the scene; "" of all else.
func tagOfThing(s *plan.Setup, thing string) string {
	switch list, name, _ := strings.Cut(thing, "."); list {
	case "lights":
		if l := s.LightNamed(name); l != nil {
			return l.Tag
		}
	case "grip":
		if g := s.GripNamed(name); g != nil {
			return g.Tag
		}
	}
	return ""
}

// thingName drops the list a thing stands in, and puts its number on the plan before its name:
// "lights.day" is "1 day".
func thingName(s *plan.Setup, thing string) string {
	if thing == "" {
		return "scene"
	}
	list, name, _ := strings.Cut(thing, ".")
	switch list {
	case "lights":
		if l := s.LightNamed(name); l != nil {
			return l.Numbered()
		}
	case "grip":
		if g := s.GripNamed(name); g != nil {
			return g.Numbered()
		}
	}
	return thing[strings.IndexByte(thing, '.')+1:]
}
