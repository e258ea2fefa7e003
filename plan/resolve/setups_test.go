package resolve

import (
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/source"
)

const day = `
people:
  mara: {at: [3, 3], faces: 180}
  tom:  {at: [5, 3], faces: mara}
cameras:
  A: {at: [3, 0], looks: mara, lens: 35 mm}
  B: {at: [5, 0], looks: tom, lens: 50 mm}
lights:
  key:  {output: {candela: 100, shape: uniform}, at: {by: mara, toward: A, turn: 90 camera-left, distance: 1}, height: 2}
  back: {output: {candela: 100, shape: uniform}, at: {from: mara, shift: [0, 2]}, height: 2}
grip:
  card: {card: [1, 1], at: {by: mara, distance: 1}}
setups:
  wide:  {camera: A}
  close: {camera: B, after: wide, stays: [key, card], change: {people: {mara: {at: [4, 3]}}, lights: {back: strike, rim: {output: {candela: 50, shape: uniform}, at: [1, 1], height: 2}}}}
  aimed: {camera: A, after: wide, stays: [key], change: {people: {mara: {at: [4, 3]}}, lights: {key: {aim: down}}}}
`

// setup resolves one set-up of a day without errors.
func setup(t *testing.T, text, name string) *plan.Setup {
	t.Helper()
	log := &source.Log{}
	doc := opened(t, text, log)
	s := Resolve(doc, doc.Scene(name, log), log)
	if log.Failed() {
		t.Fatalf("%s has errors:\n%s", name, told(log))
	}
	return s
}

func lightOf(t *testing.T, s *plan.Setup, name string) *plan.Light {
	t.Helper()
	for i := range s.Lights {
		if s.Lights[i].Name == name {
			return &s.Lights[i]
		}
	}
	t.Fatalf("no light %s", name)
	return nil
}

// A camera turns with what it is pointed at by name, or with who stands at that mark; not with a place or a bearing, and not once it stays.
func TestCamerasTurnWithWhatTheyArePointedAt(t *testing.T) {
	const after = `
people: {mara: {at: [3, 3], faces: 180, marks: {door: {at: [4, 4]}}}}
grip: {card: {card: [1, 1], at: [1, 3], faces: mara}}
cameras: {A: {at: [3, 0], looks: LOOKS, lens: 35 mm}}
setups: {wide: {}, close: {after: wide, stays: [A]}}
`
	for looks, want := range map[string]string{"card": "card", "mara": "mara", "mara.door": "mara", "12": "", "[1, 3, 1]": "", "{pan: 3, tilt: 2}": ""} {
		text := strings.Replace(after, "LOOKS", looks, 1)
		if got := setup(t, text, "wide").Cameras[0].Follows; got != want {
			t.Errorf("looks: %s turns with %q, want %q", looks, got, want)
		}
		if got := setup(t, text, "close").Cameras[0].Follows; got != "" {
			t.Errorf("looks: %s turns with %q, and stays", looks, got)
		}
	}
	if got := setup(t, strings.Replace(after, "looks: LOOKS, ", "", 1), "wide").Cameras[0].Follows; got != "mara" {
		t.Errorf("without a word a camera turns with %q, want mara", got)
	}
}

// What is placed by mara follows her, but what stays keeps place, height and aim.
func TestStaysAndFollows(t *testing.T) {
	wide, close := setup(t, day, "wide"), setup(t, day, "close")
	near2(t, "key in the wide", plan.InPlan(lightOf(t, wide, "key").Frame.At), r2.Vec{X: 2, Y: 3}, 1e-12)
	near2(t, "back in the wide", plan.InPlan(lightOf(t, wide, "back").Frame.At), r2.Vec{X: 3, Y: 5}, 1e-12)
	near3(t, "key stays", lightOf(t, close, "key").Frame.At, lightOf(t, wide, "key").Frame.At, 0)
	near3(t, "and keeps its aim", lightOf(t, close, "key").Frame.Axis, lightOf(t, wide, "key").Frame.Axis, 0)
	near3(t, "card stays", close.Grip[0].Frame.At, wide.Grip[0].Frame.At, 0)

	aimed := setup(t, day, "aimed")
	near2(t, "key stays", plan.InPlan(lightOf(t, aimed, "key").Frame.At), r2.Vec{X: 2, Y: 3}, 1e-12)
	near3(t, "with the aim that the change gives", lightOf(t, aimed, "key").Frame.Axis, r3.Vec{Z: -1}, 0)
	near2(t, "back follows", plan.InPlan(lightOf(t, aimed, "back").Frame.At), r2.Vec{X: 4, Y: 5}, 1e-12)
}

// Numbers go by the order of the whole file and stay with their lights, struck or not.
func TestTagsAreKeptAllDay(t *testing.T) {
	wide, close := setup(t, day, "wide"), setup(t, day, "close")
	for _, c := range []struct {
		s         *plan.Setup
		name, tag string
	}{{wide, "key", "1"}, {wide, "back", "2"}, {close, "key", "1"}, {close, "rim", "3"}} {
		if got := lightOf(t, c.s, c.name).Tag; got != c.tag {
			t.Errorf("%s is %s in %q, want %s", c.name, got, c.s.Name, c.tag)
		}
	}
	if close.Grip[0].Tag != "G1" {
		t.Errorf("card is %s", close.Grip[0].Tag)
	}
}

func TestCamerasOfASetup(t *testing.T) {
	wide, close := setup(t, day, "wide"), setup(t, day, "close")
	if len(wide.Cameras) != 1 || wide.Cameras[0].Name != "A" || len(close.Cameras) != 1 || close.Cameras[0].Name != "B" {
		t.Errorf("wide has %v, close has %v", wide.Cameras, close.Cameras)
	}
	if wide.Name != "wide" {
		t.Errorf("the set-up is called %q", wide.Name)
	}
}

// A fault of the scene is reported once, however many set-ups have it.
func TestFaultsOfTheSceneAreToldOnce(t *testing.T) {
	log := &source.Log{}
	doc := opened(t, `
people: {ruth: {at: [1, 1]}}
cameras: {A: {at: [4, 1], looks: rth, lens: 35 mm}}
setups: {one: {camera: A}, two: {camera: A}}
`, log)
	for _, name := range append([]string{""}, doc.Setups...) {
		Resolve(doc, doc.Scene(name, log), log)
	}
	all := log.All()
	if len(all) != 1 || all[0].Setup != "" || all[0].Path != "cameras.A" {
		t.Errorf("told\n%s", told(log))
	}
}

// Set-ups that come before each other do not lead round in circles.
func TestStaysInARing(t *testing.T) {
	log := &source.Log{}
	doc := opened(t, `
people: {ruth: {at: [1, 1]}}
cameras: {A: {at: [4, 1], lens: 35 mm}}
setups: {one: {camera: A, after: two, stays: [ruth]}, two: {camera: A, stays: [ruth]}}
`, log)
	for _, name := range doc.Setups {
		Resolve(doc, doc.Scene(name, log), log)
	}
}
