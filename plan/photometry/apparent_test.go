package photometry

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// A rectangle a by b seen from d before its middle has the solid angle 4 asin(a b / sqrt((4 d² + a²)(4 d² + b²))), a pyramid's.
func TestSolidAngleOfARectangle(t *testing.T) {
	for _, c := range [][3]float64{{1, 1, 1}, {0.4, 2, 0.3}, {3, 3, 0.05}, {0.01, 0.02, 5}} {
		a, b, d := c[0], c[1], c[2]
		figure := []r3.Vec{{X: -a / 2, Y: -b / 2, Z: d}, {X: a / 2, Y: -b / 2, Z: d}, {X: a / 2, Y: b / 2, Z: d}, {X: -a / 2, Y: b / 2, Z: d}}
		want := 4 * math.Asin(a*b/math.Sqrt((4*d*d+a*a)*(4*d*d+b*b)))
		if got := SolidAngle(r3.Vec{}, figure); !(math.Abs(got/want-1) <= 1e-9) {
			t.Errorf("%v: %.9g sr, want %.9g", c, got, want)
		}
	}
}

// The faces of a box fill the sphere about any place within it; from outside they are seen twice over or not at all.
func TestSolidAnglesOfABoxFillTheSphere(t *testing.T) {
	at := func(x, y, z float64) r3.Vec { return r3.Vec{X: x, Y: y, Z: z} }
	faces := [][]r3.Vec{
		{at(0, 0, 0), at(1, 0, 0), at(1, 2, 0), at(0, 2, 0)}, {at(0, 0, 3), at(1, 0, 3), at(1, 2, 3), at(0, 2, 3)},
		{at(0, 0, 0), at(1, 0, 0), at(1, 0, 3), at(0, 0, 3)}, {at(0, 2, 0), at(1, 2, 0), at(1, 2, 3), at(0, 2, 3)},
		{at(0, 0, 0), at(0, 2, 0), at(0, 2, 3), at(0, 0, 3)}, {at(1, 0, 0), at(1, 2, 0), at(1, 2, 3), at(1, 0, 3)},
	}
	sum := 0.0
	for _, f := range faces {
		sum += SolidAngle(at(0.3, 1.7, 0.4), f)
	}
	if !(math.Abs(sum-4*math.Pi) <= 1e-9) {
		t.Errorf("%.9f sr, want 4 pi", sum)
	}
	if got := SolidAngle(at(5, 1, 0), faces[0]); got != 0 {
		t.Errorf("%g sr from its own plane", got)
	}
}

// A sphere of 30° half angle is 60° wide, and a cone's solid angle gives back its angle; within it, it is all round.
func TestApparentWidth(t *testing.T) {
	if got := ApparentWidth(SphereSolidAngle(1, 2)); !(math.Abs(got-60) <= 1e-9) {
		t.Errorf("%g°, want 60", got)
	}
	if got := ApparentWidth(SphereSolidAngle(1, 0.5)); got != 360 {
		t.Errorf("%g° from within, want 360", got)
	}
	if got := ApparentWidth(0); got != 0 {
		t.Errorf("%g° of nothing", got)
	}
}
