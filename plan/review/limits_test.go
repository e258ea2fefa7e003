package review_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"scrimshaw/plan/kit"
	"scrimshaw/plan/resolve"
	"scrimshaw/plan/review"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
	"scrimshaw/plan/study"
)

// limit is where a finding begins: a scene with one figure left open, and what a hand computes for that figure.
type limit struct {
	name, scene, told string  // told: how the line of the finding begins
	low, high, want   float64 // of the open figure; the finding is there at one of low and high
	within            float64 // how far off the limit may be found
}

// linesWith are all findings of a scene with entries of its own in the kit, of its resolving and of its review.
func linesWith(t *testing.T, k *kit.Catalogue, entries, text string) (lines []string) {
	t.Helper()
	log := &source.Log{}
	if entries != "" {
		k = k.With([]*source.File{{Name: "kit.yaml", Text: []byte("scrimshaw: 1\n" + entries)}}, log)
	}
	document := scene.Open(scene.Env{Kit: k}, &source.File{Name: "s.yaml", Text: []byte("scrimshaw: 1\n" + text)}, log)
	setup := resolve.Resolve(document, document.Base(log), log)
	all := log.All()
	if !log.Failed() {
		s, err := study.Run(t.Context(), setup, study.Options{ReadingsOnly: true})
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, review.Check(s.Setup, &s.Readings)...)
	}
	for _, d := range all {
		lines = append(lines, d.Severity.String()+" "+d.Code+" "+d.Message)
	}
	return lines
}

// hold finds by halving where each finding begins, and compares that with what a hand computes. The kit's entries may have the open figure instead of the scene.
func hold(t *testing.T, entries string, limits []limit) {
	t.Helper()
	k, err := kit.Shipped() // once: to read it takes longer than to check a scene
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range limits {
		t.Run(c.name, func(t *testing.T) {
			fill := func(text string, v float64) string {
				return strings.ReplaceAll(text, "OPEN", fmt.Sprintf("%.6f", v))
			}
			lines := func(v float64) string {
				return strings.Join(linesWith(t, k, fill(entries, v), fill(c.scene, v)), "\n")
			}
			told := func(v float64) bool { return strings.Contains(lines(v), c.told) }
			low, high := c.low, c.high
			first := told(low)
			if told(high) == first {
				t.Fatalf("%v at %g and at %g alike\n%s\n\n%s", first, low, high, lines(low), lines(high))
			}
			for high-low > c.within/2 {
				if middle := (low + high) / 2; told(middle) == first {
					low = middle
				} else {
					high = middle
				}
			}
			if c.want < low-c.within || c.want > high+c.within {
				t.Errorf("%s begins between %.6f and %.6f, and by hand at %.6f", c.told, low, high, c.want)
			}
		})
	}
}

// What the current of a light does is a finding from where a hand computes it. A breaker of type B holds three times its current (IEC 60898-1, from memory), the
// peak of a sine is the square root of two times its root mean square; a cable loses 2 l R I of the volts, of which 5 % are let pass (the notes of NEC 210.19),
// with R by IEC 60228 at 20 °C, and at 70 °C more by the coefficient of copper, 1/(234.5 + t): IEC 60228 again.
func TestWhereCurrentsAreFound(t *testing.T) {
	const lamps = "lights: {k: {unit: discharge-575, at: [0, 0], height: 2, aim: down, circuit: a, count: 2}, l: {unit: discharge-575, at: [2, 0], height: 2, aim: down, circuit: a}}\n"
	const far = "lights: {k: {unit: fresnel-tungsten-2000, at: [OPEN, 0], height: 2, aim: down, circuit: a}}\n"
	const peak, one = 100.0, 40.0               // A: the entries of both units in the kit
	warm := (234.5 + 70) / (234.5 + 20)         // of a resistance at 20 °C
	perMetre := 2 * 3.30e-3 * warm * 2000 / 230 // V, of two cores of 6 mm²
	hold(t, "", []limit{
		{"a lamp that a breaker may not hold alone", "circuits: {a: {breaker: OPEN}}\nlights: {k: {unit: fresnel-tungsten-2000, at: [0, 0], height: 2, aim: down, circuit: a}}\n",
			"info inrush 1 k alone", 10, 63, peak / 3 / math.Sqrt2, 2e-3},
		{"three lamps that it may not hold together", "circuits: {a: {breaker: OPEN}}\n" + lamps, "info inrush switched on at once", 12, 63, 3 * one / 3 / math.Sqrt2, 2e-3},
		{"one of those alone", "circuits: {a: {breaker: OPEN}}\n" + lamps, "alone draws a peak", 2, 20, one / 3 / math.Sqrt2, 2e-3},
		{"a long cable", "circuits: {a: {breaker: 32, at: [0, 0]}}\n" + far, "warning cable-drop 1 k", 50, 300, (0.05*230/perMetre - 2) / 1.1, 0.02},
	})
}

