package frame_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/frame"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/solid"
	"scrimshaw/plan/term"
)

// across is a lantern that aims across the frame, from the right to a point straight ahead; its axis is level.
func across(x, deep, radius float64) plan.Setup {
	s := ball(r3.Vec{X: x, Y: deep}, radius)
	l := &s.Lights[0]
	l.AimPoint, l.Throw = r3.Vec{Y: deep, Z: lensHeight}, x
	l.Frame.Axis, l.Frame.Right = r3.Vec{X: -1}, r3.Vec{Y: 1}
	return s
}

// A ball comes into the frame where the pyramid of that is as far from its middle as its radius: x cos a - y sin a = r. The
// way ends there, down to a centimetre; with a margin about the frame it is the tangent of that.
func TestABallComesAsNearAsTheFrameLetsIt(t *testing.T) {
	for _, lens := range closed {
		for _, margin := range []float64{0, 0.05} {
			const x, deep, radius = 4.0, 3.0, 0.3
			s := across(x, deep, radius)
			c := camera(lens[0], lens[1], lens[2])
			c.Room = margin
			s.Cameras = []plan.Camera{c}
			half := math.Atan(lens[0] / 2 / lens[2] * (1 + 2*margin))
			want := x - (radius+deep*math.Sin(half))/math.Cos(half)
			got, ok := frame.Nearest(&s, &s.Lights[0])
			if !ok || got.Camera != "A" || got.Metres > want+0.005 || got.Metres < want-0.011 {
				t.Errorf("lens %v, margin %g: %+v, want %.4f m", lens, margin, got, want)
			}
			if !(math.Abs(r3.Norm(got.By)-got.Metres) <= 1e-12) || got.By.X > 0 {
				t.Errorf("it is moved %v", got.By)
			}
		}
	}
}

// A light that shows already comes no nearer; one that no camera sees, or that is meant to be seen, comes as near as a head has room; and
// one that aims at nothing, or is there already, has no way.
func TestHowNearWithoutAFrame(t *testing.T) {
	c := camera(24.89, 14, 35)
	showing := across(1, 3, 0.3)
	showing.Cameras = []plan.Camera{c}
	if got, ok := frame.Nearest(&showing, &showing.Lights[0]); !ok || got.Metres != 0 || got.Camera != "A" {
		t.Errorf("%+v", got)
	}
	unseen := across(4, -3, 0.3)
	unseen.Cameras = []plan.Camera{c}
	if got, _ := frame.Nearest(&unseen, &unseen.Lights[0]); !(math.Abs(got.Metres-3.7) <= 1e-9) || got.Camera != "" || got.Why != "no nearer to what it is aimed at" {
		t.Errorf("%+v, want 3.7 m", got)
	}
	meant := across(4, 3, 0.3)
	meant.Cameras, meant.Lights[0].Seen = []plan.Camera{c}, plan.Seen{Written: true, Meant: true}
	if got, _ := frame.Nearest(&meant, &meant.Lights[0]); !(math.Abs(got.Metres-3.7) <= 1e-9) {
		t.Errorf("%+v, want 3.7 m", got)
	}
	for _, throw := range []float64{0, 0.2} {
		s := across(4, 3, 0.3)
		s.Lights[0].Throw = throw
		if got, ok := frame.Nearest(&s, &s.Lights[0]); ok {
			t.Errorf("a throw of %g has a way: %+v", throw, got)
		}
	}
}

// What stands in the way of a head ends it, by its name, and so do a wall before its stand and the height of that; its feet stay on the
// floor where the head comes down.
func TestWhatEndsTheWay(t *testing.T) {
	box := func(id solid.ID, x0, x1, y0, y1, z0, z1 float64) solid.Prism {
		return solid.Prism{ID: id, Z0: z0, Z1: z1, Base: []r2.Vec{{X: x0, Y: y0}, {X: x1, Y: y0}, {X: x1, Y: y1}, {X: x0, Y: y1}}}
	}
	s := across(4, -3, 0.3)
	s.Names = map[solid.ID]string{1: "shelf"}
	s.Set.Prisms = []solid.Prism{box(1, 1, 1.5, -4, -2, 1.4, 1.6)}
	if got, _ := frame.Nearest(&s, &s.Lights[0]); !(math.Abs(got.Metres-2.2) <= 0.02) || got.Why != "shelf is in its way" {
		t.Errorf("%+v, want 2.2 m to the shelf", got)
	}
	s.Set.Prisms[0].Z0, s.Set.Prisms[0].Z1 = 0.5, 1
	l := &s.Lights[0]
	l.Mount = plan.Mount{Kind: term.Stand, Base: r2.Vec{X: 4, Y: -3}, Foot: 0.8}
	if got, _ := frame.Nearest(&s, l); got.Why != "shelf is in its way" || got.Metres < 1 || got.Metres > 2.6 {
		t.Errorf("%+v, want its post before the shelf", got)
	}
	// Down from 2.5 m to a face at the height of the lens: the floor is not in the way of its feet.
	s.Set.Prisms[0] = box(1, -9, 9, -9, 9, -0.2, 0)
	l.Frame.At.Z = 2.5
	way := r3.Sub(l.AimPoint, l.Frame.At)
	l.Throw = r3.Norm(way)
	l.Frame = plan.FrameAlong(l.Frame.At, way, plane.Bearing(plan.InPlan(way)), 0)
	if got, _ := frame.Nearest(&s, l); !(math.Abs(got.Metres-(l.Throw-0.3)) <= 0.011) || got.Why != "no nearer to what it is aimed at" {
		t.Errorf("%+v, want all of %.3f m", got, l.Throw-0.3)
	}
	if l.Head.Source.Opening.Form != photometry.Sphere {
		t.Fatal("it is no lantern")
	}
}
