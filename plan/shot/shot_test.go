package shot_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"scrimshaw/plan"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/resolve"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/shot"
	"scrimshaw/plan/source"
	"scrimshaw/plan/unit"
	"scrimshaw/testdata/published"
)

// resolved is a scene of cameras and people.
func resolved(t testing.TB, text string) *plan.Setup {
	t.Helper()
	shipped, err := kit.Shipped()
	if err != nil {
		t.Fatal(err)
	}
	log := &source.Log{}
	doc := scene.Open(scene.Env{Kit: shipped}, &source.File{Name: "s.yaml", Text: []byte("scrimshaw: 1\n" + text)}, log)
	s := resolve.Resolve(doc, doc.Base(log), log)
	if log.Failed() {
		t.Fatal(log.All())
	}
	return s
}

// first is what the first camera of a scene sees.
func first(t testing.TB, text string) shot.Shot {
	t.Helper()
	return shot.Of(resolved(t, text))[0]
}

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s is %.9g, want %.9g", what, got, want)
	}
}

// gates are the published ones by their width and height in mm.
var gates = map[[2]float64]string{{24.89, 18.66}: "super-35, aspect: 1.3338692390", {24.89, 14.000625}: "super-35",
	{36, 24}: "full-frame, aspect: 1.5", {36, 20.25}: "full-frame", {21.95, 16}: "academy, aspect: 1.371875"}

// The shipped gates see what the published tables say, across, up and from corner to corner.
func TestGatesSeeWhatIsPublished(t *testing.T) {
	for _, row := range published.Read(t, "format.txt", "view") {
		gate, known := gates[[2]float64{row.In[0], row.In[1]}]
		if !known {
			t.Fatalf("no gate is %v mm", row.In[:2])
		}
		s := first(t, fmt.Sprintf("cameras: {A: {at: [0, 0], looks: 0, lens: %g mm, sensor: %s}}", row.In[2], gate))
		near(t, gate+": across", s.Angles[0], row.Out[0], 0.005)
		near(t, gate+": up", s.Angles[1], row.Out[1], 0.005)
	}
	for _, row := range published.Read(t, "format.txt", "diagonal") {
		gate := gates[[2]float64{row.In[0], row.In[1]}]
		s := first(t, fmt.Sprintf("cameras: {A: {at: [0, 0], looks: 0, lens: 50 mm, sensor: %s}}", gate))
		near(t, gate+": from corner to corner", 2*50*math.Tan(s.Angles[2]/2*math.Pi/180), row.Out[0], 5e-4)
	}
}

// The frame at a face is as wide as the published rows say at that distance; an anamorphic lens doubles it and leaves its
// height.
func TestFrameAtTheSubject(t *testing.T) {
	sensors := map[float64]string{24.89: "super-35", 36: "full-frame"}
	for _, row := range published.Read(t, "format.txt", "frame") {
		text := fmt.Sprintf("people: {ada: {at: [0, 0], faces: 0}}\ncameras: {A: {at: [0, %g], lens: %g mm, sensor: %s, SQUEEZE aspect: 1.5}}",
			row.In[2]+0.1, row.In[1], sensors[row.In[0]]) // a face is 0.1 m before the head's axis
		round, squeezed := first(t, strings.Replace(text, "SQUEEZE", "", 1)), first(t, strings.Replace(text, "SQUEEZE aspect: 1.5", "squeeze: 2, aspect: 3", 1))
		crop := math.Min(1, 18.66*1.5/24.89)
		if row.In[0] == 36 {
			crop = 1
		}
		near(t, "the distance", round.Subject.Distance, row.In[2], 1e-9)
		near(t, "the width", round.Subject.Width, crop*row.Out[0], 5e-5)
		near(t, "the width through a squeeze of 2", squeezed.Subject.Width, 2*crop*row.Out[0], 1e-4)
		near(t, "the height through it", squeezed.Subject.Height, round.Subject.Height, 1e-9)
	}
}

