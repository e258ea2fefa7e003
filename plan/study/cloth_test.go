package study_test

import (
	"fmt"
	"math"
	"testing"

	"scrimshaw/plan/meter"
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
		"a curtain between two rooms on two floors, in feet": `{scrimshaw: 1, units: ft, rooms: {lit: {size: [11, 10], height: 8}, dark: {at: [11.5, 0], size: [9, 10], height: 9, base: -0.6}},
			openings: {d: {gap: lit.right, along: 3, width: 4, head: 7, dressing: [{cloth: quarter-silk, drawn: [2.5, 10 %]}]}},
			lights: {s: {output: {lumens: 8000, face: [2, 2]}, at: [3, 5], height: 5, aim: d}},
			meters: {near: {flat: [14, 5.5, 4.5], facing: 270}, far: {flat: [19, 3, 4], facing: 280}, side: {flat: [13, 8, 3], facing: 180}, own: {flat: [8, 5, 5], facing: 90}}}`,
	} {
		t.Run(name, func(t *testing.T) { heldToTruth(t, name, text, 0.01) })
	}
}

// Readings of a mirrored scene of cloth are the same within what they state: rays pass a cloth by turns that know nothing of
// left and right.
func TestMirroredCloth(t *testing.T) {
	const scene = `scrimshaw: 1
rooms: {k: {at: [-2, 0], size: [4, 3.4], height: 2.5}}
grip: {c: {frame: [1.2, 1], at: [%g, 1.7], height: 1.5, faces: %d, cloth: quarter-diffusion}, n: {net: [0.6, 0.9], at: [%g, 2.2], height: 1.5, faces: %d}}
lights: {s: {output: {lumens: 6000, face: [0.4, 0.3]}, at: [%g, 1.2], height: 1.6, aim: c, diffusion: quarter-diffusion}}
meters: {near: {flat: [%g, 1.9, 1.4], facing: %d}, fill: {flat: [%g, 0.8, 1.2], facing: %d}}
`
	read := func(side float64, turn func(int) int) []meter.Reading {
		s := laidOut(t, fmt.Sprintf(scene, -0.2*side, turn(90), -0.6*side, turn(100), -1.3*side, 0.4*side, turn(260), 1.1*side, turn(80)))
		return run(t, s, study.Options{ReadingsOnly: true}).Readings.Readings
	}
	plain, mirrored := read(1, func(b int) int { return b }), read(-1, func(b int) int { return 360 - b })
	for i := range plain {
		a, b := &plain[i], &mirrored[i]
		off, stated := math.Abs(*b.Lux / *a.Lux - 1), math.Hypot(*a.Error, *b.Error)
		if *a.Lux <= 1 || off > 3*stated || stated > 0.02 {
			t.Errorf("%s is %.6g lx, and mirrored %.6g: %.2f %% apart, stated %.2f %%", a.Name, *a.Lux, *b.Lux, 100*off, 100*stated)
		}
	}
}

// Gels on the glass of a window do to daylight what the same gels do on the lamp, and never more than a third of a stop or
// 15 mired else to tungsten: the glass is reckoned for daylight.
func TestGelsOnGlass(t *testing.T) {
	const scene = `scrimshaw: 1
rooms: {k: {size: [4, 3.4], height: 2.5, walls: black, floor: black, ceiling: black}}
openings: {w: {window: k.left, width: 1.4%s}}
lights: {s: {output: {lumens: 9000, face: [0.4, 0.4]}, at: [-1.3, 1.7], height: 1.6, aim: w, colour: %s%s}}
meters: {m: {flat: [2, 1.7, 1.5], facing: 270}}
`
	for _, c := range []struct {
		white        string
		stops, mired float64
	}{{"5600 K", 1e-4, 0.1}, {"3200 K", 1.0 / 3, 15}} {
		for _, gels := range []string{"[1/2 CTO]", "[1/4 CTB, ND .3]"} {
			read := func(onGlass, onLamp string) *meter.Reading {
				lit := run(t, laidOut(t, fmt.Sprintf(scene, onGlass, c.white, onLamp)), study.Options{ReadingsOnly: true})
				return &lit.Readings.Readings[0]
			}
			glass, lamp := read(", gels: "+gels, ""), read("", ", gels: "+gels)
			stops, mired := math.Log2(*glass.Lux / *lamp.Lux), 1e6 / *glass.CCT - 1e6 / *lamp.CCT
			if !(math.Abs(stops) <= c.stops) || !(math.Abs(mired) <= c.mired) {
				t.Errorf("%s on glass before %s: %.4f stops and %.2f mired from the gels on the lamp", gels, c.white, stops, mired)
			}
		}
	}
}