// What holds a light is too weak from where the kit says so, and a counterweight is by the law of the lever.
func TestWhereWeightsAreFound(t *testing.T) {
	const heavy = `units:
  heavy: {doc: d, label: l, class: panel, technology: led, power: 100 W, power-factor: 1, kelvin: 5600 K, mass: OPEN kg, outputs: {bare: {lumens: 9000, beam: 60, field: 100, face: [0.3, 0.3]}}, body: [0.34, 0.1, 0.34]}
`
	hold(t, heavy, []limit{
		{"a head on a light stand", "lights: {k: {unit: heavy, at: [0, 0], height: 2, aim: down, stand: light-stand}}\n", "warning stand-heavy 1 k", 1, 20, 8, 2e-3},
		{"a head on a boom, by its counterweight", "lights: {k: {unit: heavy, at: [0, 0], height: 2, aim: down, mount: {boom: 1.6}, stand: boom-stand}}\n",
			"and 3 kg at 0.80 m behind the stand", 1, 1.4, 2.5 * 0.8 / 1.6, 2e-3},
		{"the same, and the next half kilogram", "lights: {k: {unit: heavy, at: [0, 0], height: 2, aim: down, mount: {boom: 1.6}, stand: boom-stand}}\n",
			"and 3 kg at 0.80 m behind the stand", 1.4, 1.7, 3 * 0.8 / 1.6, 2e-3},
	})
	hold(t, "", []limit{
		{"an arm, by its counterweight", "lights: {k: {unit: led-point-60-bicolour, at: [0, 0], height: 2, aim: down, mount: {boom: OPEN}, stand: boom-stand}}\n",
			"and 2 kg at 0.80 m behind the stand", 1, 1.4, 0.8 * 2 / 1.4, 2e-3},
	})
}

// What a camera sees of equipment, and where it stands, is a finding from where the lens's own triangle puts it: half the gate by the focal length.
func TestWhereSightsAreFound(t *testing.T) {
	const camera = "cameras: {A: {at: [0, 0], height: 1.5, looks: 0, lens: 50 mm, room: 5 %}}\n"
	const flag = "grip: {f: {flag: [0.4, 0.4], at: [OPEN, 4], height: 1.5, faces: 180, mount: hand}}\n"
	const two = "people: {ada: {at: [0, 0]}, noor: {at: [0, 3]}}\nline: [ada, noor]\ncameras: {A: {at: [-2, 1], looks: noor, lens: 50 mm, height: 1.5}, B: {at: [OPEN, -2], looks: noor, lens: 50 mm, height: 1.5}}\n"
	half := 4 * 24.89 / 2 / 50 // of the frame, 4 m off, m: by the width of the gate that is assumed
	hold(t, "", []limit{
		{"a flag in the frame", camera + flag, "warning in-frame G1 f", 0.5, 1.5, half + 0.2, 2e-3},
		{"a flag in the margin", camera + flag, "info in-margin G1 f", 1.25, 1.5, half*(1+2*0.05) + 0.2, 2e-3},
		{"a flag in the margin, in feet", "units: ft\n" + strings.Replace(camera, "1.5", "5", 1) + "grip: {f: {flag: [1, 1], at: [OPEN, 12], height: 5, faces: 180, mount: hand}}\n", "info in-margin G1 f", 3.6, 4.6, 3*half*(1+2*0.05) + 0.5, 4e-3},
		{"a camera beyond the line", two, "warning line-crossed B", 0, 1, 2 * math.Tan(math.Pi/36), 2e-3}, // from 5° on: common practice
		{"a camera on the line", two, "info on-line B", -1, 0, -2 * math.Tan(math.Pi/36), 2e-3},
	})
}

