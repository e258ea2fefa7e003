package study_test

import (
	"math"
	"testing"

	"scrimshaw/plan/study"
)

// What flickers at a face is what is exposed there row by row: the light of the lamps that pulse, each by its share, with that of the
// steady one; two on the same mains add up.
func TestFlickerAtAFace(t *testing.T) {
	s := run(t, laidOut(t, `
scrimshaw: 1
exposure: {fps: 24, shutter: 180}
people: {ada: {at: [0, 0], faces: 0}}
cameras: {A: {at: [0, 3], looks: ada, lens: 50 mm, sensor: full-frame}}
circuits: {ring: {breaker: 16, hertz: 50}, plant: {breaker: 16, hertz: 60}, van: {breaker: 16, kind: battery}}
lights:
  a: {unit: discharge-575-magnetic, at: [2, 3], height: 2, circuit: ring, gels: [ND1.2]}
  b: {unit: practical-bulb, bulb: led-806-plain, at: [1, 1], height: 1.6, circuit: ring}
  c: {unit: led-point-300-bicolour, at: [-2, 3], height: 2, level: 3 %, circuit: plant}
  d: {unit: fresnel-tungsten-150, at: [-1, 3], height: 2, circuit: van}
`), study.Options{ReadingsOnly: true})
	if len(s.Readings.Flickers) != 1 {
		t.Fatalf("%+v", s.Readings.Flickers)
	}
	f := &s.Readings.Flickers[0]
	if len(f.Lamps) != 2 || f.Lamps[0].Light != "a" || f.Lamps[1].Light != "b" {
		t.Fatalf("not the two lamps that pulse: %+v", f.Lamps)
	}
	r := s.Readings.Named(f.At)
	all, pulsing := 0.0, 0.0
	for _, share := range r.Shares {
		all += share.Lux
		if share.Light == "a" || share.Light == "b" {
			pulsing += share.Lux
		}
	}
	const n = 2000
	low, high := math.Inf(1), 0.0
	for frame := range 24 {
		sum := 0.0
		for i := range n {
			at := float64(frame)/24 + 0.013 + (float64(i)+0.5)/n/48
			sum += ((all - pulsing) + pulsing*(1+math.Cos(2*math.Pi*100*at))) / n
		}
		low, high = min(low, sum), max(high, sum)
	}
	if want := (high - low) / all; !(math.Abs(f.Worst.Frames/want-1) <= 0.01) || !(math.Abs(f.Worst.Beat-4) <= 1e-9) {
		t.Errorf("at %s %+v, and exposed frame by frame %.5f", f.At, f.Worst, want)
	}
	if f.Safe == nil || !(math.Abs(f.Safe.Degrees-172.8) <= 1e-9) || !(math.Abs(f.Safe.FPS-25) <= 1e-9) {
		t.Errorf("steady at %+v", f.Safe)
	}
}
