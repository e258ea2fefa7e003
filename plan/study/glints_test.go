package study_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"scrimshaw/plan/meter"
	"scrimshaw/plan/study"
)

// returnedBy is what one sheet of glass of an index throws back at an angle, degrees, where it takes a share of what crosses it
// straight: the mean of both polarisations, all that goes to and fro summed (Fresnel's equations, and a geometric series).
func returnedBy(index, takes, degrees float64) float64 {
	outside := degrees * math.Pi / 180
	within := math.Asin(math.Sin(outside) / index)
	left := math.Pow(1-takes, 1/math.Cos(within))
	sum := 0.0
	for _, face := range [2]float64{
		math.Pow((math.Cos(outside)-index*math.Cos(within))/(math.Cos(outside)+index*math.Cos(within)), 2),
		math.Pow((index*math.Cos(outside)-math.Cos(within))/(index*math.Cos(outside)+math.Cos(within)), 2),
	} {
		back, inside := face, (1-face)*left // that reaches the far face
		for range 60 {
			back += inside * face * left * (1 - face)
			inside *= face * face * left * left
		}
		sum += back / 2
	}
	return sum
}

// A board that a lamp lights shows in glass at its own brightness, reflectance × I cos³/h² / pi, times what the glass throws back at the angle: straight
// ahead and from 60° aside. Of clear glass of index 1.526 that is 1 less 0.9169 and 0.8421 (Fresnel slab).
func TestBoardsInGlass(t *testing.T) {
	for degrees, want := range map[float64]float64{0: 1 - 0.9169, 60: 1 - 0.8421} {
		if got := returnedBy(1.526, 0, degrees); math.Abs(got-want) > 1e-4 {
			t.Errorf("at %g° a clear sheet throws back %.4f, want %.4f", degrees, got, want)
		}
	}
	// the pane passes 0.90 straight ahead: of the 0.9169 it takes about 1.85 %
	taken := 0.0
	for low, high := 0.0, 0.1; high-low > 1e-9; {
		taken = (low + high) / 2
		face := math.Pow(0.526/2.526, 2)
		if left := 1 - taken; (1-face)*(1-face)*left/(1-face*face*left*left) > 0.90 {
			low = taken
		} else {
			high = taken
		}
	}
	for degrees, at := range map[float64][2]string{0: {"[4.0, 1]", "[4.05, 1.2]"}, 60: {"[2.0, 2.905866]", "[6.05, 2.905866]"}} {
		s := run(t, laidOut(t, fmt.Sprintf(`
scrimshaw: 1
materials: {coal: {reflectance: 0}, paper: {reflectance: 0.6}}
rooms: {den: {size: [8, 4], walls: coal, floor: coal, ceiling: coal}}
openings: {sea: {window: den.top, width: 6, along: centre, sill: 0.5, head: 2.3}}
cameras: {A: {at: %s, height: 1.4, looks: {pan: %g, tilt: 0}, lens: 50 mm}}
grip: {board: {card: [0.1, 0.1], surface: paper, at: %s, height: 1.4, faces: 0}}
lights: {k: {output: {candela: 500, shape: uniform}, at: [4, 3.6], height: 1.4, aim: down, seen: true}}
`, at[0], degrees, at[1])), study.Options{ReadingsOnly: true})
		r := glassOf(s.Readings.Reflections, "board")
		if r == nil {
			t.Fatalf("at %g° no board in the glass", degrees)
		}
		var x, y float64
		fmt.Sscanf(at[1], "[%g, %g]", &x, &y)
		deep, across := 3.6-y, x-4
		far := math.Hypot(deep, across)
		board := 0.6 * 500 * deep / math.Pow(far, 3) / math.Pi
		if want := returnedBy(1.526, taken, degrees) * board; math.Abs(r.Luminance/want-1) > 0.05 || math.Abs(r.Factor/returnedBy(1.526, taken, degrees)-1) > 0.02 {
			t.Errorf("at %g° the glass returns %.4f and the board has %.3f cd/m² there, want %.4f and %.3f", degrees, r.Factor, r.Luminance, returnedBy(1.526, taken, degrees), want)
		}
	}
}

// glassOf is the reflection of a thing in glass that shows most; nil where there is none.
func glassOf(all []meter.Reflection, name string) (most *meter.Reflection) {
	for i := range all {
		if r := &all[i]; r.Glass && r.Name == name && (most == nil || r.Share > most.Share) {
			most = r
		}
	}
	return most
}

