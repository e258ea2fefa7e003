package study_test

import (
	"fmt"
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
		heldToTruth(t, name, text, 0.015)
	}
}

// In the open all that leaves a bulb in cloth is what the cloth does not take: of what falls on it, again and again, less what it
// throws back. The flux is summed over the directions of Lebedev's rule of 14 points.
func TestFluxThroughClothRoundALamp(t *testing.T) {
	const far = 2.5
	meters, weights := "", []float64{}
	for x := -1.0; x <= 1; x++ {
		for y := -1.0; y <= 1; y++ {
			for z := -1.0; z <= 1; z++ {
				square := x*x + y*y + z*z
				weight := map[float64]float64{1: 1.0 / 15, 3: 3.0 / 40}[square]
				if weight == 0 {
					continue
				}
				at := far / math.Sqrt(square)
				meters += fmt.Sprintf("m%d: {flat: [%g, %g, %g], facing: s}, ", len(weights), x*at, y*at, 9+z*at)
				weights = append(weights, weight)
			}
		}
	}
	flux := func(diffusion string) (lumens float64) {
		lit := run(t, laidOut(t, "{scrimshaw: 1, lights: {s: {output: {lumens: 1000, sphere: 0.1}, at: [0, 0], height: 9, aim: down"+diffusion+"}}, meters: {"+meters+"}}"),
			study.Options{ReadingsOnly: true})
		for i, w := range weights {
			lumens += w * *lit.Readings.Readings[i].Lux * 4 * math.Pi * far * far
		}
		return lumens
	}
	if got := flux(""); !(math.Abs(got/1000-1) <= 1e-3) {
		t.Errorf("the bulb sends out %.1f lm of 1000", got)
	}
	// Half a diffusion loses 3/4 of a stop and throws 0.30 back: that falls on the cloth once more.
	if got, want := flux(", diffusion: half-diffusion"), 1000*math.Exp2(-0.75)/(1-0.30); !(math.Abs(got/want-1) <= 0.03) {
		t.Errorf("%.1f lm come out of the cloth, and should %.1f", got, want)
	}
}
