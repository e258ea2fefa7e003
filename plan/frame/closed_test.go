package frame_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/frame"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/solid"
	"scrimshaw/plan/term"
)

// The camera of the closed forms: at 1.5 m, level, up the sheet.
const lensHeight = 1.5

func camera(gateWide, gateHigh, focal float64) plan.Camera {
	return plan.Camera{Name: "A", Lens: focal, Gate: [2]float64{gateWide, gateHigh}, HAOV: 2 * math.Atan(gateWide/2/focal) * 180 / math.Pi,
		Frame: plan.Frame{At: r3.Vec{Z: lensHeight}, Axis: r3.Vec{Y: 1}, Right: r3.Vec{X: 1}}}
}

// ball is a lantern without a stand, blackFlag a black that faces the camera.
func ball(at r3.Vec, radius float64) plan.Setup {
	f := plan.Frame{At: r3.Add(at, r3.Vec{Z: lensHeight}), Axis: r3.Vec{Y: -1}, Right: r3.Vec{X: -1}}
	source := photometry.Source{Opening: photometry.Opening{Form: photometry.Sphere, Width: 2 * radius}}
	return plan.Setup{Lights: []plan.Light{{Name: "k", Tag: "1", Frame: f, Head: kit.Head{Class: term.Lantern, Source: source}, Mount: plan.Mount{Kind: term.Hand}}}}
}

func blackFlag(at r3.Vec, width, height float64) plan.Setup {
	f := plan.Frame{At: r3.Add(at, r3.Vec{Z: lensHeight}), Axis: r3.Vec{Y: -1}, Right: r3.Vec{X: -1}}
	return plan.Setup{Grip: []plan.Grip{{Name: "f", Tag: "G1", Kind: term.Flag, Size: [2]float64{width, height}, Frame: f, Mount: plan.Mount{Kind: term.Hand}}}}
}

// judged is the one thing of a set-up as a camera sees it.
func judged(s plan.Setup, c plan.Camera) frame.Sight {
	s.Cameras = []plan.Camera{c}
	return frame.Judge(&s)[0]
}

// lastIn is the greatest quantity from low to high at which a thing still shows.
func lastIn(low, high float64, shows func(float64) bool) float64 {
	for range 60 {
		if middle := (low + high) / 2; shows(middle) {
			low = middle
		} else {
			high = middle
		}
	}
	return low
}

// closed are a few lenses: gates, focal lengths, in mm.
var closed = [][3]float64{{24.89, 14, 35}, {24.89, 10.41, 18}, {36, 24, 85}, {10, 20, 50}}

// A ball shows until the pyramid of the frame is as far from its middle as its radius: x cos a - y sin a = r. Just before that
// what is within is a segment of so little depth that it takes less than the least share: 4/3 sqrt(2 r) depth^1.5.
func TestABallLeavesTheFrameAtItsTangent(t *testing.T) {
	for _, lens := range closed {
		c := camera(lens[0], lens[1], lens[2])
		for _, side := range []struct {
			across, up float64
			half       float64 // of the angle of view
		}{{1, 0, math.Atan(lens[0] / 2 / lens[2])}, {-1, 0, math.Atan(lens[0] / 2 / lens[2])}, {0, 1, math.Atan(lens[1] / 2 / lens[2])}, {0, -1, math.Atan(lens[1] / 2 / lens[2])}} {
			const radius, deep = 0.3, 4.0
			got := lastIn(0, 10, func(x float64) bool {
				s := judged(ball(r3.Vec{X: side.across * x, Y: deep, Z: side.up * x}, radius), c)
				return s.Shows()
			})
			want := (radius + deep*math.Sin(side.half)) / math.Cos(side.half)
			segment := frame.LeastShare * deep * deep * lens[0] * lens[1] / (lens[2] * lens[2])
			depth := math.Pow(segment/(4.0/3*math.Sqrt(2*radius)), 2.0/3)
			if got > want+2e-4 || got < want-1.2*depth/math.Cos(side.half) {
				t.Errorf("lens %v, side %v: the ball shows to %.5f m, want %.5f", lens, side, got, want)
			}
		}
	}
}