// What does not fit is a finding from where a hand puts its rim, and a lamp heats cloth and glass by its light: a filament sends out 28 lm with each watt of light and
// rays (common practice), a flat spread of it the flux by pi along its axis (Lambert), cloth stands 1000 W/m² and glass 3400 (as the checks declare).
func TestWhereFitsAreFound(t *testing.T) {
	const den = "rooms: {den: {size: [5, 4], height: 2.5}}\n"
	const bay = den + "openings: {bay: {window: den.left, width: 1.4, sill: 0.9, head: 2.1}}\n"
	const hot = `units:
  hot: {doc: d, label: l, class: open-face, technology: tungsten, power: 2000 W, power-factor: 1, kelvin: 3200 K, mass: 3 kg, outputs: {bare: {lumens: 20000, shape: cosine}}, body: [0.1, 0.1, 0.1]}
`
	const fades = `units:
  u: {doc: d, label: l, class: open-face, technology: discharge, power: 600 W, power-factor: 1, kelvin: 5600 K, mass: 3 kg, least: OPEN %, outputs: {bare: {lumens: 20000, beam: 60}}, body: [0.1, 0.1, 0.1]}
`
	lamp := func(where string) string {
		return bay + "lights: {k: {output: {candela: 1000, shape: uniform}, " + where + "}}\n"
	}
	far := func(most float64) float64 { return math.Sqrt(20000 / math.Pi / 28 / most) } // m, from where on it stands it
	hold(t, "", []limit{
		{"a globe by a wall", den + "lights: {k: {output: {lumens: 900, sphere: 0.6}, at: [OPEN, 2], height: 1.2, mount: hand}}\n", "light-in-solid 1 k", 0.1, 0.6, 0.3, 2e-3},
		{"a disc under the ceiling", den + "lights: {k: {output: {luminance: 900, disc: 1}, at: [2, 1], height: OPEN, mount: hand, aim: {pan: 0, tilt: 0}}}\n", "light-in-solid 1 k", 1.5, 2.3, 2.5 - 0.5, 2e-3},
		{"an axis beside an opening", lamp("at: {opening: bay, out: 2, along: OPEN}, height: 1.5, aim: {pan: 90, tilt: 0}"), "axis-misses", 0, 1.5, 0.7, 2e-3},
		{"an axis over an opening", lamp("at: {opening: bay, out: 2, along: 0}, height: OPEN, aim: {pan: 90, tilt: 0}"), "axis-misses", 1.5, 3, 2.1, 2e-3},
		{"an axis beside an opening, in feet", "units: ft\nrooms: {den: {size: [16, 12], height: 8}}\nopenings: {bay: {window: den.left, width: 4}}\n" +
			"lights: {k: {output: {candela: 1000, shape: uniform}, at: {opening: bay, out: 6, along: OPEN}, height: 5, aim: {pan: 90, tilt: 0}}}\n", "axis-misses", 0, 5, 2, 4e-3},
		{"a shoulder by a chest, in feet", "units: ft\npeople: {ada: {at: [3, 3], faces: 180, walk: [[3, 3], [16, 3]]}}\nfurniture: {c: {box: [2, 3, 3], at: [10, OPEN]}}\n", "info walk-tight the walk of ada comes within", 5, 10, 3 + 1.5 + (0.23-0.01)/0.3048, 4e-3},
		{"a shoulder by the side of stairs", den + "furniture: {s: {stairs: [1, 2, 1.5], at: [3, 2]}}\npeople: {ada: {at: [1, 1], faces: 0, walk: [[OPEN, 0.5], [OPEN, 3.5]]}}\n", "info walk-tight the walk of ada comes within", 1, 2.4, 2.5 - 0.23 + 0.01, 2e-3},
		{"an axis that rakes", lamp("at: {opening: bay, out: 2, along: OPEN}, height: 1.5, aim: {pan: 60, tilt: 0}"), "axis-misses", -1, 0, 0.7 - 2.15*math.Tan(math.Pi/6), 2e-3},
	})
	hold(t, hot, []limit{
		{"cloth before a filament", "lights: {k: {unit: hot, at: [2, 1], height: 1.5, aim: {pan: 0, tilt: 0}}}\ngrip: {f: {frame: [1, 1], cloth: silk, at: [2, OPEN], height: 1.5, faces: 180}}\n", "warning heat 1 k", 1.2, 2, 1 + far(1000), 2e-3},
		{"a pane before a filament", bay + "lights: {k: {unit: hot, at: {opening: bay, out: OPEN}, height: 1.5, aim: {pan: 90, tilt: 0}}}\n", "warning heat 1 k", 0.1, 1, far(3400) - 0.15/2, 2e-3},
	})
	hold(t, fades, []limit{
		{"a lamp that jumps into the dark", "lights: {k: {unit: u, at: [2, 1], height: 1.5, aim: {pan: 0, tilt: 0}}}\ncues: {q1: {over: 4 s, lights: {k: off}}}\n", "warning cue-fade q1 fades 1 k into the dark", 2, 30, 10, 0.02},
	})
}

