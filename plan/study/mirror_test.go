package study_test

import (
	"testing"
)

// Mirrors held to the path tracer: on a wall and free in a room, upright and leaning, with lamps of all kinds before them, with
// something in the way on either leg, with walls and cloth in them.
func TestTracedMirrors(t *testing.T) {
	for name, text := range map[string]string{
		"a point on a wall mirror, on open ground": `{scrimshaw: 1, grip: {m: {card: [1.2, 1], at: [0, 0], height: 1.5, faces: 0, surface: mirror}},
			lights: {s: {output: {candela: 1000, shape: uniform}, at: [-1, 1.5], height: 1.6, aim: m}},
			meters: {in: {flat: [1, 1.5, 1.4], facing: 180}, out: {flat: [3, 1.2, 1.4], facing: 180}, dome: {dome: [0.5, 2, 1.2], facing: 180}}}`,
		"a soft lamp and a wall mirror in a room": `{scrimshaw: 1, rooms: {k: {size: [4, 3.4], height: 2.5}},
			furniture: {glass: {mirror: [1, 1.4], at: {wall: k.top, along: 1.5}, lift: 0.7}},
			lights: {s: {output: {lumens: 6000, face: [0.5, 0.4]}, at: [0.8, 1.2], height: 1.6, aim: glass}},
			meters: {in: {flat: [3, 1.6, 1.4], facing: 330}, dome: {dome: [2.2, 1.2, 1.5], facing: 0}, floor: {flat: [2.4, 1.4, 0.02], facing: up}, away: {flat: [3, 1, 1], facing: 180}}}`,
		"a leaning board, a box and a flag in the way": `{scrimshaw: 1, rooms: {k: {size: [4, 3.4], height: 2.5}},
			furniture: {b: {box: [0.5, 0.4, 0.9], at: [2, 1.6]}},
			grip: {m: {card: [1.2, 1.2], at: [3.4, 1.7], height: 1.2, faces: 270, tilt: 25, surface: mirror}, f: {flag: [0.4, 0.6], at: [2.6, 2.1], height: 1.6, faces: 100}},
			lights: {s: {output: {lumens: 4000, beam: 40, field: 70}, at: [0.7, 2.6], height: 2.0, aim: m}, d: {output: {lumens: 1500, disc: 0.4}, at: [0.6, 0.8], height: 1.1, aim: m}},
			meters: {ceiling: {flat: [1.6, 1.6, 2.4], facing: down}, face: {flat: [1.5, 1.5, 1.6], facing: 90}, low: {flat: [1.3, 1.2, 0.6], facing: 80}}}`,
		"spheres, tubes and a cloth": `{scrimshaw: 1, rooms: {k: {size: [4, 3.4], height: 2.5}},
			furniture: {glass: {mirror: [1.2, 1.4], at: {wall: k.left, along: centre}, lift: 0.6}},
			grip: {c: {frame: [0.9, 0.9], at: [1.6, 2.6], height: 1.4, faces: 225, cloth: half-diffusion}},
			lights: {s: {output: {lumens: 4000, sphere: 0.3}, at: [2.5, 3.0], height: 1.6}, u: {output: {lumens: 2000, tube: 0.9}, at: [1.0, 0.6], height: 1.9, aim: 300}},
			meters: {in: {flat: [1.2, 1.2, 1.4], facing: 270}, side: {flat: [0.8, 1.7, 1.2], facing: 300}, dome: {dome: [2.2, 1.4, 1.5], facing: 270}}}`,
		"daylight by a mirror, through glass": `{scrimshaw: 1, rooms: {k: {size: [4, 3.4], height: 2.5}},
			openings: {w: {window: k.left, width: 1.2}},
			furniture: {glass: {mirror: [1.4, 1.4], at: {wall: k.right, along: centre}, lift: 0.6}},
			lights: {s: {output: {lumens: 20000, face: [1, 1]}, at: [-1.35, 1.5], height: 1.7, aim: w}},
			meters: {in: {flat: [2.5, 1.7, 1.4], facing: 90}, back: {flat: [1.0, 1.2, 1.3], facing: 90}, top: {flat: [2, 2.4, 0.8], facing: up}}}`,
		"two mirrors in a corner": `{scrimshaw: 1, rooms: {k: {size: [4, 3.4], height: 2.5, walls: white}},
			furniture: {one: {mirror: [1.4, 1.4], at: {wall: k.right, along: centre}, lift: 0.6}, two: {mirror: [1, 1.4], at: {wall: k.top, along: 2.6}, lift: 0.6}},
			lights: {s: {output: {lumens: 3000, face: [0.5, 0.5]}, at: [2.5, 2.2], height: 1.5, aim: [1, 0.5, 0.8]}},
			meters: {in: {flat: [2.5, 1.7, 1.4], facing: 45}, back: {flat: [1.0, 1.2, 1.3], facing: 60}, dome: {dome: [1.6, 1.4, 1.5], facing: 45}}}`,
	} {
		t.Run(name, func(t *testing.T) { heldToTruth(t, name, text, 0.01) })
	}
}

