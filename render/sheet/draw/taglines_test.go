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
