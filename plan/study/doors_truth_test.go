package study_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/light"
	"scrimshaw/plan/study"
)

// Light past barn doors agrees with the tracer, which hangs its own leaves: in the beam, in the soft edge of a leaf's
// shadow, and where only what comes back is left.
func TestDoorsAgainstTruth(t *testing.T) {
	const scene = `scrimshaw: 1
rooms: {den: {size: [4.4, 3], height: 2.5}}
people: {ada: {at: [3.4, 1.5], faces: 270}}
lights:
  k: {unit: fresnel-tungsten-650, at: [0.5, 1.5], height: 1.9, aim: ada, level: 60 %, barndoors: {top: 60, bottom: 40, left: 50, turn: 15}}
  s: {unit: led-panel-100, at: [0.5, 0.5], height: 1.4, aim: ada, barndoors: {left: 70, right: 45}}
meters:
  wall: {flat: [4.39, 1.5, 1.5], facing: 270}
  edge: {flat: [4.39, 1.9, 1.2], facing: 270}
  high: {flat: [4.39, 1.4, 2.1], facing: 270}
  floor: {flat: [2.6, 1.4, 0.01], facing: up}
  side: {flat: [3, 2.99, 1.4], facing: 180}
`
	heldToTruth(t, "doors", scene, 0.01)
}

// Contours and maps ask for light by short rules. Behind doors, where a narrow beam is steep over its lens, these agree with
// what readings take, too: the light there is a hundredth of the beam's, and not the hundredth of that.
func TestQuickLightBehindDoors(t *testing.T) {
	s := setup(t, "spot-and-flood")
	lit := run(t, s, study.Options{ReadingsOnly: true})
	quick, closely := lit.World.QuickEvaluator(light.Emitters(s), lit.Levels), lit.World.Evaluator(light.Emitters(s), lit.Levels)
	compared := 0
	for x := 1.8; x < 6; x += 0.11 {
		for y := 0.3; y < 4.4; y += 0.13 {
			at := r3.Vec{X: x, Y: y, Z: 1.59}
			r := light.Receptor{At: at, Axis: r3.Unit(r3.Sub(s.Cameras[0].Frame.At, at)), Response: light.Dome}
			want := closely(r)
			if want < 5 {
				continue
			}
			compared++
			if got := quick(r); !(math.Abs(got/want-1) <= 0.02) {
				t.Errorf("at %.2f, %.2f: %.4g lx by the short rule, %.4g closely", x, y, got, want)
			}
		}
	}
	if compared < 300 {
		t.Errorf("%d places are lit: the scene tells nothing", compared)
	}
}

// The light of a half scrim agrees with the tracer, which sums the halves of the lens by itself: above, in the seam and below, of a
// wide beam and of a narrow one, and what comes back from the room.
func TestHalfScrimsAgainstTruth(t *testing.T) {
	for name, lamp := range map[string]string{
		"flood": "scrims: [half-double]",
		"spot":  "focus: spot, scrims: [half-double, single]",
	} {
		scene := `scrimshaw: 1
rooms: {den: {size: [4.4, 3], height: 2.5}}
lights: {k: {unit: fresnel-tungsten-650, at: [0.5, 1.5], height: 1.4, aim: {pan: 90, tilt: 0}, level: 60 %, ` + lamp + `}}
meters:
  high: {flat: [4.39, 1.5, 2], facing: 270}
  seam: {flat: [4.39, 1.5, 1.45], facing: 270}
  low: {flat: [4.39, 1.5, 0.8], facing: 270}
  floor: {flat: [3.2, 1.4, 0.01], facing: up}
  ceiling: {flat: [3.2, 1.4, 2.49], facing: down}
  side: {flat: [3, 2.99, 1.4], facing: 180}
`
		heldToTruth(t, "half scrim, "+name, scene, 0.01)
	}
}
