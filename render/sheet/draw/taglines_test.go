package draw

import (
	"strings"
	"testing"

	"scrimshaw/render/sheet/internal/fixture"
	"scrimshaw/render/sheet/section"
)

// TestTagsCountHeightsFromTheFloor: beside a thing on a stage stands its height over the floor of the room.
func TestTagsCountHeightsFromTheFloor(t *testing.T) {
	s, _ := fixture.SetupOf(t, `scrimshaw: 1
rooms: {den: {size: [5, 4], base: 0.5}}
furniture: {stage: {deck: [4, 3, 0.3], at: [2.5, 2]}}
cameras: {A: {at: {top: stage}, height: 1.5, lens: 32 mm}}
grip: {c: {flag: [0.6, 0.6], at: {top: stage, shift: [0, 1]}, height: 1.5}}
`)
	c := things{kitchenDrawing(t, section.Input{Setup: s})}
	for _, lines := range [][][]string{c.cameraLines(&s.Cameras[0]), c.gripLines(&s.Grip[0])} {
		found := false
		for _, l := range lines {
			found = found || strings.Contains(strings.Join(l, " "), "h 1.50")
		}
		if !found {
			t.Errorf("beside it stands %q", lines)
		}
	}
}

// TestTagsSayWhichIsTheKey: beside a light that is somebody's key stands that it is, and that a fill is one; what else a
// light is for the list says.
func TestTagsSayWhichIsTheKey(t *testing.T) {
	s, _ := fixture.SetupOf(t, `scrimshaw: 1
people: {ada: {at: [2, 3]}, noor: {at: [1, 3]}}
lights:
  a: {unit: fresnel-tungsten-650, at: [0, 1], height: 2, role: {noor: edge, ada: key}}
  b: {unit: fresnel-tungsten-650, at: [3, 1], height: 2, role: fill}
  c: {unit: fresnel-tungsten-650, at: [4, 1], height: 2, role: hair}
`)
	c := things{kitchenDrawing(t, section.Input{Setup: s})}
	for i, want := range []string{"key light 3200 K 100 % h 2.00", "fill light 3200 K 100 % h 2.00", "3200 K 100 % h 2.00"} {
		lines := c.lightLines(&s.Lights[i])
		if got := strings.Join(lines[len(lines)-1], " "); got != want {
			t.Errorf("beside %s stands %q, want %q", s.Lights[i].Name, got, want)
		}
	}
}

// TestTagsKeepWholeNames: a unit that has no room beside its number loses what qualifies it, and no end of a word.
func TestTagsKeepWholeNames(t *testing.T) {
	s, _ := fixture.SetupOf(t, "scrimshaw: 1\nlights: {a: {unit: led-fresnel-60-bicolour, at: [0, 1], height: 2}}\n")
	c := things{kitchenDrawing(t, section.Input{Setup: s})}
	if got := c.lightLines(&s.Lights[0])[0][0]; got != "60 W LED fresnel" {
		t.Errorf("beside it stands %q", got)
	}
}
