package plan_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
)

// The side of the line is left and right as one looks along it, and a camera within five degrees of it, as the nearer of the two sees it,
// is on it: before, behind and between the two.
func TestSideOfTheLine(t *testing.T) {
	line := plan.Line{People: [2]string{"ada", "noor"}, Ends: [2]r2.Vec{{X: 1, Y: 1}, {X: 3, Y: 1}}}
	deg := math.Pi / 180
	at := func(x, angle float64) r2.Vec { // 2 m beyond noor, off the line by an angle
		return r2.Vec{X: 3 + x*math.Cos(angle*deg), Y: 1 + x*math.Sin(angle*deg)}
	}
	for _, c := range []struct {
		at   r2.Vec
		side plan.LineSide
		off  float64
	}{
		{r2.Vec{X: 2, Y: 4}, plan.LineLeft, math.Atan(3) / deg}, {r2.Vec{X: 2, Y: -2}, plan.LineRight, math.Atan(3) / deg},
		{at(2, 4.9), plan.OnLine, 4.9}, {at(2, 5.1), plan.LineLeft, 5.1}, {at(2, -5.1), plan.LineRight, 5.1}, {at(2, -4.9), plan.OnLine, 4.9},
		{r2.Vec{X: -1, Y: 1.1}, plan.OnLine, math.Atan(0.05) / deg}, {r2.Vec{X: 1.9, Y: 1.05}, plan.OnLine, math.Atan(0.05/0.9) / deg},
		{r2.Vec{X: 1, Y: 1}, plan.OnLine, 0},
	} {
		side, off := line.SideOf(c.at)
		if side != c.side || !(math.Abs(off-c.off) <= 1e-9) {
			t.Errorf("%v is %s, %g° off, want %s, %g°", c.at, side, off, c.side, c.off)
		}
		mirrored := line
		mirrored.Ends[0].Y, mirrored.Ends[1].Y = -1, -1
		want := map[plan.LineSide]plan.LineSide{plan.LineLeft: plan.LineRight, plan.LineRight: plan.LineLeft, plan.OnLine: plan.OnLine}[c.side]
		if side, off := mirrored.SideOf(r2.Vec{X: c.at.X, Y: -c.at.Y}); side != want || !(math.Abs(off-c.off) <= 1e-9) {
			t.Errorf("mirrored, %v is %s, %g° off", c.at, side, off)
		}
	}
}

// A camera on a track keeps its height, and its subject on its axis; one without a point keeps its direction.
func TestCameraOnItsTrack(t *testing.T) {
	aim := r3.Vec{X: 1, Y: 4, Z: 1.6}
	c := plan.Camera{Name: "A", Frame: plan.FrameAlong(r3.Vec{Z: 1.2}, r3.Sub(aim, r3.Vec{Z: 1.2}), 0, 0),
		Track: &plan.Track{Corners: []r2.Vec{{}, {X: 2}, {X: 2, Y: 1}}, Aim: &aim}}
	for _, along := range []float64{0, 0.5, 2, 2.4, 3} {
		at := c.OnTrack(along)
		want := r3.Vec{X: math.Min(along, 2), Y: math.Max(0, along-2), Z: 1.2}
		off := r3.Norm(r3.Cross(at.Frame.Axis, r3.Unit(r3.Sub(aim, want))))
		if r3.Norm(r3.Sub(at.Frame.At, want)) > 1e-9 || off > 1e-9 || !(math.Abs(at.Frame.Right.Z) <= 1e-9) {
			t.Errorf("%g m along it is %+v", along, at.Frame)
		}
	}
	still := c
	still.Track = &plan.Track{Corners: c.Track.Corners}
	if at := still.OnTrack(3); at.Frame.Axis != c.Frame.Axis || at.Frame.Right != c.Frame.Right {
		t.Errorf("without a point it turns to %+v", at.Frame)
	}
	s := plan.Setup{Cameras: []plan.Camera{c, {Name: "B"}}}
	posts := s.CameraPosts()
	if len(posts) != 3 || posts[1].Name != "A.end" || posts[2].Name != "B" || posts[1].Frame != c.OnTrack(3).Frame || s.CameraPost("A.end") == nil || s.CameraPost("B.end") != nil {
		t.Errorf("the posts are %+v", posts)
	}
	if plan.CameraOf("A.end") != "A" || plan.CameraWords("A.end") != "A at the end" || plan.CameraWords("B") != "B" {
		t.Error("a post is worded otherwise")
	}
}