// What falls on a lens, in a picture and on a face is a finding from where a hand computes it: E = C N²/(S t) with C = 340 (ISO 2720), a grey of 0.18, light by
// the inverse square and the cosine of Lambert. From how many stops on is common practice, as the checks declare; of the glare of a lens 1.5 % (ISO 9358, from memory).
func TestWherePicturesAreFound(t *testing.T) {
	const right = 340 * 8.0 / 800 * 50 // lx, of T2.8, whose N² is 8
	const at28 = "exposure: {iso: 800, fps: 25, stop: T2.8}\n"
	const camera = at28 + "cameras: {A: {at: [0, 0], height: 1.5, looks: 0, lens: 50 mm}}\n"
	ranged := func(holds string) string {
		return strings.Replace(at28, "T2.8", "T2.8, range: {"+holds+"}", 1)
	}
	const ada = "people: {ada: {at: [0, 0], faces: 0, skin: 0.18}}\ncameras: {A: {at: [1, 3], height: 1.6, looks: ada, lens: 50 mm}}\n"
	const lamp = "lights: {k: {output: {candela: OPEN, shape: uniform}, at: [0, 2.1], height: 1.59, mount: hand}}\n"
	const globe = "cameras: {A: {at: [0, 0], height: 1.5, looks: 0, lens: 50 mm}}\nlights: {k: {output: {luminance: OPEN, sphere: 0.2}, at: [0, 3], height: 1.5, mount: hand, seen: true}}\n"
	face := right * 4 * math.Sqrt2 // cd, 2 m before a face whose sides look 45° past it
	veil := 0.18 * right / 0.015   // lx on a lens whose veil is as bright as grey
	hold(t, "", []limit{
		{"a lamp beside the frame", camera + "lights: {k: {output: {candela: OPEN, shape: uniform}, at: [2, 2], height: 1.5, mount: hand}}\n", "flare 1 k", 500, 1000, veil / 32 * 8 * math.Sqrt2, 1},
		{"a lamp in the frame", camera + "lights: {k: {output: {candela: OPEN, shape: uniform}, at: [0, 3], height: 1.5, mount: hand, seen: true}}\n", "flare 1 k", 1500, 3500, veil / 8 * 9, 3},
		{"a globe that clips", ranged("over: 2") + globe, "info clipped 1 k", 30, 60, 0.18 * right / math.Pi * 4, 0.1},
		{"a face that clips", ranged("over: 2") + ada + lamp, "warning clipped the key side of ada", 3700, 4000, face * 4, 30},
		{"a face that sinks", ranged("under: 3") + ada + lamp, "warning sunk the key side of ada", 115, 125, face / 8, 1},
	})
}

