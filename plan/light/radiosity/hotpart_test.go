package radiosity

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/light/receptor"
)

// A hot patch has a chance as long as any part of it may be farther from the viewpoint than what is looked at closely, even
// where its cosines say that nothing comes from there.
func TestHotPatchesHaveAChanceWhileTheyHaveFarParts(t *testing.T) {
	from := &viewpoint{normal: r3.Vec{Z: 1}, response: receptor.Cosine}
	for _, c := range []struct {
		name            string
		within, radius  float64
		normal          r3.Vec
		closest, chance float64
	}{
		{"far, face to face", 0, 0, r3.Vec{Z: -1}, 1, 1.0 / 4},
		{"far, turned away", 0, 0, r3.Vec{Z: 1}, 1, 0},
		{"far, turned away, and wide", 0, 1, r3.Vec{Z: 1}, 1, 0.5 * 1.5 / 4},
		{"all of it close", 0.4, 0.5, r3.Vec{Z: -1}, 3, 0},
		{"its rim far", 0, 0.5, r3.Vec{Z: -1}, 2.5, 1 / 6.25},
		{"far from a place within reach", 0.5, 0, r3.Vec{Z: -1}, 2.5, 1 / 6.25},
	} {
		p := &hotPatch{middle: r3.Vec{Z: 2}, normal: c.normal, radius: c.radius, closest: c.closest, power: 1}
		if got := p.chance(from, c.within); math.Abs(got-c.chance) > 1e-12 {
			t.Errorf("%s: a chance of %g, want %g", c.name, got, c.chance)
		}
	}
}
