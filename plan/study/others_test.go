package study_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"scrimshaw/plan/light"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/study"
)

// farLights are scenes without a room in which what lights a face is small and far off, so that rays miss most of it.
var farLights = map[string]string{
	"cloth on a head":              `lights: {key: {unit: fresnel-tungsten-650, height: 2, at: {by: ada, toward: A, turn: 45 camera-left, distance: 10}, diffusion: full-diffusion}}`,
	"cloth on a head, farther off": `lights: {key: {unit: fresnel-tungsten-650, height: 2, at: {by: ada, toward: A, turn: 45 camera-left, distance: 15}, diffusion: full-diffusion}}`,
	"a frame": `lights: {key: {unit: fresnel-tungsten-650, height: 2, at: {by: ada, toward: A, turn: 45 camera-left, distance: 11}, aim: ada}}
grip: {silk: {frame: [1.2, 1.2], at: {by: ada, toward: A, turn: 45 camera-left, distance: 9}, height: 1.9, faces: ada, cloth: full-grid-cloth}}`,
	"a frame lit from cloth": `lights: {key: {unit: fresnel-tungsten-650, height: 2, at: {by: ada, toward: A, turn: 45 camera-left, distance: 11}, aim: ada, diffusion: full-diffusion}}
grip: {silk: {frame: [1.2, 1.2], at: {by: ada, toward: A, turn: 45 camera-left, distance: 7}, height: 1.9, faces: ada, cloth: full-grid-cloth}}`,
	"a card": `lights: {key: {unit: fresnel-tungsten-650, height: 2, at: {by: ada, toward: A, turn: 45 camera-left, distance: 5}, aim: white}}
grip: {white: {card: [0.7, 0.5], at: {by: ada, toward: A, turn: 45 camera-right, distance: 8}, height: 1.9, faces: ada}}`,
	"a card lit from cloth behind": `lights: {key: {unit: fresnel-tungsten-650, height: 2, at: {by: ada, toward: A, turn: 150 camera-left, distance: 8}, diffusion: full-diffusion}}
grip: {white: {card: [0.7, 0.5], at: {by: ada, toward: A, turn: 45 camera-right, distance: 3}, height: 1.9, faces: ada}}`,
}

// otherMeters are far from ada and stand in nobody's light.
const otherMeters = `
meters: {near: {flat: [0, 2, 1.5], facing: ada}, aside: {dome: [-3, -3, 1.5], facing: ada}, toward: {flat: [1.5, 3, 1], facing: key}}`

// What a meter reads does not hang on what other meters there are, nor on how many faces, and is the same at draft as at fine within what
// the two state. By the inverse square law, from memory, cloth at 15 m gives 0.44 of what it gives at 10 m.
func TestOthersChangeNoReading(t *testing.T) {
	key := map[string]float64{}
	for name, lights := range farLights {
		for who, people := range map[string]string{"alone": "", "with another face": "zoe: {at: [2.5, 9], faces: A}"} {
			alone := farScene(people, lights)
			fine := facesOf(t, alone, light.Fine)
			if people == "" {
				key[name] = *fine["ada.right"].Lux
			}
			for _, q := range []light.Quality{light.Draft, light.Normal} {
				for with, text := range map[string]string{"no meters": alone, "meters": farScene(people, lights+otherMeters)} {
					sameFace(t, fmt.Sprintf("%s, %s, %s, %s", name, who, with, q), facesOf(t, text, q), fine)
				}
			}
		}
	}
	near, far := key["cloth on a head"], key["cloth on a head, farther off"]
	if got, want := far/near, 100.0/225; !(math.Abs(got/want-1) <= 0.02) {
		t.Errorf("at 15 m cloth gives %.4g of what it gives at 10 m, want %.4g", got, want)
	}
}

// sameFace holds readings of a face to others, within what both state.
func sameFace(t *testing.T, what string, got, want map[string]*meter.Reading) {
	t.Helper()
	for name, r := range got {
		off := math.Abs(*r.Lux - *want[name].Lux)
		if allowed := farTimes*math.Hypot(statedError(r), statedError(want[name])) + farLeast**want["ada.dome.A"].Lux; off > allowed {
			t.Errorf("%s: %s %.4g lx, fine says %.4g; %.2g off, and %.2g is allowed", what, name, *r.Lux, *want[name].Lux, off, allowed)
		}
	}
}

// How many times both stated errors a reading may be off, and by what share of what comes to the face in all.
const (
	farTimes = 3.0
	farLeast = 2e-4
)

// farScene is a scene on open ground.
func farScene(people, rest string) string {
	return fmt.Sprintf(`scrimshaw: 1
people:
  ada: {at: [2, 4], faces: A}
  %s
cameras: {A: {at: [2, 0], height: 1.5, looks: ada, lens: 50 mm}}
%s`, people, rest)
}

// facesOf are the readings of the face of ada.
func facesOf(t *testing.T, text string, q light.Quality) map[string]*meter.Reading {
	t.Helper()
	out := map[string]*meter.Reading{}
	readings := run(t, laidOut(t, text), study.Options{ReadingsOnly: true, Quality: q}).Readings.Readings
	for i := range readings {
		if r := &readings[i]; strings.HasPrefix(r.Name, "ada.") {
			out[r.Name] = r
		}
	}
	return out
}