// Light on a face is a finding of its lamp, its side and its colour from where a hand computes it, and along a walk from one stop off.
func TestWhereFacesAreFound(t *testing.T) {
	const right = 340 * 8.0 / 800 * 50 // lx, of T2.8, whose N² is 8
	const ada = "exposure: {iso: 800, fps: 25, stop: T2.8}\npeople: {ada: {at: [0, 0], faces: 0}}\nlights:\n"
	const one = "  a: {output: {candela: 1000, shape: uniform}, at: [0, 2.1], height: 1.59}\n"
	const key = "  k: {output: {candela: 500, shape: uniform}, at: [1.5, 1.6], height: 1.59, role: key}\n" // right before a side of the face, √4.5 m off
	const walker = "  k: {output: {candela: OPEN, shape: uniform}, at: [0, 6], height: 1.59, mount: hand}\n"
	lamp := func(at, role string) string {
		return "  l: {output: {candela: OPEN, shape: uniform}, at: " + at + ", height: 1.59, role: " + role + "}\n"
	}
	walks := strings.Replace(ada, "faces: 0", "faces: 0, walk: [[0, 0], [0, 2]]", 1)
	hold(t, "", []limit{
		{"a key that is outshone", ada + key + lamp("[-1.5, 1.6]", "fill"), "warning key-beaten the key of ada", 300, 900, 500 * math.Exp2(0.05), 1}, // what prints as equal is not told
		{"a key behind a stronger light", ada + key + lamp("[3, 3.1]", "motivation"), "warning role-effect 1 k is the key", 1000, 4000, 4 * 500, 4},
		{"an edge that is lost", ada + key + lamp("[0, -1.9]", "edge"), "warning role-effect 2 l is an edge, and what it gives the back", 20, 200, 4 * 500 / 4.5 / 8, 0.5}, // three stops under
		{"an edge from before", ada + key + "  l: {output: {candela: 5000, shape: uniform}, at: [2, OPEN], height: 1.59, role: edge}\n",
			"warning role-effect 2 l is an edge, and it lights the front", -0.5, 0.5, 0.1, 2e-3},
		{"a hair light from before", ada + key + "  l: {output: {candela: 5000, shape: uniform}, at: [0, OPEN], height: 2.59, role: hair}\n",
			"warning role-effect 2 l is a hair light, and it lights the front", 0.2, 0.9, 0.1 + math.Tan(math.Pi/8), 2e-3}, // half of the 45° that the plane of the hair tilts
		{"two colours", ada + "  k: {output: {candela: 1000, shape: uniform}, at: [1.5, 1.6], height: 1.59, colour: 3200 K}\n" +
			"  l: {output: {candela: 700, shape: uniform}, at: [-1.5, 1.6], height: 1.59, colour: OPEN K}\n", "info colour-gap", 3300, 4500, 1e6 / (1e6/3200.0 - 50), 4},
		{"a trace", ada + one + strings.NewReplacer("  a:", "  b:", "1000", "OPEN").Replace(one), "no light of 2 b", 0.5, 1.5, 1000 * 1e-3 / (1 - 1e-3), 2e-3},
		{"the end of a walk up to a lamp", walks + walker, "info walk-leaves", 7000, 9000, 2 * right * 16 * math.Sqrt2, 20}, // 4 m off, and one stop over
		{"its start", walks + walker, "info walk-leaves", 4000, 5000, right / 2 * 36 * math.Sqrt2, 20},                      // 6 m off, and one stop under
	})
}