// A camera is focused on whom it looks at, else on who is nearest in its frame.
func TestSubject(t *testing.T) {
	const people = "people: {far: {at: [0, 6], faces: 180}, close: {at: [0.1, 3], faces: 180}, aside: {at: [2, 1], faces: 180}, behind: {at: [0, -2]}}\n"
	for looks, want := range map[string]string{"": "far", "looks: far,": "far", "looks: close,": "close", "looks: 0,": "close",
		"looks: 180,": "behind", "looks: 90,": "", "looks: [0, 6, 1.59],": "close", "looks: aside,": "aside"} {
		s := first(t, people+"cameras: {A: {at: [0, 0], "+looks+" height: 1.6, lens: 50 mm}}")
		got := ""
		if s.Subject != nil {
			got = s.Subject.Name
		}
		if got != want {
			t.Errorf("%q is focused on %q, want %q", looks, got, want)
		}
	}
}

// Sizes go by how much of somebody fits into the frame's height.
func TestSizes(t *testing.T) {
	for height, want := range map[float64]string{
		0.15: "extreme close-up", 0.25: "close-up", 0.45: "close-up", 0.65: "medium close-up", 0.95: "medium shot", 1.4: "medium long shot",
		1.75: "full shot", 2.4: "full shot", 4: "wide shot", 9: "extreme wide shot",
	} {
		distance := height * 50 / 14.000625 // of the frame of that height
		s := first(t, fmt.Sprintf("people: {ada: {at: [0, 0], faces: 0}}\ncameras: {A: {at: [0, %.9f], lens: 50 mm}}", distance+0.1))
		near(t, "the height", s.Subject.Height, height, 1e-6)
		near(t, "the head", s.Subject.Head, 0.22/height, 1e-6)
		near(t, "the body", s.Subject.Body, 1.7/height, 1e-6)
		if string(s.Subject.Size) != want {
			t.Errorf("a frame %g m high is a %s, want %s", height, s.Subject.Size, want)
		}
	}
}

// What is sharp follows the camera's own stop, its gate's circle and the light it works with.
func TestSharp(t *testing.T) {
	const scene = "people: {ada: {at: [0, 0], faces: 0}}\ncameras: {A: {at: [0, 3.1], lens: 50 mm, exposure: {stop: T2.8}}}"
	s := first(t, scene)
	n, c := 2*math.Sqrt2, math.Hypot(24.89, 18.66)/1500
	h := (50*50/(n*c) + 50) / 1000
	near(t, "the hyperfocal distance", s.Hyperfocal, h, 1e-9)
	near(t, "the nearest", s.Subject.Near, 3*(h-0.05)/(h+3-0.1), 1e-9)
	near(t, "the farthest", s.Subject.Far, 3*(h-0.05)/(h-3), 1e-9)
	length := func(m float64) string { return unit.FormatLength(m, false) }
	if got := s.Focus(length); got != "sharp 2.81 m to 3.22 m, hyperfocal 42.67 m" {
		t.Errorf("it says %q", got)
	}
	if got := s.Frame(length); got != "1.49 m × 0.84 m at ada, 3.00 m away, medium shot" || s.Share() != "head 26 % of the height" {
		t.Errorf("it says %q", got)
	}
	wide := first(t, strings.Replace(strings.Replace(scene, "50 mm", "14 mm", 1), "T2.8", "T16", 1))
	if got := wide.Focus(length); !strings.HasPrefix(got, "sharp from ") || !strings.Contains(got, " m, hyperfocal ") {
		t.Errorf("past the hyperfocal distance it says %q", got)
	}
}

func ExampleOf() {
	shipped, _ := kit.Shipped()
	log := &source.Log{}
	text := "scrimshaw: 1\npeople: {ada: {at: [0, 0], faces: 0}}\ncameras: {A: {at: [0, 2.6], lens: 32 mm}}\n"
	doc := scene.Open(scene.Env{Kit: shipped}, &source.File{Name: "s.yaml", Text: []byte(text)}, log)
	for _, s := range shot.Of(resolve.Resolve(doc, doc.Base(log), log)) {
		fmt.Println(s.Camera, "sees", s.Sees())
		fmt.Println(s.Frame(func(m float64) string { return unit.FormatLength(m, false) }))
	}
	// Output:
	// A sees 42.5° × 24.7°, 48.1° from corner to corner
	// 1.94 m × 1.09 m at ada, 2.50 m away, medium shot
}