// A flag square to the axis shows until its near edge is as far aside as half the gate is by the focal length.
func TestAFlagLeavesTheFrameAtItsEdge(t *testing.T) {
	for _, lens := range closed {
		c := camera(lens[0], lens[1], lens[2])
		const width, height, deep = 0.4, 0.6, 3.0
		got := lastIn(0, 10, func(x float64) bool {
			s := judged(blackFlag(r3.Vec{X: x, Y: deep}, width, height), c)
			return s.Shows()
		})
		if want := deep*lens[0]/2/lens[2] + width/2; !(math.Abs(got-want) <= 1e-4) {
			t.Errorf("lens %v: the flag shows to %.5f m aside, want %.5f", lens, got, want)
		}
		got = lastIn(0, 10, func(z float64) bool {
			s := judged(blackFlag(r3.Vec{Y: deep, Z: z}, width, height), c)
			return s.Shows()
		})
		if want := deep*lens[1]/2/lens[2] + height/2; !(math.Abs(got-want) <= 1e-4) {
			t.Errorf("lens %v: the flag shows to %.5f m up, want %.5f", lens, got, want)
		}
	}
}

// An anamorphic lens sees as much wider as it draws the picture together.
func TestAFlagLeavesASqueezedFrame(t *testing.T) {
	const width, deep, squeeze = 0.4, 3.0, 2
	c := camera(24, 18, 50)
	c.Squeeze, c.HAOV = squeeze, 2*math.Atan(squeeze*12/50.0)*180/math.Pi
	got := lastIn(0, 10, func(x float64) bool {
		s := judged(blackFlag(r3.Vec{X: x, Y: deep}, width, 0.6), c)
		return s.Shows()
	})
	if want := deep*squeeze*12/50 + width/2; !(math.Abs(got-want) <= 1e-4) {
		t.Errorf("the flag shows to %.5f m aside, want %.5f", got, want)
	}
}

// What a thing takes of the frame is its solid section there, by closed forms for a flag and for a ball on the axis.
func TestSharesInClosedForm(t *testing.T) {
	for _, lens := range closed {
		c := camera(lens[0], lens[1], lens[2])
		area := lens[0] * lens[1] / (lens[2] * lens[2]) // of the frame at 1 m
		const width, height, radius, deep = 0.2, 0.3, 0.25, 5.0
		s := judged(blackFlag(r3.Vec{X: 0.05, Y: deep, Z: 0.02}, width, height), c)
		if want := width * height / (deep * deep) / area; !(math.Abs(s.Share/want-1) <= 1e-6) {
			t.Errorf("lens %v: the flag takes %.6f, want %.6f", lens, s.Share, want)
		}
		s = judged(ball(r3.Vec{Y: deep}, radius), c)
		if want := math.Pi * radius * radius / (deep*deep - radius*radius) / area; !(math.Abs(s.Share/want-1) <= 1e-3) {
			t.Errorf("lens %v: the ball takes %.6f, want %.6f", lens, s.Share, want)
		}
	}
}

// A ball that a block holds but for a cap of height h shows from over it the circle that the block cuts it at: a cut
// at h under the top has the radius sqrt(h (2r - h)).
func TestACapOfABallInClosedForm(t *testing.T) {
	const radius, deep = 0.3, 4.0
	c := camera(24.89, 14, 35)
	c.Frame.At, c.Frame.Axis, c.Frame.Right = r3.Vec{Z: lensHeight + deep}, r3.Vec{Z: -1}, r3.Vec{X: 1}
	area := 24.89 * 14 / (35 * 35) // of the frame at 1 m
	for _, cap := range []float64{0.02, 0.1, 0.2} {
		s := ball(r3.Vec{}, radius)
		top := lensHeight + radius - cap
		s.Set.Prisms = []solid.Prism{{ID: 1, Name: "block", Base: []r2.Vec{{X: -1, Y: -1}, {X: 1, Y: -1}, {X: 1, Y: 1}, {X: -1, Y: 1}}, Z0: 0, Z1: top}}
		got := judged(s, c)
		far := lensHeight + deep - top
		if want := math.Pi * cap * (2*radius - cap) / (far * far) / area; !(math.Abs(got.Share/want-1) <= 0.02) {
			t.Errorf("a cap of %.2f m takes %.6f, want %.6f", cap, got.Share, want)
		}
	}
}

