package section

import (
	"strings"

	"scrimshaw/plan"
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

// cautions are those of the trade.
func cautions(in *Input) *Section {
	return &Section{Title: "Cautions", Points: sentences(in.Cautions)}
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
	for _, thing := range things {
		t.Entries = append(t.Entries, Entry{Cells: []string{thingName(c.In.Setup, thing), strings.Join(values[thing], "; ")}})
	}
	return &Section{Title: "Assumed", Rank: layout.Other, Tables: []Table{t}}
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
		if l := LightNamed(s, name); l != nil {
			return l.Numbered()
		}
	case "grip":
		for i := range s.Grip {
			if g := &s.Grip[i]; g.Name == name {
				return g.Numbered()
			}
		}
	}
	return thing[strings.IndexByte(thing, '.')+1:]
}
