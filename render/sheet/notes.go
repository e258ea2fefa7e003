package sheet

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"scrimshaw/plan"
)

// watch is what the review found that needs attention.
func watch(in *Input) *section {
	return &section{title: "Watch", alarm: true, points: sentences(in.Watch)}
}

// sentences gives each text a capital and a full stop, for findings are told without.
func sentences(all []string) []string {
	var out []string
	for _, s := range all {
		if s = strings.TrimSpace(s); s == "" {
			continue
		}
		first, size := utf8.DecodeRuneInString(s)
		s = string(unicode.ToUpper(first)) + s[size:]
		if !strings.ContainsAny(s[len(s)-1:], ".!?") {
			s += "."
		}
		out = append(out, s)
	}
	return out
}

// cautions are those of the trade.
func cautions(in *Input) *section {
	return &section{title: "Cautions", points: sentences(in.Cautions)}
}

// unchecked is what nobody has checked.
func unchecked(in *Input) *section {
	return &section{title: "Not checked", rank: other, words: in.Unchecked}
}

// assumed lists the defaults that decided numbers, those of one thing together.
func (c Report) assumed() *section {
	var things []string
	values := map[string][]string{}
	for _, a := range c.in.Setup.Assumed {
		if _, seen := values[a.Thing]; !seen {
			things = append(things, a.Thing)
		}
		values[a.Thing] = append(values[a.Thing], joined(" ", a.What, a.Value))
	}
	t := table{columns: []column{{}, {flexible: true}}}
	for _, thing := range things {
		t.entries = append(t.entries, entry{cells: []string{thingName(c.in.Setup, thing), strings.Join(values[thing], "; ")}})
	}
	return &section{title: "Assumed", rank: other, tables: []table{t}}
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
		if l := lightNamed(s, name); l != nil {
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
