package formfactor_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/internal/reference"
	"scrimshaw/plan/photometry/formfactor"
)

// The dome before the middle of a disc, from afar to a hundredth of the radius: the solid angle on the axis is
// 2 pi (1 - h/sqrt(h²+r²)) and the light vector pi r²/(h²+r²), whatever way the disc faces.
func TestDomeBeforeADisc(t *testing.T) {
	for _, normal := range []r3.Vec{{X: 1}, {X: -1}, {Y: 1}, {Y: -1}, {Z: 1}, {Z: -1}, {X: 0.6, Y: 0.8}, {X: 0.8, Z: -0.6}} {
		for _, h := range []float64{100, 3, 1, 0.3, 0.1, 0.03, 0.01} {
			const radius = 0.7
			c := formfactor.Circle{Centre: r3.Vec{X: 1, Y: 2, Z: 3}, Normal: normal, Radius: radius}
			at := r3.Add(c.Centre, r3.Scale(h, normal))
			square := h*h + radius*radius
			angle := 2 * math.Pi * radius * radius / (square + h*math.Sqrt(square))
			vector := math.Pi * radius * radius / square
			what := fmt.Sprintf("toward %v from %g m", normal, h)
			within(t, what, formfactor.DiscDome(c, at, r3.Scale(-1, normal)), (angle+vector)/2, 1e-10)
			within(t, what+", turned away", formfactor.DiscDome(c, at, normal), (angle-vector)/2, 1e-6)
			within(t, what+", flat", formfactor.Disc(c, at, r3.Scale(-1, normal)), vector, 1e-12)
		}
	}
}

// Over the rim of a disc its solid angle is pi - 2 h/m K(k) with m² = h² + 4 r² and the complement of k being h/m
// (Paxton 1959, Rev. Sci. Instrum. 30:254): K by the mean of Gauss. Two domes back to back take it whole.
func TestSolidAngleOverTheRimOfADisc(t *testing.T) {
	mean := func(a, b float64) float64 {
		for range 40 {
			a, b = (a+b)/2, math.Sqrt(a*b)
		}
		return a
	}
	for _, h := range []float64{5, 1, 0.2, 0.05, 0.02} {
		const radius = 1.0
		c := formfactor.Circle{Normal: r3.Vec{Z: 1}, Radius: radius}
		far := math.Sqrt(h*h + 4*radius*radius)
		want := math.Pi - math.Pi*h/far/mean(1, h/far)
		at := r3.Vec{X: 0.6 * radius, Y: 0.8 * radius, Z: h}
		for _, axis := range []r3.Vec{{X: 1}, {Y: 1}, {Z: 1}, {X: 0.6, Z: 0.8}} {
			got := formfactor.DiscDome(c, at, axis) + formfactor.DiscDome(c, at, r3.Scale(-1, axis))
			within(t, fmt.Sprintf("%g m over the rim", h), got, want, 1e-9)
		}
	}
}

// A line through the receptor's plane gives what its part before the plane gives, whichever end comes first.
func TestLineThroughTheReceptorsPlane(t *testing.T) {
	r := rand.New(rand.NewPCG(31, 7))
	cut := 0
	for range 300 {
		a, b, at, axis := vector(r, 1), vector(r, 1), vector(r, 1), r3.Unit(vector(r, 1))
		ha, hb := r3.Dot(r3.Sub(a, at), axis), r3.Dot(r3.Sub(b, at), axis)
		if ha*hb >= 0 {
			continue
		}
		cut++
		above, crossing := a, r3.Add(a, r3.Scale(ha/(ha-hb), r3.Sub(b, a)))
		if hb > 0 {
			above = b
		}
		want := formfactor.Line(above, crossing, at, axis)
		for _, ends := range [][2]r3.Vec{{a, b}, {b, a}} {
			if got := formfactor.Line(ends[0], ends[1], at, axis); !(math.Abs(got-want) <= 1e-9*math.Max(want, 1)) {
				t.Errorf("from %v to %v at %v toward %v: %.12g, its part before the plane %.12g", ends[0], ends[1], at, axis, got, want)
			}
		}
		flat, dome := sumLine(a, b, at, axis)
		agree(t, "line through the plane", formfactor.Line(a, b, at, axis), flat)
		agree(t, "line through the plane, dome", formfactor.LineDome(b, a, at, axis), dome)
	}
	if cut < 100 {
		t.Errorf("%d of 300 lines cross the plane: the test says little", cut)
	}
}