// byNight is a room with somebody out of the picture, a frame and a lamp with cloth before its window; its x by a sign.
func byNight(sign float64, feet bool) string {
	scale, units := 1.0, ""
	if feet {
		scale, units = 1/0.3048, "units: ft\n"
	}
	n := func(v float64) string { return fmt.Sprintf("%.6f", v*scale) }
	x := func(v float64) string { return n(sign * v) }
	at := min(0, sign) * 4
	return "scrimshaw: 1\n" + units + "materials: {coal: {reflectance: 0}}\nrooms: {den: {at: [" + n(at) + ", 0], size: [" + n(4) + ", " + n(4) + "], height: " + n(2.6) + ", walls: coal, floor: coal, ceiling: coal}}\n" +
		"openings: {sea: {window: den.top, width: " + n(1.6) + ", along: centre, sill: " + n(0.9) + ", head: " + n(2.1) + "}}\n" +
		"people: {ada: {at: [" + x(2.9) + ", " + n(0.7) + "], faces: 0, eyes: " + n(1.6) + ", seen: false}}\n" +
		"furniture: {wall: {box: [" + n(6) + ", " + n(0.2) + ", " + n(3) + "], at: [" + x(2) + ", " + n(6) + "], material: white}}\n" +
		"cameras: {A: {at: [" + x(1.6) + ", " + n(1) + "], height: " + n(1.4) + ", looks: {pan: 0, tilt: 0}, lens: 28 mm}}\n" +
		"grip: {silk: {frame: [" + n(0.6) + ", " + n(0.6) + "], cloth: full-diffusion, at: [" + x(2.3) + ", " + n(1.5) + "], height: " + n(1.2) + ", faces: 0}}\n" +
		"lights:\n  k: {output: {candela: 300, shape: uniform}, at: [" + x(2.2) + ", " + n(2.4) + "], height: " + n(2.3) + "}\n" +
		"  c: {unit: led-panel-100, diffusion: half-diffusion, at: [" + x(2.7) + ", " + n(2.1) + "], height: " + n(1.8) + ", aim: 0, level: 2 %}\n"
}

// Glass shows the same in a mirrored scene, and in one that is written in feet.
func TestGlassShowsTheSameMirroredAndInFeet(t *testing.T) {
	want := run(t, laidOut(t, byNight(1, false)), study.Options{ReadingsOnly: true}).Readings.Reflections
	for name, text := range map[string]string{"mirrored": byNight(-1, false), "in feet": byNight(1, true)} {
		got := run(t, laidOut(t, text), study.Options{ReadingsOnly: true}).Readings.Reflections
		for _, thing := range []string{"ada", "silk", "c"} {
			a, b := glassOf(want, thing), glassOf(got, thing)
			if a == nil || b == nil {
				t.Fatalf("%s: %s shows as %+v, and as %+v", name, thing, a, b)
			}
			where := a.Where
			if name == "mirrored" {
				where = strings.NewReplacer("left", "right", "right", "left").Replace(where)
			}
			if math.Abs(b.Share/a.Share-1) > 0.01 || math.Abs(b.Luminance/a.Luminance-1) > 0.05 || math.Abs(b.Behind/a.Behind-1) > 0.05 || b.Where != where {
				t.Errorf("%s: %s shows as %+v, and as %+v", name, thing, a, b)
			}
		}
	}
}

// Cloth with a hot middle is as bright in glass as it is at its brightest, and not as it is on the whole; what a flag hides shows no more.
func TestTheBrightestOfAClothCounts(t *testing.T) {
	const scene = `
scrimshaw: 1
rooms: {den: {size: [4, 4]}}
openings: {sea: {window: den.top, width: 3, along: centre, sill: 0.3}}
cameras: {A: {at: [1.2, 1], height: 1.4, looks: {pan: 0, tilt: 0}, lens: 24 mm}}
grip:
  silk: {frame: [1.6, 1.6], cloth: full-diffusion, at: [2.6, 0.9], height: 1.4, faces: 0}
lights: {k: {output: {candela: 900, shape: uniform}, at: [2.6, 0.7], height: 1.4, aim: 0}}
`
	r := glassOf(run(t, laidOut(t, scene), study.Options{ReadingsOnly: true}).Readings.Reflections, "silk")
	if r == nil {
		t.Fatal("no cloth in the glass")
	}
	edge := 900 * 0.2 / math.Pow(math.Hypot(0.2, 0.8), 3) // lx on the cloth half way out, from behind
	if middle := 900 / 0.04; r.Luminance/r.Factor < 0.1*middle/math.Pi || edge > 0.02*middle {
		t.Errorf("the cloth has %.0f cd/m² where it is brightest", r.Luminance/r.Factor)
	}
	flagged := strings.Replace(scene, "grip:\n", "grip:\n  black: {flag: [3, 2.4], at: [2.2, 1.6], height: 1.4, faces: 0}\n", 1)
	if r := glassOf(run(t, laidOut(t, flagged), study.Options{ReadingsOnly: true}).Readings.Reflections, "silk"); r != nil {
		t.Errorf("behind a flag %+v", r)
	}
}
