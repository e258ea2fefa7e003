package study_test

import "testing"

// Light behind honeycombs, snoots and grids, of a zoom on its way and of a tube that shines to one side agrees with the tracer, which
// has its own words for each.
func TestCellsAndZoomsAgainstTruth(t *testing.T) {
	const scene = `scrimshaw: 1
rooms: {den: {size: [4.4, 3], height: 2.5}}
people: {ada: {at: [3.4, 1.5], faces: 270}}
lights:
  h: {unit: led-point-150-daylight, modifier: reflector-wide + honeycomb-30, at: [0.5, 1.5], height: 1.9, aim: ada, level: 20 %}
  s: {unit: fresnel-tungsten-150, modifier: snoot, at: [0.5, 0.5], height: 1.4, aim: ada, focus: 40 %}
  g: {unit: led-point-150-daylight, modifier: octabox-60 + grid-40, at: [1.2, 2.5], height: 1.6, aim: ada, level: 40 %}
  t: {unit: led-tube-60, at: [2.2, 0.3], height: 2.2, aim: [2.2, 1.5, 0.5]}
meters:
  wall: {flat: [4.39, 1.5, 1.5], facing: 270}
  edge: {flat: [4.39, 2.2, 1.2], facing: 270}
  far: {flat: [4.39, 2.8, 0.4], facing: 270}
  floor: {flat: [2.6, 1.4, 0.01], facing: up}
  side: {flat: [3, 2.99, 1.4], facing: 180}
  behind: {flat: [2.2, 0.05, 2.3], facing: 0}
`
	heldToTruth(t, "cells", scene, 0.01)
}
