package study_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/study"
)

// A dot is round: half way to the floor under a point of light it throws a round shadow twice as wide, and none where the
// corners of a square would.
func TestADotThrowsARoundShadow(t *testing.T) {
	const scene = `{scrimshaw: 1, lights: {p: {output: {candela: 1000, shape: uniform}, at: [0, 0], height: 2, mount: {lift: 2}}},
		grip: {d: {flag: dot-25, at: [0, 0], height: 1, faces: up}},
		meters: {under: {flat: [0, 0.24, 0], facing: up}, aside: {flat: [0.16, 0.16, 0], facing: up},
			corner: {flat: [0.2, 0.2, 0], facing: up}, past: {flat: [0.27, 0, 0], facing: up}}}`
	s := laidOut(t, scene)
	lit := run(t, s, study.Options{ReadingsOnly: true})
	for name, shaded := range map[string]bool{"under": true, "aside": true, "corner": false, "past": false} {
		got, open := *lit.Readings.Named(name).Lux, 0.0
		for i := range s.Meters {
			if m := &s.Meters[i]; m.Name == name {
				open = 1000 * 2 / math.Pow(m.At.X*m.At.X+m.At.Y*m.At.Y+4, 1.5)
			}
		}
		if shaded && got > 1e-6*open || !shaded && !(math.Abs(got/open-1) <= 1e-6) {
			t.Errorf("%s: %.4g lx, in the open %.4g", name, got, open)
		}
	}
	corners, area := s.Grip[0].Corners(), r3.Vec{}
	for i := range corners {
		area = r3.Add(area, r3.Scale(0.5, r3.Cross(corners[i], corners[(i+1)%len(corners)])))
	}
	if want := math.Pi * 0.125 * 0.125; !(math.Abs(area.Z-want) <= 1e-9) {
		t.Errorf("the dot has %.5f m² before it, want %.5f", area.Z, want)
	}
}
