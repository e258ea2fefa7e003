package study_test

import "testing"

// Light that is sent to a card, a page, a table or a ceiling comes back from where it falls, however small that is, held to the path
// tracer to 1 %: a hot spot on a card that is met from 25 cm, a page of 25 cm before a face at 75 cm, an image cut to the page.
func TestTracedBounces(t *testing.T) {
	const room = "scrimshaw: 1, rooms: {k: {size: [4, 3.4], height: 2.5}}"
	const face = "people: {ada: {at: [2, 1.2], faces: 0, pose: seated}}"
	for name, text := range map[string]string{
		"a small hot spot on a card, from close by": `grip: {c: {card: [0.6, 0.6], at: [2, 2.4], height: 1.4, faces: 180}},
			lights: {s: {output: {lumens: 1200, beam: 8, field: 10}, at: [1.4, 1], height: 1.6, aim: c}},
			meters: {near: {flat: [2, 2.15, 1.4], facing: 0}, aside: {flat: [2.2, 2.2, 1.3], facing: 350}, far: {flat: [2.4, 1, 1.3], facing: 0}}`,
		"a page before a face": face + `, furniture: {page: {box: [0.25, 0.25, 0.01], at: [2, 1.75], lift: 0.82, material: white}},
			lights: {s: {output: {lumens: 900, beam: 9, field: 10.5}, at: [3.2, 2.9], height: 2.3, aim: page.top}}`,
		"an image cut to the page": face + `, furniture: {table: {table: [0.9, 0.6, 0.72], at: [2, 1.8], material: dark-wood}, page: {box: [0.25, 0.25, 0.01], at: [2, 1.75], lift: 0.72, material: white}},
			lights: {s: {output: {lumens: 1600, beam: 16, field: 18}, at: [3.2, 2.9], height: 2.3, aim: page.top, focus: sharp,
				cuts: [{angle: 0, to: page}, {angle: 90, to: page}, {angle: 180, to: page}, {angle: 270, to: page}]}}`,
		"a ceiling": face + `, lights: {s: {output: {lumens: 4000, beam: 24, field: 27}, at: [3, 2.6], height: 1.2, aim: {pan: 250, tilt: 70}, focus: soft}}`,
	} {
		heldToTruth(t, name, "{"+room+", "+text+"}", 0.01)
	}
}
