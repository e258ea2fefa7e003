package study

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/resolve"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
)

// Eyes in the origin look up the sheet. A camera before them sees a lamp where the cornea faces half way to it.
func TestClockOf(t *testing.T) {
	face := plan.Frame{Axis: r3.Vec{Y: 1}, Right: r3.Vec{X: 1}}
	front := r3.Vec{Y: 3}
	turned := func(right, up float64) r3.Vec { // a lamp so many degrees to the own right of the nose and over it
		s, c := math.Sincos(right * math.Pi / 180)
		h, k := math.Sincos(up * math.Pi / 180)
		return r3.Vec{X: 2 * s * k, Y: 2 * c * k, Z: 2 * h}
	}
	const limit = 2 * 48.59 // twice the angle to which the iris reaches, asin(5.85/7.8)
	for name, c := range map[string]struct {
		camera, lamp r3.Vec
		hour         int
		ok           bool
	}{
		"over the lens":                    {front, turned(0, 45), 12, true},
		"under it":                         {front, turned(0, -45), 6, true},
		"own right is camera left":         {front, turned(45, 0), 9, true},
		"own left is camera right":         {front, turned(-45, 0), 3, true},
		"up and to the own left":           {front, turned(-40, 40), 1, true},
		"at the lens":                      {front, turned(2, 2), 0, true},
		"just over the iris":               {front, turned(limit-0.1, 0), 9, true},
		"just beyond it":                   {front, turned(limit+0.1, 0), 0, false},
		"behind the head":                  {front, turned(180, 20), 0, false},
		"a camera behind the head":         {r3.Vec{Y: -3}, turned(180, 45), 0, false},
		"half way from a camera at a side": {turned(-60, 0), turned(60, 0), 0, true},
		"a camera at the side, lamp over":  {turned(-60, 0), turned(60, 45), 1, true}, // 28° from upright: the nose is turned off
	} {
		for _, mirror := range []float64{1, -1} {
			camera, lamp, want := c.camera, c.lamp, c.hour
			camera.X, lamp.X = mirror*camera.X, mirror*lamp.X
			if mirror < 0 && want > 0 && want < 12 {
				want = 12 - want
			}
			if hour, ok := clockOf(&face, camera, lamp); hour != want || ok != c.ok {
				t.Errorf("%s: %d, %v; want %d, %v", name, hour, ok, want, c.ok)
			}
		}
	}
}

// The image of a box of 1.2 m that is 2 m off is 0.6 times half the cornea's radius wide.
func TestImageSize(t *testing.T) {
	box := photometry.Opening{Form: photometry.Rectangle, Width: 1.2, Height: 0.8}
	if got, want := imageSize(box, 2), 0.6*3.9/11.7; !(math.Abs(got-want) <= 1e-9) {
		t.Errorf("%g, want %g", got, want)
	}
}

// A lamp shows in the eyes unless it is off, hidden, or turned away.
func TestCatchlights(t *testing.T) {
	const text = `{scrimshaw: 1,
		people: {ada: {at: [0, 0], faces: 0}},
		cameras: {A: {at: [0, 3], height: 1.59, lens: 50 mm}},
		grip: {f: {flag: [0.5, 0.5], at: [0.75, 0.9], height: 1.6, faces: ada}},
		lights: {
		  key: {output: {lumens: 3000, face: [1, 1]}, at: [-1.5, 1.5], height: 1.59, aim: ada},
		  dark: {output: {candela: 100, shape: uniform}, at: [0, 2], height: 2.5, level: 0 %},
		  hidden: {output: {candela: 100, shape: uniform}, at: [1.5, 1.7], height: 1.61},
		  away: {output: {lumens: 3000, face: [1, 1]}, at: [0.4, 1.5], height: 2.2, aim: up},
		  top: {output: {candela: 100, shape: uniform}, at: [0, 1.5], height: 2.5}}}`
	s := studied(t, text)
	seen := s.Readings.FaceOf("ada").Views[0].Catchlights
	if len(seen) != 2 || seen[0].Light != "key" || seen[0].Hour != 3 || seen[1].Light != "top" || seen[1].Hour != 12 || seen[1].Size != 0 {
		t.Errorf("in the eyes are %+v", seen)
	}
	if want := 1 / r3.Norm(r3.Sub(s.Setup.Lights[0].Frame.At, s.Setup.People[0].Face.At)) / 3; !(math.Abs(seen[0].Size-want) <= 1e-9) {
		t.Errorf("the box is %g of the iris wide, want %g", seen[0].Size, want)
	}
}

