package study_test

import (
	"fmt"
	"math"
	"testing"

	"scrimshaw/plan/light"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/study"
)

// around runs a scene with what surrounds its faces.
func around(t *testing.T, text string) *study.Study {
	t.Helper()
	return run(t, laidOut(t, text), study.Options{ReadingsOnly: true, Around: true})
}

// Within 20 cm along the nose a lamp at the camera, at 2 m, gives as its distance squared.
func TestSteadinessOfAPoint(t *testing.T) {
	s := around(t, `{scrimshaw: 1, people: {ada: {at: [0, -0.1], faces: 0}}, cameras: {A: {at: [0, 2], height: 1.6, lens: 50 mm}},
		lights: {key: {output: {candela: 1000, shape: uniform}, at: [0, 2], height: 1.6}}}`)
	face := s.Setup.People[0].Face
	distance := s.Setup.Cameras[0].Frame.At.Y - face.At.Y
	want := 2 * math.Log2((distance+meter.SteadyWithin/2)/(distance-meter.SteadyWithin/2))
	if f := s.Readings.FaceOf("ada"); f == nil || f.Steadiness == nil || !(math.Abs(*f.Steadiness-want) <= 1e-3) {
		t.Errorf("%+v, want %.4f stops", f, want)
	}
}

// Light that ends beside a face is not steady, and where a place is dark, there is no figure.
func TestLightThatEndsBesideAFace(t *testing.T) {
	s := around(t, `{scrimshaw: 1, people: {ada: {at: [0, -0.1], faces: 0}}, cameras: {A: {at: [0, 2], height: 1.6, lens: 50 mm}},
		grip: {flag: {flag: [2, 2], at: [-1.06, 0.5], height: 1.6, faces: 0}},
		lights: {key: {output: {candela: 1000, shape: uniform}, at: [0, 4], height: 1.6}}}`)
	if f := s.Readings.FaceOf("ada"); f == nil || f.Steadiness == nil || *f.Steadiness < 3 {
		t.Errorf("%+v, want some stops", f)
	}
	if none, dark := meter.SteadinessOf(nil), meter.SteadinessOf([]float64{1, 0}); none != nil || dark != nil {
		t.Errorf("of nothing %v, of darkness %v", none, dark)
	}
}

// studio is a head before a wall, with a key at one side and a light on the wall; the camera looks along the nose, or past it.
const studio = `{scrimshaw: 1, rooms: {den: {at: [%g, 0], size: [5, 4], height: 2.6}}, exposure: {stop: T2.8, iso: 800},
	people: {ada: {at: [%g, 1.8], faces: 180, skin: 0.36, wears: 0.09}}, cameras: {A: {at: [%g, 0.4], height: 1.6, lens: 50 mm, looks: ada}},
	lights: {key: {output: {lumens: 3000, face: [0.6, 0.6]}, at: [%g, 0.8], height: 1.8, aim: ada}, wall: {output: {lumens: 900, beam: 30, field: 50}, at: [%g, 2.6], height: 2.2, aim: [%g, 4, 1.6]}},
	meters: {left: {spot: [%g, 4, %g], from: A}}}`

// What a camera sees beside a head is what a spot meter reads of the wall there, and by that cheek's light on a grey card; in the
// mirrored scene it is on the other side.
func TestBehindAHead(t *testing.T) {
	scene := func(side, x, z float64) string {
		at := func(x float64) float64 { return side * x }
		left := 0.0
		if side < 0 {
			left = -5
		}
		return fmt.Sprintf(studio, left, at(2.4), at(2.3), at(0.9), at(3.4), at(3.2), at(x), z)
	}
	plain := around(t, scene(1, 2, 1.6))
	// The camera looks past the head at its left: from there to the wall, by similar triangles.
	p, c := &plain.Setup.People[0], &plain.Setup.Cameras[0].Frame
	past := p.At.X - c.Right.X*0.16
	pastY := p.At.Y - c.Right.Y*0.16
	grow := (4 - c.At.Y) / (pastY - c.At.Y)
	plain = around(t, scene(1, c.At.X+grow*(past-c.At.X), c.At.Z+grow*(p.Eyes-c.At.Z)))
	view := plain.Readings.FaceOf("ada").Views[0]
	spot := plain.Readings.Named("left")
	if len(view.Behind) != 2 || view.Behind[0].Picture != meter.PictureLeft || view.Behind[0].Surface != "den.top" || view.Behind[0].Over == nil {
		t.Fatalf("%+v", view.Behind)
	}
	if off := math.Abs(*view.Behind[0].Over - *spot.Over); off > 2*math.Log2(1+2**spot.Error)+1e-6 {
		t.Errorf("%.4f stops from grey, and a spot meter %.4f ± %.2f %%", *view.Behind[0].Over, *spot.Over, 100**spot.Error)
	}
	cheek := plain.Readings.Named("ada.fill")
	if view.Key == meter.PictureLeft {
		cheek = plain.Readings.Named("ada.key")
	}
	exposed := *spot.Over - *cheek.Over
	if !(math.Abs(*view.Behind[0].Cheek-exposed) <= 0.02) {
		t.Errorf("%.4f stops from the cheek, want %.4f", *view.Behind[0].Cheek, exposed)
	}
	mirrored := around(t, scene(-1, 2, 1.6)).Readings.FaceOf("ada").Views[0]
	for k := range view.Behind {
		a, b := &view.Behind[k], &mirrored.Behind[1-k]
		if !(math.Abs(*a.Over-*b.Over) <= 0.03) || !(math.Abs(*a.Cheek-*b.Cheek) <= 0.03) {
			t.Errorf("%s: %.3f and %.3f stops, mirrored %.3f and %.3f", a.Picture, *a.Over, *a.Cheek, *b.Over, *b.Cheek)
		}
	}
}

// Skin of twice grey's reflectance lies a stop over what the meter reads, clothes of half of it a stop under.
func TestTonesOfSkinAndClothes(t *testing.T) {
	s := run(t, laidOut(t, fmt.Sprintf(studio, 0.0, 2.4, 2.3, 0.9, 3.4, 3.2, 2.0, 1.6)), study.Options{ReadingsOnly: true})
	f := s.Readings.FaceOf("ada")
	for name, tone := range map[string]*meter.Tone{"key": f.Skin, "fill": f.Clothes} {
		want, got := *s.Readings.Named("ada." + name).Over+1, tone.Key
		if name == "fill" {
			want, got = want-2, tone.Fill
		}
		if got == nil || !(math.Abs(*got-want) <= 1e-9) {
			t.Errorf("%s: %v, want %g", name, got, want)
		}
	}
	plain := run(t, setup(t, "napkin"), study.Options{ReadingsOnly: true, Quality: light.Draft})
	if f := plain.Readings.Faces[0]; f.Skin != nil || f.Clothes != nil || f.Steadiness != nil || f.Views[0].Behind != nil {
		t.Errorf("%+v: nobody asked", f)
	}
}

// Nothing stands behind a head on open ground; it costs no stops.
func TestNothingBehindAHead(t *testing.T) {
	s := around(t, `{scrimshaw: 1, people: {ada: {at: [0, 0], faces: 0}}, cameras: {A: {at: [0, 3], height: 1.59, lens: 50 mm, looks: ada}},
		lights: {key: {output: {candela: 1000, shape: uniform}, at: [2, 2], height: 1.6}}}`)
	for _, b := range s.Readings.FaceOf("ada").Views[0].Behind {
		if b.Surface != "" || b.Over != nil || b.Cheek != nil {
			t.Errorf("%+v", b)
		}
	}
}
