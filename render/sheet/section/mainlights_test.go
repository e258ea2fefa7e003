package section_test

import (
	"testing"

	"scrimshaw/plan"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/term"
	"scrimshaw/render/sheet/section"
)

// TestWhoseBeamsAreDrawnWhole: those of all of a few lights; of many, those whose role is key or fill, and where none says so
// those that give the most on a side of a face.
func TestWhoseBeamsAreDrawnWhole(t *testing.T) {
	names := []string{"a", "b", "c", "d", "e", "f", "g"}
	setup := func(n int, roles map[string]term.Role) *plan.Setup {
		s := &plan.Setup{}
		for _, name := range names[:n] {
			l := plan.Light{Name: name, Level: 1}
			if r, ok := roles[name]; ok {
				l.Roles = []scene.Role{{Role: r}}
			}
			s.Lights = append(s.Lights, l)
		}
		return s
	}
	face := section.Face{
		Key:  &meter.Reading{Shares: []meter.Share{{Light: "b", Lux: 40}, {Light: "c", Lux: 30}, {Light: "c", Lux: 30}}},
		Fill: &meter.Reading{Shares: []meter.Share{{Light: "f", Lux: 4}, {Light: "a", Lux: 3}}},
	}
	roles := map[string]term.Role{"d": term.Key, "e": term.Fill, "g": term.Hair}
	for name, c := range map[string]struct {
		in    section.Input
		which section.Beams
		want  string
	}{
		"few":                 {section.Input{Setup: setup(6, nil)}, section.ManyBeams, "abcdef"},
		"many, by role":       {section.Input{Setup: setup(7, roles), Faces: []section.Face{face}}, section.ManyBeams, "de"},
		"many, by share":      {section.Input{Setup: setup(7, nil), Faces: []section.Face{face}}, section.ManyBeams, "cf"},
		"many, and nobody":    {section.Input{Setup: setup(7, nil)}, section.ManyBeams, ""},
		"many, and all asked": {section.Input{Setup: setup(7, roles)}, section.AllBeams, "abcdefg"},
		"few, and the main":   {section.Input{Setup: setup(6, roles)}, section.MainBeams, "de"},
		"none":                {section.Input{Setup: setup(3, nil)}, section.NoBeams, ""},
	} {
		got := section.WholeBeams(&c.in, c.which)
		said := ""
		for _, light := range names {
			if got[light] {
				said += light
			}
		}
		if said != c.want {
			t.Errorf("%s: the beams of %q are whole, want %q", name, said, c.want)
		}
	}
	for _, word := range section.BeamNames() {
		if _, ok := section.BeamsNamed(word); !ok {
			t.Errorf("%q is no choice", word)
		}
	}
	if _, ok := section.BeamsNamed("some"); ok {
		t.Error("any word is a choice")
	}
}
