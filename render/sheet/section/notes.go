package section

import (
	"slices"
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/meter"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/symbols/ink"
)

// watch is what the review found that needs attention.
func watch(in *Input) *Section {
	return &Section{Title: "Watch", Alarm: true, Points: sentences(in.Warnings)}
}

// sentences gives each text a capital and a full stop, which findings do not have.
func sentences(all []string) []string {
	var out []string
	for _, s := range all {
		if s = strings.TrimSpace(s); s == "" {
			continue
		}
		s = ink.Capital(s)
		if !strings.ContainsAny(s[len(s)-1:], ".!?") {
			s += "."
		}
		out = append(out, s)
	}
	return out
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

// assumed lists the defaults that decided numbers, those of one thing together.
func (c Report) assumed() *Section {
	var things []string
	values := map[string][]string{}
	for _, a := range c.In.Setup.Assumed {
		if _, seen := values[a.Thing]; !seen {
			things = append(things, a.Thing)
		}
		values[a.Thing] = append(values[a.Thing], Joined(" ", a.What, a.Value))
	}
	t := Table{Columns: []Column{{}, {Flexible: true}}}
	for i := 0; i < len(things); {
		words, alike := strings.Join(values[things[i]], "; "), i+1
		for alike < len(things) && isLight(things[i]) && isLight(things[alike]) && strings.Join(values[things[alike]], "; ") == words {
			alike++
		}
		name := thingName(c.In.Setup, things[i])
		if alike-i > 2 { // lights that follow each other are read by their numbers
			name = c.tagOf(things[i]) + " to " + c.tagOf(things[alike-1])
		} else {
			alike = i + 1
		}
		t.Entries = append(t.Entries, Entry{Cells: []string{name, words}})
		i = alike
	}
	return &Section{Title: "Assumed", Rank: layout.Other, Tables: []Table{t}}
}

// isLight says whether a thing of the scene stands in the list of lights.
func isLight(thing string) bool { return strings.HasPrefix(thing, "lights.") }

// tagOf is the number of a light by its place in the scene.
func (c Report) tagOf(thing string) string {
	if l := c.In.Setup.LightNamed(strings.TrimPrefix(thing, "lights.")); l != nil {
		return l.Tag
	}
	return thing
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
