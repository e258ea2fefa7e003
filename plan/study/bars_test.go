package study_test

import (
	"strings"
	"testing"

	"scrimshaw/plan/study"
)

// The bars between panes throw their shadows, and send light on, as the tracer has it; a beam is drawn past them.
func TestTracedBars(t *testing.T) {
	const scene = `{scrimshaw: 1, rooms: {k: {size: [4, 3.4], height: 2.5}},
		openings: {w: {window: k.left, width: 1.2, panes: [2, 3]}},
		lights: {p: {output: {lumens: 9000, beam: 30, field: 60}, at: [-1.5, 1.6], height: 1.6, aim: {pan: 90, tilt: 0}}, s: {output: {lumens: 20000, face: [0.5, 0.5]}, at: [-1.3, 2.6], height: 1.9, aim: w}},
		meters: {shade: {flat: [1.5, 1.81, 1.55], facing: 270}, free: {flat: [1.5, 2.1, 1.2], facing: 270}, floor: {flat: [1.1, 1, 0.02], facing: up}}}`
	heldToTruth(t, "bars", scene, 0.01)
	barred := run(t, laidOut(t, scene), study.Options{Step: 0.1})
	plain := run(t, laidOut(t, strings.Replace(scene, ", panes: [2, 3]", "", 1)), study.Options{Step: 0.1})
	if a, b := *barred.Readings.Named("shade").Lux, *plain.Readings.Named("shade").Lux; a > 0.8*b {
		t.Errorf("behind a bar there are %.1f lx, and without it %.1f", a, b)
	}
	for i := range barred.Beams {
		if a, b := barred.Beams[i].Half, plain.Beams[i].Half; len(a.Outline) != len(b.Outline) {
			t.Errorf("the beam of %s is drawn otherwise by bars", a.Light)
		}
	}
}
