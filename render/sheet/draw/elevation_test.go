package draw

import (
	"math"
	"testing"

	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/internal/fixture"
	"scrimshaw/render/sheet/section"
)

// TestAWallEndsAtItsCeiling, which may slope: its box is as high as its highest corner.
func TestAWallEndsAtItsCeiling(t *testing.T) {
	s, _ := fixture.SetupOf(t, "scrimshaw: 1\nrooms: {attic: {size: [5, 4], height: {low: 1.6, high: 3, toward: top}}}\n")
	for wall, want := range map[string]float64{"right": 3, "bottom": 1.6} { // m
		f, ok := OnWall(&section.Input{Setup: s, Elevation: &section.Elevation{Room: "attic", Wall: wall}})
		if got := box.Height(f.box()); !ok || !(math.Abs(got-want) <= 1e-9) {
			t.Errorf("%s is %.2f m high, want %.2f", wall, got, want)
		}
	}
	if _, ok := OnWall(&section.Input{Setup: s}); ok {
		t.Error("a plan is taken for a wall")
	}
}
