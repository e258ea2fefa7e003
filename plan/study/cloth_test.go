package study_test

import (
	"testing"

	"scrimshaw/plan/internal/truth"
	"scrimshaw/plan/study"
)

// Cloth before lamps, held to the path tracer: from close before it and from behind, in one layer and in two, lit from both
// sides, by a lamp so close that it makes a hot spot, with the light that goes straight through and without.
func TestTracedCloth(t *testing.T) {
	for name, text := range map[string]string{
		"a frame before a soft lamp": `{scrimshaw: 1, grip: {c: {frame: [1.2, 1.2], at: [0, 0], height: 1.5, faces: 0, cloth: half-diffusion}},
			lights: {s: {output: {lumens: 6000, face: [0.3, 0.3]}, at: [0, -1], height: 1.6, aim: c}},
			meters: {near: {flat: [0.1, 0.4, 1.5], facing: 180}, far: {flat: [0.5, 1.5, 1.4], facing: 200}, back: {flat: [0.6, -0.8, 1.3], facing: 0}}}`,
		"a hot spot": `{scrimshaw: 1, grip: {c: {frame: [1.2, 1.2], at: [0, 0], height: 1.5, faces: 0, cloth: full-diffusion}},
			lights: {s: {output: {lumens: 3000, beam: 20, field: 40}, at: [0, -0.7], height: 1.6, aim: c}},
			meters: {near: {flat: [0.1, 0.3, 1.5], facing: 180}, aside: {flat: [0.6, 0.5, 1.4], facing: 220}, dome: {dome: [0.3, 1, 1.7], facing: 180}}}`,
		"two layers": `{scrimshaw: 1, grip: {c: {frame: [1.2, 1.2], at: [0, 0], height: 1.5, faces: 0, cloth: quarter-diffusion},
				d: {frame: [1.5, 1.5], at: [0, 0.4], height: 1.5, faces: 0, cloth: silk}},
			lights: {s: {output: {lumens: 6000, face: [0.3, 0.3]}, at: [0, -1], height: 1.6, aim: c}},
			meters: {near: {flat: [0.1, 0.8, 1.5], facing: 180}, far: {flat: [0.5, 2, 1.4], facing: 200}, between: {flat: [0.2, 0.2, 1.4], facing: 0}}}`,
		"in a room, from both sides": `{scrimshaw: 1, rooms: {k: {size: [4, 3.4], height: 2.5}},
			grip: {c: {frame: [1.2, 1.2], at: [1.6, 1.7], height: 1.5, faces: 90, cloth: muslin}, e: {card: [1, 1], at: [3.4, 2.6], height: 1.4, faces: 250}},
			lights: {s: {output: {lumens: 6000, face: [0.3, 0.3]}, at: [0.6, 1.6], height: 1.6, aim: c}, o: {output: {lumens: 1500, sphere: 0.3}, at: [3.3, 0.7], height: 1.8}},
			meters: {near: {flat: [2, 1.7, 1.5], facing: 270}, far: {flat: [3.2, 1.5, 1.4], facing: 270}, fill: {flat: [3, 1.7, 1.5], facing: 90}, above: {dome: [2.5, 1, 1], facing: up}}}`,
		"a sheer and a net": `{scrimshaw: 1, rooms: {k: {size: [4, 3.4], height: 2.5}},
			grip: {c: {frame: [1.2, 1.2], at: [1.6, 1.7], height: 1.5, faces: 90, cloth: sheer}, n: {net: [0.6, 0.9], at: [1.2, 1.9], height: 1.5, faces: 270, cloth: net-double}},
			lights: {s: {output: {lumens: 6000, face: [0.6, 0.6]}, at: [0.5, 1.6], height: 1.6, aim: c}},
			meters: {near: {flat: [2, 1.7, 1.5], facing: 270}, far: {flat: [3.2, 1.5, 1.4], facing: 270}, fill: {flat: [3, 1.7, 1.5], facing: 90}, floor: {flat: [2.2, 1, 0.02], facing: up}}}`,
		"a lamp behind its own reflection": `{scrimshaw: 1, rooms: {k: {size: [4, 3.4], height: 2.5}},
			grip: {c: {frame: [1.8, 1.2], at: [1, 1.7], height: 1.5, faces: 90, cloth: light-grid-cloth}},
			lights: {s: {output: {lumens: 6000, face: [0.3, 0.3]}, at: [2.6, 0.8], height: 1.6, aim: c}},
			materials: {m: {reflectance: 0.5}}, meters: {face: {flat: [2.4, 2.2, 1.5], facing: 260}, behind: {flat: [0.4, 1.7, 1.4], facing: 90}}}`,
		"diffusion on heads": `{scrimshaw: 1, rooms: {k: {size: [4, 3.4], height: 2.5}},
			lights: {s: {output: {lumens: 3000, beam: 30, field: 55}, at: [0.6, 1.6], height: 1.6, aim: 90, diffusion: [half-diffusion, silk]},
				f: {output: {lumens: 1500, face: [0.6, 0.4]}, at: [3.3, 0.7], height: 1.8, aim: 290, diffusion: full-grid-cloth}},
			meters: {near: {flat: [1.6, 1.7, 1.5], facing: 270}, far: {flat: [3.2, 2.2, 1.4], facing: 250}, fill: {flat: [3, 1.7, 1.5], facing: 90}}}`,
		"a curtain with a gap": `{scrimshaw: 1, rooms: {k: {size: [4, 3.4], height: 2.5}},
			openings: {w: {window: k.left, width: 1.4, dressing: [{cloth: sheer, drawn: [60 %, 0.2]}], gels: [1/4 CTO]}},
			lights: {s: {output: {lumens: 20000, face: [1, 1]}, at: [-1.35, 1.7], height: 1.9, aim: w}},
			meters: {near: {flat: [1, 1.7, 1.5], facing: 270}, far: {flat: [3.2, 1.5, 1.4], facing: 270}, fill: {flat: [3, 1.7, 1.5], facing: 90}}}`,
		"a blind": `{scrimshaw: 1, rooms: {k: {size: [4, 3.4], height: 2.5}},
			openings: {w: {window: k.left, width: 1, dressing: [{blind: 80 mm, tilt: 35, drop: 80 %}]}},
			lights: {s: {output: {lumens: 20000, face: [0.5, 0.5]}, at: [-1.35, 1.7], height: 2.3, aim: w}},
			meters: {near: {flat: [1, 1.7, 1.5], facing: 270}, far: {flat: [3.2, 1.5, 1.4], facing: 270}, fill: {flat: [3, 1.7, 1.5], facing: 90}}}`,
	} {
		t.Run(name, func(t *testing.T) {
			s := laidOut(t, text)
			want := trace(s, truth.Options{Seed: 1, Error: 4e-3})
			for _, m := range misses(name, run(t, s, study.Options{ReadingsOnly: true}), want) {
				t.Logf("%s: %.2f %% off, stated %.2f %%, noise %.2f: %s", m.name, 100*m.off, 100*m.stated, 100*m.noise, m.words)
				if m.total > 0.01 {
					t.Errorf("%s is %.2f %% off: %s", m.name, 100*m.total, m.words)
				}
			}
		})
	}
}
