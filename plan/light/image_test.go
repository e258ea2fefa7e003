package light

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/photometry"
	"scrimshaw/plan/solid"
)

// gated is a spot at a place that looks along x at a wall 3 m off, with cuts in its gate.
func gated(cuts ...photometry.Cut) Emitter {
	d, _ := photometry.NewGated(photometry.NewFlatField(30, 0.02), 30, photometry.Gate{Cuts: cuts, Blur: 0.02})
	return Emitter{Name: "a", Frame: looking(r3.Vec{Z: 1.5}, r3.Vec{X: 1, Z: 1.5}), Source: photometry.Source{Flux: 1000, Distribution: d}}
}

// The rim of an image on a wall is its circle, and straight where a cut lies, to 5 mm at 3 m; what a thing before the wall catches
// lies on that.
func TestRimsOfAnImage(t *testing.T) {
	radius := 3 * math.Tan(15*radian)
	set := &solid.Set{Prisms: []solid.Prism{{ID: 1, Base: box(3.1, 0, 0.2, 20, 0), Z1: 4}, {ID: 2, Base: box(2.75, 0, 0.5, 0.4, 0), Z1: 0.78}}}
	w := build(t, set, Options{})
	e := gated(photometry.Cut{Angle: 0, Depth: 0.3}, photometry.Cut{Angle: 90, Depth: 0.1})
	onWall, onTop := 0, 0
	for _, rim := range w.Rims(&e, 0.5, limits) {
		for _, p := range rim.Line {
			switch {
			case rim.On == 1:
				onWall++
				right, up := -p.Y, p.Z-1.5 // the lamp's right lies along -y
				out := max(up-0.4*radius, right-0.8*radius, math.Hypot(right, up)-radius)
				if !(math.Abs(out) <= 0.005) {
					t.Errorf("(%.3f, %.3f) lies %.4f m off the rim", right, up, out)
				}
			case rim.On == 2 && rim.Normal.Z > 0.9:
				onTop++
				close(t, "top", p.Z, 0.78, 1e-9)
			}
		}
	}
	if onWall < 25 || onTop < 3 {
		t.Errorf("%d places on the wall, %d on the top", onWall, onTop)
	}
}

// A wedge goes from cut to cut, and lies beside the axis where a cut goes past that; where the axis is cut away from above it is
// that of the light that is left.
func TestWedgeOfCuts(t *testing.T) {
	w := build(t, &solid.Set{}, Options{})
	angle := func(share float64) float64 { return math.Atan(share*math.Tan(15*radian)) / radian }
	for _, c := range []struct {
		cuts        []photometry.Cut
		left, right float64
	}{
		{[]photometry.Cut{{Angle: 90, Depth: 0.3}}, 15, angle(0.4)},
		{[]photometry.Cut{{Angle: 90, Depth: 0.7}}, 15, -angle(0.4)},
		{[]photometry.Cut{{Angle: 270, Depth: 0.6}, {Angle: 90, Depth: 0.1}}, -angle(0.2), angle(0.8)},
	} {
		e := gated(c.cuts...)
		got := w.Wedge(&e, 0.5, limits)
		close(t, "left", got.Left, c.left, 1e-2)
		close(t, "right", got.Right, c.right, 1e-2)
	}
	e := gated(photometry.Cut{Angle: 0, Depth: 0.75})
	if got := w.Wedge(&e, 0.5, limits); len(got.Outline) < 3 || got.Left < 9 || got.Right < 9 {
		t.Errorf("under a cut past the axis the wedge goes from %g to %g", got.Left, got.Right)
	}
}

// The rim of an image is the same directions whichever way one counts as right.
func TestAnImageInAnyTurn(t *testing.T) {
	e := gated(photometry.Cut{Angle: 0, Depth: 0.3}, photometry.Cut{Angle: 90, Depth: 0.1})
	l := newLamp(&e, 1, 1, 1)
	want := photometry.Outline(l.shape, 0.5)
	for _, degrees := range []float64{0, 30, 90, 200, -45} {
		sin, cos := math.Sincos(degrees * radian)
		m := newGateImage(l, r3.Add(r3.Scale(cos, l.right), r3.Scale(sin, l.up)), 0.5)
		if len(m.rim) != len(want) || m.isDark() {
			t.Fatalf("turned by %g the rim has %d places, want %d", degrees, len(m.rim), len(want))
		}
		for i, p := range m.rim {
			d := m.through(p)
			ahead := r3.Dot(d, l.axis)
			close(t, "right", r3.Dot(d, l.right)/ahead, want[i].X, 1e-12)
			close(t, "up", r3.Dot(d, l.up)/ahead, want[i].Y, 1e-12)
		}
	}
}

// In the open a wedge of an image has an arc at its far side: rays a degree apart or less.
func TestArcOfAnImage(t *testing.T) {
	e := gated(photometry.Cut{Angle: 90, Depth: 0.3})
	got := build(t, &solid.Set{}, Options{}).Wedge(&e, 0.5, limits)
	wide := got.Left + got.Right
	if want := 2 + int(math.Ceil(wide)); len(got.Outline) != want {
		t.Errorf("%g degrees have %d corners, want %d", wide, len(got.Outline), want)
	}
	for i, p := range got.Outline[1:] {
		close(t, "reach", r2.Norm(p), limits.Reach, 1e-9)
		if q := got.Outline[1:][max(i-1, 0)]; r2.Norm(r2.Sub(p, q)) > limits.Reach*1.05*radian {
			t.Errorf("from %v to %v is more than a degree", q, p)
		}
	}
}
