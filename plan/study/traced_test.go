package study_test

import (
	"math"
	"testing"

	"scrimshaw/plan/internal/truth"
	"scrimshaw/plan/study"
)

// Scenes that light once went wrong in, traced afresh by the path tracer: a soft unit outside a window, of which each
// patch sees a tenth; a box whose sides' planes cut the lamp above it; a spot on a card a hand's breadth from a face;
// a lantern that is nearly covered; a doorway onto a lower floor, whose tread lies on the foot of the wall.
func TestTracedScenes(t *testing.T) {
	for name, text := range map[string]string{
		"outside a window": `{scrimshaw: 1, rooms: {k: {size: [4, 3.4], height: 2.5}}, openings: {w: {window: k.left, width: 0.8}},
			lights: {fr: {output: {lumens: 20000, face: [2.4, 2.4]}, at: [-1.35, 1.7], height: 1.5, aim: 90}},
			meters: {fill: {flat: [2.4, 1.7, 1.5], facing: 90}, side: {flat: [1.4, 0.6, 1.4], facing: 180}}}`,
		"cut by a plane": `{scrimshaw: 1, furniture: {bx: {box: [1, 1, .75], at: [0, 0], material: white}},
			lights: {top: {output: {lumens: 8000, face: [1.5, 1.5]}, at: [0, -.5], height: 2.2, aim: down}},
			meters: {side: {flat: [0, -.9, .5], facing: 0}}}`,
		"a spot on a card": `{scrimshaw: 1, grip: {c: {card: [1, 1], at: [0, 0], height: 1.5, faces: 0}},
			lights: {s: {output: {lumens: 800, beam: 12, field: 20}, at: [0.3, 0.8], height: 1.9, aim: [0, 0, 1.5]}},
			meters: {close: {flat: [0, 0.25, 1.5], facing: 180}, aside: {flat: [0.2, 0.3, 1.4], facing: 190}}}`,
		"nearly covered": `{scrimshaw: 1, grip: {f: {flag: [0.5, 0.4], at: [0, 0.6], height: 1.5, faces: 0}},
			lights: {l: {output: {lumens: 3000, sphere: 0.5}, at: [0, 0], height: 1.5}},
			meters: {m: {flat: [0.07, 2, 1.5], facing: 180}, n: {dome: [0.12, 1.5, 1.62], facing: 200}}}`,
		"a tread on the foot of a wall": `{scrimshaw: 1, rooms: {lit: {size: [3.3, 3], height: 2.4, walls: black},
			dark: {at: [3.45, 0], size: [2.6, 3], height: 2.6, base: -0.05}}, openings: {d: {gap: lit.right, along: 1.4, width: 1, head: 2}},
			lights: {l: {output: {lumens: 6700, face: [1, 1.1]}, at: [2.2, 1.5], height: 1.9, aim: down}},
			meters: {m: {flat: [3.83, 2.6, 1], facing: {pan: 243, tilt: -38}}}}`,
	} {
		t.Run(name, func(t *testing.T) {
			s := laidOut(t, text)
			want := trace(s, truth.Options{Seed: 1, Error: 1e-3})
			lit := run(t, s, study.Options{ReadingsOnly: true})
			for i := range want {
				w := &want[i]
				direct, reflected := parts(lit.Basis, lit.Levels, i)
				if off := beyond(direct.Y(), w.direct.Y, w.direct.YSE); off > 1e-3*w.direct.Y {
					t.Errorf("%s: direct %.5g lx, traced %.5g ± %.2g", w.name, direct.Y(), w.direct.Y, w.direct.YSE)
				}
				if off := beyond(reflected.Y(), w.reflected.Y, w.reflected.YSE); off > 0.01*w.reflected.Y {
					t.Errorf("%s: reflected %.5g lx, traced %.5g ± %.2g", w.name, reflected.Y(), w.reflected.Y, w.reflected.YSE)
				}
				if w.total.Y == 0 || math.IsNaN(w.total.Y) {
					t.Errorf("%s: nothing to read", w.name)
				}
			}
		})
	}
}
