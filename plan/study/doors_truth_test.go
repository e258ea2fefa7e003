package study_test

import "testing"

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
	againstTruth(t, "doors", scene, 4e-3)
}