// A sphere on the horizon, half above it, gives asin s - s sqrt(1-s²) with s = r/d; one cut anywhere else what a sum
// over its part of the sky gives; where the horizon only touches it the two formulas meet, and below it gives nothing.
func TestSphereOnTheHorizon(t *testing.T) {
	for _, s := range []float64{0.01, 0.2, 0.6, 0.95} {
		got := formfactor.Sphere(r3.Vec{X: 2}, 2*s, r3.Vec{}, up)
		within(t, fmt.Sprint("half a sphere of ", s), got, math.Asin(s)-s*math.Sqrt(1-s*s), 1e-9)
	}
	for _, s := range []float64{0.3, 0.8} {
		half := math.Asin(s)
		for _, share := range []float64{-1.2, -0.999999, -0.7, -0.2, 0.3, 0.8, 0.999999, 1.2} {
			elevation := share * half
			centre := r3.Vec{X: 3 * math.Cos(elevation) * 0.6, Y: 3 * math.Cos(elevation) * 0.8, Z: 3 * math.Sin(elevation)}
			got := formfactor.Sphere(centre, 3*s, r3.Vec{}, up)
			flat, _ := sumCap(centre, 3*s, r3.Vec{}, up)
			agree(t, fmt.Sprintf("a sphere of %g, %g of it above the horizon", s, share), got, flat)
			whole := math.Pi * s * s * math.Sin(elevation)
			if share == 0.999999 {
				within(t, "a sphere that touches the horizon", got, whole, 1e-6)
			}
			if share < -1 && got != 0 {
				t.Errorf("a sphere below the horizon gives %g", got)
			}
		}
	}
	if got := formfactor.SphereDome(r3.Vec{Z: 2}, 2, r3.Vec{}, up); got != 0 {
		t.Errorf("a dome on a sphere reads %g", got)
	}
}

// A corner given twice is one corner.
func TestExchangeWithADoubleCorner(t *testing.T) {
	a, b := face(0, 1, 0, 1, 1), face(0, 2, 0, 1, 0)
	for i, j := 0, len(b)-1; i < j; i, j = i+1, j-1 {
		b[i], b[j] = b[j], b[i] // it shines up
	}
	want := reference.Exchange(a, b)
	for i := range b {
		double := append(append(append([]r3.Vec{}, b[:i+1]...), b[i]), b[i+1:]...)
		within(t, "the second doubled", reference.Exchange(a, double), want, 1e-12)
	}
	for i := range a {
		double := append(append(append([]r3.Vec{}, a[:i+1]...), a[i]), a[i+1:]...)
		within(t, "the first doubled", reference.Exchange(double, b), want, 1e-12)
	}
}

// A receptor that shares the plane of a source, or lies on a line's course, has nothing from it, as a flat one or a dome.
func TestInThePlaneOfTheSource(t *testing.T) {
	lamp := face(-1, 1, -1, 1, 2)
	disc := formfactor.Circle{Centre: r3.Vec{Z: 2}, Normal: r3.Vec{Z: -1}, Radius: 1}
	for _, at := range []r3.Vec{{X: 3, Z: 2}, {X: -0.2, Y: 5, Z: 2}} {
		for _, axis := range []r3.Vec{up, {X: 1}, r3.Unit(r3.Vec{X: -1, Y: -2, Z: 1})} {
			for what, got := range map[string]float64{
				"a face": formfactor.Polygon(lamp, at, axis), "a face to a dome": formfactor.PolygonDome(lamp, at, axis),
				"a disc": formfactor.Disc(disc, at, axis), "a disc to a dome": formfactor.DiscDome(disc, at, axis),
			} {
				if got != 0 {
					t.Errorf("%s in its plane at %v: %g", what, at, got)
				}
			}
		}
	}
	for what, got := range map[string]float64{
		"a dome on a line's course":           formfactor.LineDome(r3.Vec{Z: 2}, r3.Vec{Z: 3}, r3.Vec{}, up),
		"a dome before no line":               formfactor.LineDome(r3.Vec{Z: 2}, r3.Vec{Z: 2}, r3.Vec{}, up),
		"a line overhead, looking away":       formfactor.Line(r3.Vec{X: -1, Z: 2}, r3.Vec{X: 1, Z: 2}, r3.Vec{}, r3.Vec{Z: -1}),
		"a line in the plane of the receptor": formfactor.Line(r3.Vec{X: -1, Y: 2}, r3.Vec{X: 1, Y: 2}, r3.Vec{}, up),
		"a line that ends in the plane":       formfactor.Line(r3.Vec{X: 1}, r3.Vec{X: 1, Z: -2}, r3.Vec{}, up),
		"a line wholly behind, turned":        formfactor.Line(r3.Vec{X: 1, Z: -1}, r3.Vec{X: 2, Z: -3}, r3.Vec{}, up),
		"a line wholly behind, turned back":   formfactor.Line(r3.Vec{X: 2, Z: -3}, r3.Vec{X: 1, Z: -1}, r3.Vec{}, up),
	} {
		if got != 0 {
			t.Errorf("%s: %g, want 0", what, got)
		}
	}
}
