package study_test

import (
	"math"
	"strings"
	"testing"

	"scrimshaw/plan/study"
)

// What is behind a lamp in glass is what a spot meter reads there, and the lamp is as bright there as it is times what the glass
// throws back: of one clear pane, 8 % from nearly straight ahead (twice the 4.3 % of a face, A. Fresnel, 1823).
func TestLampsInGlass(t *testing.T) {
	s := run(t, laidOut(t, `
scrimshaw: 1
rooms: {den: {size: [4, 4]}}
openings: {sea: {window: den.top, width: 1.6, along: centre}}
furniture: {wall: {box: [6, 0.2, 3], at: [2, 6], material: white}}
cameras: {A: {at: [1.6, 1], height: 1.4, looks: 0, lens: 35 mm}}
lights:
  k: {output: {luminance: 2000, face: [0.6, 0.6]}, at: [2.6, 0.9], height: 1.5, aim: sea}
  l: {output: {candela: 400, shape: uniform}, at: [3.6, 5], height: 2.4, aim: wall}
meters: {behind: {spot: [2.41, 5.9, 1.48], from: A}}
`), study.Options{ReadingsOnly: true})
	all := s.Readings.Reflections
	if len(all) != 1 || all[0].Name != "k" || all[0].Surface != "wall" {
		t.Fatalf("not the one lamp before the wall: %+v", all)
	}
	r := &all[0]
	if want := *s.Readings.Named("behind").Luminance; !(math.Abs(r.Behind/want-1) <= 0.03) { // it reads a hand beside it
		t.Errorf("behind the lamp lie %.2f cd/m², and the spot meter has %.2f", r.Behind, want)
	}
	if r.Factor < 0.07 || r.Factor > 0.09 || !(math.Abs(r.Luminance-2000*r.Factor) <= 1e-6) {
		t.Errorf("the glass returns %.3f of 2000 cd/m², and that is %.1f", r.Factor, r.Luminance)
	}
}

// The light onto a lens is I cos / d² of what comes straight; a flag before the lens ends it, and a mirror adds nothing.
func TestLightOntoLenses(t *testing.T) {
	const scene = `
scrimshaw: 1
rooms: {den: {size: [6, 6], height: 3}}
cameras: {A: {at: [3, 1], height: 1.5, looks: 0, lens: 50 mm}}
furniture: {glass: {mirror: [1, 2], at: {wall: den.left, along: 1}, lift: 0.3}}
lights: {k: {output: {candela: 2000, shape: uniform}, at: [4.2, 3], height: 2.1, aim: down}}
`
	flares := run(t, laidOut(t, scene), study.Options{ReadingsOnly: true}).Readings.Flares
	d2 := 1.2*1.2 + 2*2 + 0.6*0.6
	if want := 2000 / d2 * 2 / math.Sqrt(d2); len(flares) != 1 || !(math.Abs(flares[0].Lux/want-1) <= 1e-9) {
		t.Errorf("on the lens %+v, want %g lx", flares, want)
	}
	flagged := strings.Replace(scene, "lights:", "grip: {f: {flag: [0.4, 0.4], at: [3.3, 1.5], height: 1.65, faces: 180}}\nlights:", 1)
	if all := run(t, laidOut(t, flagged), study.Options{ReadingsOnly: true}).Readings.Flares; len(all) != 0 {
		t.Errorf("past a flag %+v", all)
	}
}

// Along a track a study has the light onto a lens where that is most, in the frame and beside it: within a tenth of the closed form by centimetres,
// for it looks every quarter of a metre.
func TestLightOntoALensThatMoves(t *testing.T) {
	const scene = `
scrimshaw: 1
cameras: {A: {track: [[-1, 0], [4, 0]], height: 1.5, looks: 0, lens: 50 mm}}
lights: {k: {output: {candela: 9000, shape: uniform}, at: [2.3, 4], height: 1.5}}
`
	flares := run(t, laidOut(t, scene), study.Options{ReadingsOnly: true}).Readings.Flares
	if len(flares) != 2 {
		t.Fatalf("not one in the frame and one beside it: %+v", flares)
	}
	half := math.Atan(24.89 / 2 / 50)
	for i := range flares {
		f, most := &flares[i], 0.0
		for cm := range 501 {
			x := 2.3 - (float64(cm)/100 - 1)
			if within := math.Abs(math.Atan(x/4)) < half; within == f.Within() {
				most = max(most, 9000/(x*x+16)*4/math.Hypot(x, 4))
			}
		}
		if f.Lux > most*(1+1e-9) || f.Lux < 0.9*most {
			t.Errorf("%.2f m along it has %.1f lx, and the most is %.1f lx", f.Along, f.Lux, most)
		}
	}
}
