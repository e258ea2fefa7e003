package review_test

import (
	"slices"
	"strings"
	"testing"

	"scrimshaw/plan/review"
)

// coming are scenes in which LEVEL is what a lamp is brought up to, and the code of what it does then.
var coming = map[string]struct{ text, code string }{
	"onto a lens": {`people: {ada: {at: [0, 0], faces: 180}}
cameras: {A: {at: [0, -3], looks: ada, lens: 50 mm}}
lights:
  lamp: {output: {candela: 4000, shape: uniform}, at: [0.8, 1.3], height: 2.4, aim: down, level: LEVEL}
`, review.CodeFlare},
	"onto a lens on a track": {`cameras: {A: {track: [[-9, 0], [2, 0]], height: 1.5, looks: 0, lens: 50 mm}}
lights: {lamp: {output: {candela: 9000, shape: uniform}, at: [3.5, 4], height: 1.5, level: LEVEL}}
`, review.CodeFlare},
	"in glass": {`rooms: {den: {size: [4, 4]}}
openings: {sea: {window: den.top, width: 1.6, along: centre}}
cameras: {A: {at: [1.6, 1], height: 1.4, looks: 0, lens: 35 mm}}
lights: {lamp: {output: {luminance: 2000, face: [0.6, 0.6]}, at: [2.6, 0.9], height: 1.5, aim: sea, level: LEVEL}}
`, review.CodeInGlass},
	"in the picture": {`cameras: {A: {at: [0, -2], height: 1.2, looks: 0, lens: 50 mm}}
exposure: {range: {over: 6, under: 6}}
lights: {lamp: {output: {luminance: 50000, sphere: 0.2}, at: [0, 1], height: 1.2, mount: hand, seen: true, level: LEVEL}}
`, review.CodeClipped},
	"over a key": {`people: {ada: {at: [0, 0], faces: 0}}
lights:
  k: {output: {candela: 1000, shape: uniform}, at: [-1.5, 1.5], height: 1.59, role: key}
  lamp: {output: {candela: 4000, shape: uniform}, at: [1.5, 1.5], height: 1.59, role: motivation, level: LEVEL}
`, review.CodeKeyNotBrightest},
	"too faint for an edge": {`people: {ada: {at: [0, 0], faces: 0}}
lights:
  k: {output: {candela: 1000, shape: uniform}, at: [-1.5, 1.5], height: 1.59, role: key}
  lamp: {output: {candela: 50, shape: uniform}, at: [0, -2], height: 1.59, role: edge, level: LEVEL}
`, review.CodeRoleEffect},
	"far over the stop": {`people: {ada: {at: [0, 0], faces: 0}}
lights: {lamp: {output: {candela: 9000, shape: uniform}, at: [-1.5, 1.5], height: 1.59, level: LEVEL}}
`, review.CodeKeyOver},
	"in another colour than what it stands for": {`people: {ada: {at: [0, 0], faces: 0}}
lights: {lamp: {unit: led-point-600-bicolour, colour: 3200 K, at: [-1.5, 1.5], height: 1.59, stands-for: 5600 K, level: LEVEL}}
`, review.CodeStandInColour},
	"on mains": {`people: {ada: {at: [0, 0], faces: 0}}
exposure: {fps: 24, shutter: 180}
cameras: {A: {at: [0, 3], looks: ada, lens: 50 mm}}
lights: {lamp: {unit: practical-bulb, bulb: led-806, at: [1, 1], height: 1.2, dimmer: phase, level: LEVEL}}
`, review.CodeFlicker},
}

// found are the messages of a review, by their codes.
func found(t *testing.T, text string) (words, codes []string) {
	t.Helper()
	s := lit(t, text)
	for _, d := range review.Check(s.Setup, &s.Readings) {
		words, codes = append(words, d.Message), append(codes, d.Code)
	}
	return words, codes
}

// A review tells what a lamp does that a cue brings up as it does of the scene in which that is written, with the cue that does it, and once.
func TestWhatACueBringsUp(t *testing.T) {
	for name, c := range coming {
		dark, before := strings.Replace(c.text, "LEVEL", "off", 1), ""
		words, codes := found(t, dark)
		if slices.Contains(codes, c.code) {
			t.Errorf("%s: found of a lamp that is off: %q", name, words)
		}
		words, codes = found(t, strings.Replace(c.text, "LEVEL", "40 %", 1))
		if i := slices.Index(codes, c.code); i < 0 {
			t.Errorf("%s: not found of a lamp that is up: %q", name, words)
		} else {
			before = words[i]
		}
		got, _ := found(t, dark+"cues: {q1: {over: 4 s, lights: {lamp: 40 %}}, q2: {lights: {lamp: 41 %}}, q3: {lights: {lamp: off}}}\n")
		told := 0
		for _, words := range got {
			if strings.HasPrefix(words, "after q2, ") || strings.HasPrefix(words, "after q3, ") {
				t.Errorf("%s: told again: %q", name, words)
			}
			if words == "after q1, "+before {
				told++
			}
		}
		if told != 1 {
			t.Errorf("%s: told %d times after its cue: %q\nin %q", name, told, before, got)
		}
	}
}

// It tells again where there is a stop more; a lamp that a cue takes down is not held to its role.
func TestCuesThatMakeItWorse(t *testing.T) {
	c := coming["onto a lens"]
	got, _ := found(t, strings.Replace(c.text, "LEVEL", "40 %", 1)+"cues: {q1: {lights: {lamp: 79 %}}, q2: {lights: {lamp: 80 %}}}\n")
	flares := 0
	for _, words := range got {
		if strings.Contains(words, "shines onto the lens of A") {
			flares++
			if strings.HasPrefix(words, "after ") != (flares == 2) || strings.HasPrefix(words, "after q1") {
				t.Errorf("told: %q", words)
			}
		}
	}
	if flares != 2 {
		t.Errorf("a lamp that shines onto a lens at 40 %% and then at 80 %%: told %d times: %q", flares, got)
	}
	edge := strings.Replace(strings.Replace(coming["too faint for an edge"].text, "50,", "500,", 1), "LEVEL", "100 %", 1)
	if got, _ := found(t, edge+"cues: {q1: {lights: {lamp: 5 %}}}\n"); len(got) != 0 {
		t.Errorf("an edge light that a cue takes down is held to its role: %q", got)
	}
}
