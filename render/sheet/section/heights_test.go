package section_test

import (
	"strings"
	"testing"

	"scrimshaw/render/sheet/internal/fixture"
	"scrimshaw/render/sheet/section"
)

// A height counts from the floor, whatever a thing stands on; what its stand has to reach from there is
// said beside it.
func TestHeightsCountFromTheFloor(t *testing.T) {
	s, _ := fixture.SetupOf(t, `scrimshaw: 1
rooms: {den: {size: [5, 4], base: 0.5}}
furniture: {stage: {deck: [4, 3, 0.3], at: [2.5, 2]}}
people: {ada: {at: [2.5, 3.8]}}
cameras: {A: {at: {top: stage}, height: 1.5, lens: 32 mm}, B: {at: [0.2, 0.2], height: 1.5, lens: 32 mm}, C: {at: [0.4, 0.2], lens: 32 mm}}
lights: {a: {unit: fresnel-tungsten-650, at: {top: stage, shift: [1, 0]}, height: 1.5}, b: {unit: fresnel-tungsten-650, at: [4.8, 0.2], height: 1.5}}
grip: {c: {flag: [0.6, 0.6], at: {top: stage, shift: [0, 1]}, height: 1.5}, d: {card: [0.6, 0.6], at: [0.2, 3.6], height: 1.5}}
`)
	in := section.Input{Setup: s}
	for _, title := range []string{"Lights, in metres", "Grip, in metres", "Cameras, in metres"} {
		list := sectionOf(t, in, title)
		height := -1
		for i, col := range list.Tables[0].Columns {
			if col.Head == "height" || col.Head == "high" {
				height = i
			}
		}
		for i, e := range list.Tables[0].Entries {
			if want := map[bool]string{true: "1.50", false: "1.59"}[i < 2]; e.Cells[height] != want {
				t.Errorf("%s: %s is %s high, want %s", title, e.Cells[0], e.Cells[height], want)
			}
			onDeck := strings.Contains(strings.Join(e.Notes, " "), "1.20 m above its ground")
			if onDeck != (i == 0) {
				t.Errorf("%s: %s, with the notes %q", title, e.Cells[0], e.Notes)
			}
		}
	}
	said := reportOf(in).Print(section.FieldsOf(s, ""))
	if !strings.Contains(said, "height 1.59 m, the eyes of ada") {
		t.Errorf("the height of a camera that was assumed does not count from the floor:\n%s", said)
	}
}