// By how much a flag misses the frame is how far its near edge lies outside, by the frame's width there.
func TestHowFarOutsideInClosedForm(t *testing.T) {
	c := camera(24.89, 14, 35)
	const width, deep, x = 0.4, 3.0, 2.0
	wide := deep * 24.89 / 35
	s := judged(blackFlag(r3.Vec{X: x, Y: deep}, width, 0.6), c)
	if want := (x - width/2 - wide/2) / wide; !(math.Abs(s.Outside-want) <= 1e-5) || s.Shows() {
		t.Errorf("the flag is %.6f of the frame's width outside, want %.6f", s.Outside, want)
	}
	degrees := func(tangent float64) float64 { return math.Atan(tangent) * 180 / math.Pi }
	if want := degrees((x-width/2)/deep) - c.HAOV/2; !(math.Abs(s.Degrees-want) <= 1e-3) {
		t.Errorf("the flag is %.4f° past the right edge, want %.4f°", s.Degrees, want)
	}
	const low = -1.6
	if s, want := judged(blackFlag(r3.Vec{Y: deep, Z: low}, width, 0.6), c), degrees((-low-0.3)/deep)-degrees(7.0/35); !(math.Abs(s.Degrees-want) <= 1e-3) {
		t.Errorf("the flag is %.4f° past the bottom edge, want %.4f°", s.Degrees, want)
	}
	if s := judged(blackFlag(r3.Vec{Y: deep}, width, 0.6), c); s.Degrees != 0 {
		t.Errorf("a flag in the frame is %.4f° outside", s.Degrees)
	}
	if s := judged(blackFlag(r3.Vec{Y: -2}, width, 0.6), c); !math.IsInf(s.Outside, 1) || s.Shows() {
		t.Errorf("a flag behind the camera is %.3f outside", s.Outside)
	}
	c.Room = s.Outside + 1e-4
	if s := judged(blackFlag(r3.Vec{X: x, Y: deep}, width, 0.6), c); !s.Near(&c) || s.Move == nil || s.Pan == nil {
		t.Error("a flag just within the margin is not in it, or nothing takes it out")
	}
	c.Room = s.Outside - 1e-4
	if s := judged(blackFlag(r3.Vec{X: x, Y: deep}, width, 0.6), c); s.Near(&c) || s.Move != nil {
		t.Error("a flag just past the margin is in it")
	}
}

// The least move takes the near edge of a flag to the edge of the frame, and the least pan the tangent of a ball to it. Both are
// rounded up.
func TestMovesInClosedForm(t *testing.T) {
	c := camera(24.89, 14, 35)
	const width, deep, x = 0.4, 3.0, 1.1
	s := judged(blackFlag(r3.Vec{X: x, Y: deep}, width, 3), c)
	if want := deep*24.89/2/35 + width/2 - x; s.Move == nil || s.Move.Way != frame.Right || !(math.Abs(s.Move.Least-want) <= 1e-4) || s.Move.Metres < want || s.Move.Metres > want+0.01 {
		t.Errorf("moved %+v, want %.4f m to the right", s.Move, want)
	}
	const radius, aside = 0.3, -1.2
	s = judged(ball(r3.Vec{X: aside, Y: deep}, radius), c)
	bearing, far := math.Atan2(-aside, deep), math.Hypot(aside, deep)
	want := c.HAOV/2 + (math.Asin(radius/far)-bearing)*180/math.Pi
	if s.Pan == nil || !(math.Abs(s.Pan.Least-want) <= 0.02) || s.Pan.Degrees < want || s.Pan.Degrees > want+0.52 {
		t.Errorf("panned %+v, want %.3f° to the right", s.Pan, want)
	}
}
