package meter

import (
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/lens"
	"scrimshaw/plan/shot"
	"scrimshaw/plan/unit"
)

// pushed is somebody at the origin who looks down the sheet, and a camera that looks at them from a track.
func pushed(corners ...r2.Vec) *plan.Setup {
	face := plan.FrameAlong(r3.Vec{Z: 1.6}, r3.Vec{Y: -1}, 0, 0)
	at := plan.AtHeight(corners[0], 1.6)
	return &plan.Setup{People: []plan.Person{{Name: "ada", Crown: 1.7, Face: face}},
		Cameras: []plan.Camera{{Name: "A", Lens: 50, Gate: [2]float64{24.89, 14}, Looks: "ada", HAOV: lens.AngleOfView(24.89, 50), VAOV: lens.AngleOfView(14, 50),
			Frame: plan.FrameAlong(at, r3.Sub(face.At, at), 0, 0), Track: &plan.Track{Corners: corners, Aim: &face.At}}}}
}

// A push in changes the size of the shot where the head takes the next share of the frame's height: at the distance head / share x focal
// length / height of the gate.
func TestSizesAlongATrack(t *testing.T) {
	s := pushed(r2.Vec{Y: -4}, r2.Vec{Y: -1})
	tracks := tracksOf(s, nil)
	if len(tracks) != 1 || tracks[0].Camera != "A" || !(math.Abs(tracks[0].Length-3) <= 1e-12) {
		t.Fatalf("the tracks are %+v", tracks)
	}
	var sizes []shot.Size
	for i, share := range []float64{0.20, 0.30, 0.45} { // from the medium long shot that it starts as
		want := 4 - 0.22/share*50/14
		if c := tracks[0].Changes[i]; !(math.Abs(c.Along-want) <= 1e-4) || c.Person != "ada" {
			t.Errorf("changes at %.5f m to %s of %s, want %.5f m", c.Along, c.Size, c.Person, want)
		}
		sizes = append(sizes, tracks[0].Changes[i].Size)
	}
	if !slices.Equal(sizes, []shot.Size{shot.MediumShot, shot.MediumCloseUp, shot.CloseUp}) || len(tracks[0].Changes) != 3 {
		t.Errorf("changes are %+v", tracks[0].Changes)
	}
	lines := tracks[0].ChangeWords(func(m float64) string { return unit.FormatLength(m, false) })
	if lines[0] != "from 0.07 m on: medium shot of ada" {
		t.Errorf("it says %q", lines)
	}
}

// A track crosses from the lit to the shadow side of a face where it crosses the plane of the nose, and looks straight at that within 5° of
// it: on a straight track, where its distance from the plane is the tangent of 5° of that from the face. Of a face whose sides are equal
// nothing is said, and of one that leaves the frame that nobody is in it.
func TestSidesAlongATrack(t *testing.T) {
	s := pushed(r2.Vec{X: -2, Y: -3}, r2.Vec{X: 1, Y: -2}, r2.Vec{X: 1, Y: -1.5}, r2.Vec{X: -1, Y: -1.5})
	face := Face{Person: "ada", Side: "right", Contrast: contrastOf(200, 100)} // own right is at -x, as she looks down the sheet
	five := math.Tan(alongNose * math.Pi / 180)
	leg, straight := math.Hypot(3, 1), 1.5*five // x = -2 + 3 s, y = -3 + s
	want := []TrackChange{{Along: leg * (2 - 3*five) / (3 - five), From: FromFront}, {Along: leg * (2 + 3*five) / (3 + five), From: FromShadow},
		{Along: leg + 1.5 - straight, From: FromFront}, {Along: leg + 1.5 + straight, From: FromLit}}
	var got []TrackChange
	for _, c := range tracksOf(s, []Face{face})[0].Changes {
		if c.From != "" {
			got = append(got, c)
		}
	}
	if len(got) != len(want) {
		t.Fatalf("changes sides %+v, want %+v", got, want)
	}
	for i, c := range got {
		if !(math.Abs(c.Along-want[i].Along) <= 2e-4) || c.From != want[i].From || c.Person != "ada" {
			t.Errorf("changes to %s at %.4f m, want %s at %.4f m", c.From, c.Along, want[i].From, want[i].Along)
		}
	}
	face.Contrast = contrastOf(100, 100)
	for _, c := range tracksOf(s, []Face{face})[0].Changes {
		if c.From != "" {
			t.Errorf("a face that is evenly lit changes sides: %+v", c)
		}
	}
	s.Cameras[0].Track.Aim = nil
	changes := tracksOf(s, nil)[0].Changes
	if len(changes) == 0 || changes[0].Person != "" || changes[0].words("A") != "nobody in frame" {
		t.Errorf("a camera that keeps its direction tells %+v", changes)
	}
}