// Silver boards held to the path tracer: polished and hammered, lit by points and by soft lamps, with something in the way on
// either leg, near and far.
func TestTracedBoards(t *testing.T) {
	for name, text := range map[string]string{
		"polished, a point, on open ground": `{scrimshaw: 1, grip: {m: {silver: [1, 1], at: [0, 0], height: 1.5, faces: 0}},
			lights: {s: {output: {candela: 1000, shape: uniform}, at: [-1, 1.5], height: 1.6, aim: m}},
			meters: {in: {flat: [1, 1.5, 1.4], facing: 180}, edge: {flat: [1.8, 1.4, 1.4], facing: 190}, near: {flat: [0.2, 0.5, 1.4], facing: 180}, dome: {dome: [0.5, 2, 1.2], facing: 180}}}`,
		"hammered, a point, on open ground": `{scrimshaw: 1, grip: {m: {silver: [1, 1], at: [0, 0], height: 1.5, faces: 0, surface: silver-hammered}},
			lights: {s: {output: {candela: 1000, shape: uniform}, at: [-1, 1.5], height: 1.6, aim: m}},
			meters: {in: {flat: [1, 1.5, 1.4], facing: 180}, edge: {flat: [2.4, 1.4, 1.4], facing: 200}, near: {flat: [0.2, 0.5, 1.4], facing: 180}, dome: {dome: [0.5, 2, 1.2], facing: 180}}}`,
		"polished, a soft lamp, in a room": `{scrimshaw: 1, rooms: {k: {size: [4, 3.4], height: 2.5}},
			grip: {m: {silver: [1, 1], at: [3.4, 1.7], height: 1.2, faces: 290, tilt: 20}},
			lights: {s: {output: {lumens: 6000, face: [0.5, 0.4]}, at: [1.2, 2.6], height: 1.6, aim: m}},
			meters: {face: {flat: [1.5, 1.9, 2], facing: 110}, floor: {flat: [2.4, 1.4, 0.02], facing: up}, dome: {dome: [1.6, 1.2, 1.9], facing: 90}}}`,
		"hammered, a lens, a box and a flag in the way": `{scrimshaw: 1, rooms: {k: {size: [4, 3.4], height: 2.5}},
			furniture: {b: {box: [0.5, 0.4, 0.9], at: [2, 1.6]}},
			grip: {m: {silver: [1.2, 1.2], at: [3.4, 1.7], height: 1.2, faces: 270, tilt: 25, surface: silver-hammered}, f: {flag: [0.4, 0.6], at: [2.6, 2.1], height: 1.6, faces: 100}},
			lights: {s: {output: {lumens: 4000, beam: 40, field: 70}, at: [0.7, 2.6], height: 2.0, aim: m}, d: {output: {lumens: 1500, disc: 0.4}, at: [0.6, 0.8], height: 1.1, aim: m}},
			meters: {ceiling: {flat: [1.6, 1.6, 2.4], facing: down}, face: {flat: [1.5, 1.5, 1.6], facing: 90}, low: {flat: [1.3, 1.2, 0.6], facing: 80}}}`,
		"round, in a room": `{scrimshaw: 1, rooms: {k: {size: [3, 2.4], height: 2.5}},
			grip: {m: {flag: dot-25, at: [2, 1.2], height: 1.2, faces: 290, tilt: 20, surface: silver-hammered}},
			lights: {s: {output: {lumens: 4000, beam: 20, field: 25}, at: [1.2, 1.6], height: 1.4, aim: m}},
			meters: {near: {flat: [1.7, 1.2, 1.5], facing: 110}, under: {flat: [1.9, 0.6, 0.8], facing: 0}, over: {flat: [1.6, 1.4, 2.2], facing: down}}}`,
	} {
		t.Run(name, func(t *testing.T) { heldToTruth(t, name, text, 0.01) })
	}
}

// What a ray decides at cloth, at a board and at one mirror after the other, held to the path tracer: a board past two frames of cloth,
// and light that has met many mirrors.
func TestTracedDecisions(t *testing.T) {
	for name, text := range map[string]string{
		"hammered, a ceiling seen in it past two nets": `{scrimshaw: 1, rooms: {k: {size: [4, 4], height: 2.6, walls: black, floor: black, ceiling: white}},
			grip: {m: {silver: [1.6, 1.6], at: [3.5, 2], height: 1.1, faces: 270, tilt: 30, surface: silver-hammered},
				c: {net: [1.2, 1.2], at: [2.3, 2], height: 1.1, faces: 270, cloth: net-single}, d: {net: [1.2, 1.2], at: [2.5, 2], height: 1.1, faces: 270, cloth: net-single}},
			lights: {s: {output: {lumens: 20000, beam: 100, field: 140}, at: [1, 2.4], height: 0.4, aim: up}},
			meters: {in: {flat: [2, 2, 1.1], facing: 90}, low: {flat: [2.1, 1.8, 0.8], facing: 80}}}`,
		"two mirrors face to face": `{scrimshaw: 1, rooms: {k: {size: [4.2, 0.5], height: 3, walls: white}},
			furniture: {one: {mirror: [4.1, 2.9], at: {wall: k.top, along: centre}, lift: 0.05}, two: {mirror: [4.1, 2.9], at: {wall: k.bottom, along: centre}, lift: 0.05}},
			lights: {s: {output: {lumens: 3000, face: [3.8, 0.3]}, at: [2.1, 0.25], height: 2, aim: down}},
			meters: {in: {flat: [2, 0.25, 2.4], facing: 0}, skew: {flat: [2.4, 0.2, 2.2], facing: 20}}}`,
	} {
		t.Run(name, func(t *testing.T) { heldToTruth(t, name, text, 0.02) })
	}
}