// A lamp does not show in the eyes where a leaf of its own barn doors stands before it.
func TestCatchlightsPastBarnDoors(t *testing.T) {
	for doors, want := range map[string]int{"": 1, ", barndoors: {left: 90, right: 90}": 1, ", barndoors: {left: 15, right: 15}": 0} {
		s := studied(t, `{scrimshaw: 1,
			people: {ada: {at: [0, 0], faces: 0}}, cameras: {A: {at: [0, 3], height: 1.59, lens: 50 mm}},
			lights: {key: {unit: fresnel-tungsten-650, at: [0.3, 2], height: 2.2, aim: [0.8, 0, 1.6]`+doors+`},
				soft: {output: {lumens: 3000, face: [1, 1]}, at: [-1.5, 1.5], height: 1.59, aim: ada}}}`)
		if seen := s.Readings.FaceOf("ada").Views[0].Catchlights; len(seen) != 1+want {
			t.Errorf("with%s there are %+v, want %d and the soft one", doors, seen, want)
		}
	}
}

// A face with a dark side has eyes as well.
func TestCatchlightsOverADarkSide(t *testing.T) {
	s := studied(t, `{scrimshaw: 1, people: {ada: {at: [0, 0], faces: 0}}, cameras: {A: {at: [0, 3], height: 1.59, lens: 50 mm}},
		lights: {key: {output: {candela: 900, shape: uniform}, at: [-2, 1.2], height: 1.59}}}`)
	f := s.Readings.FaceOf("ada")
	if f == nil || f.Contrast != nil || len(f.Views) != 1 {
		t.Fatalf("the face is lit so: %+v", f)
	}
	if seen := f.Views[0].Catchlights; len(seen) != 1 || seen[0].Light != "key" || seen[0].Hour != 3 {
		t.Errorf("in the eyes are %+v", seen)
	}
}

// A camera has a view of a face that it sees, and says what is in its eyes; past a wall, and with the face behind it, it has
// none. So a face in another room has no views.
func TestCamerasThatSeeAFace(t *testing.T) {
	const text = `{scrimshaw: 1,
		rooms: {a: {size: [4, 4]}, b: {at: [4.5, 0], size: [4, 4]}},
		people: {ada: {at: [2, 1], faces: 0}, noor: {at: [6.5, 1], faces: 0}},
		cameras: {A: {at: [2, 3.5], looks: ada, lens: 50 mm}, B: {at: [1, 3.5], looks: [1, 4, 1.6], lens: 50 mm}},
		lights: {
		  side: {output: {candela: 900, beam: 20}, at: [0.5, 1.4], height: 1.59, aim: ada},
		  other: {output: {candela: 900, beam: 20}, at: [6.5, 3], height: 2.2, aim: noor}}}`
	s := studied(t, text)
	ada, noor := s.Readings.FaceOf("ada"), s.Readings.FaceOf("noor")
	if ada == nil || len(ada.Views) != 1 || ada.Views[0].Camera != "A" || ada.Views[0].Catchlights == nil {
		t.Errorf("ada is seen so: %+v", ada)
	}
	if noor == nil || len(noor.Views) != 0 {
		t.Errorf("noor is seen past a wall: %+v", noor)
	}
}

// studied computes the readings of a scene.
func studied(t *testing.T, text string) *Study {
	t.Helper()
	shipped, err := kit.Shipped()
	if err != nil {
		t.Fatal(err)
	}
	log := &source.Log{}
	document := scene.Open(scene.Env{Kit: shipped}, &source.File{Name: "s.yaml", Text: []byte(text)}, log)
	setup := resolve.Resolve(document, document.Base(log), log)
	if log.Failed() {
		t.Fatal(log.All())
	}
	s, err := Run(t.Context(), setup, Options{ReadingsOnly: true})
	if err != nil {
		t.Fatal(err)
	}
	return s
}
