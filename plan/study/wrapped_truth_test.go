package study_test

import (
	"math"
	"testing"

	"scrimshaw/plan/study"
)

// Cloth round lamps that shine all round, held to the path tracer: a bulb, a lantern and a tube.
func TestTracedClothRoundLamps(t *testing.T) {
	for name, text := range map[string]string{
		"a bulb": `{scrimshaw: 1, rooms: {k: {size: [3, 2.8], height: 2.4}}, lights: {s: {output: {lumens: 1500, sphere: 0.06}, at: [1.2, 1.3], height: 1.4, aim: down, diffusion: half-diffusion}},
			meters: {near: {flat: [1.8, 1.4, 1.4], facing: 270}, under: {flat: [1.2, 1.3, 0.8], facing: up}, aside: {dome: [2.4, 2.2, 1.2], facing: 220}}}`,
		"a lantern in two layers": `{scrimshaw: 1, lights: {s: {output: {lumens: 4000, sphere: 0.4}, at: [0, 0], height: 1.6, aim: 30, diffusion: [muslin, sheer]}},
			meters: {near: {flat: [0.8, 0.1, 1.5], facing: 270}, far: {flat: [0.5, 2, 1.4], facing: 200}}}`,
		"a tube": `{scrimshaw: 1, rooms: {k: {size: [3, 2.8], height: 2.4}}, lights: {s: {output: {lumens: 2000, tube: 0.9}, at: [1.4, 1.4], height: 1.5, aim: down, diffusion: quarter-diffusion}},
			meters: {near: {flat: [1.5, 0.8, 1.4], facing: 0}, above: {flat: [1.4, 1.5, 2], facing: down}, end: {flat: [2.4, 1.4, 1.5], facing: 270}}}`,
	} {
		againstTruth(t, name, text, 6e-3)
	}
}

// In the open all that leaves a bulb in cloth is what the cloth does not take: of what falls on it, again and again, less what it
// throws back.
func TestFluxThroughClothRoundALamp(t *testing.T) {
	lit := run(t, laidOut(t, `{scrimshaw: 1, rooms: {k: {size: [3, 3], height: 3, walls: black, floor: black, ceiling: black}},
		lights: {s: {output: {lumens: 1000, sphere: 0.1}, at: [1.5, 1.5], height: 1.5, aim: down, diffusion: half-diffusion}},
		meters: {m: {flat: [1.5, 0.3, 1.5], facing: 0}}}`), study.Options{ReadingsOnly: true})
	bare := run(t, laidOut(t, `{scrimshaw: 1, rooms: {k: {size: [3, 3], height: 3, walls: black, floor: black, ceiling: black}},
		lights: {s: {output: {lumens: 1000, sphere: 0.1}, at: [1.5, 1.5], height: 1.5, aim: down}},
		meters: {m: {flat: [1.5, 0.3, 1.5], facing: 0}}}`), study.Options{ReadingsOnly: true})
	share := *lit.Readings.Readings[0].Lux / *bare.Readings.Readings[0].Lux
	// Half a diffusion loses 3/4 of a stop and throws 0.30 back: that falls on the cloth once more.
	if want := math.Exp2(-0.75) / (1 - 0.30); math.Abs(share/want-1) > 0.12 {
		t.Errorf("a share of %.3f comes out of the cloth, about %.3f would", share, want)
	}
}
