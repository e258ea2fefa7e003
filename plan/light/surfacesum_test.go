package light

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/photometry"
)

// patchSum sums a function of places over figures, and counts how often it is asked.
func patchSum(s surfaceSum, f func(p r3.Vec) float64) (*surfaceSum, *int) {
	asked := 0
	s.light = func(r *Receptor) colour.RGB {
		asked++
		return colour.RGB{f(r.At), 2 * f(r.At), 0}
	}
	return &s, &asked
}

// A patch is summed in strips that are no longer than twice the grain, sixteen at most: by their middles where they are
// small against the distance of the lamp, and else by four places, which is exact for cubes.
func TestParallelogramsAreSummed(t *testing.T) {
	u, v := r3.Vec{X: 2, Y: 0.5}, r3.Vec{X: 0.25, Z: 1}
	from := r3.Vec{X: 1, Y: 2, Z: 3}
	f := []r3.Vec{from, r3.Add(from, u), r3.Add(from, r3.Add(u, v)), r3.Add(from, v)}
	area := r3.Norm(r3.Cross(u, v))
	along := func(p r3.Vec) (float64, float64) { // shares of the sides
		w := r3.Sub(p, from)
		return (w.X - 0.25*w.Z) / 2, w.Z
	}
	cubic := func(p r3.Vec) float64 { a, b := along(p); return 1 + a*a*a + 4*a*a*b*b + b*b*b }
	linear := func(p r3.Vec) float64 { a, b := along(p); return 3 + 2*a - b }
	const ofCubic, ofLinear = 1 + 1.0/4 + 4.0/9 + 1.0/4, 3 + 1 - 0.5
	for _, c := range []struct {
		sum   surfaceSum
		asked int
		of    func(r3.Vec) float64
		want  float64
	}{
		{surfaceSum{grain: 0.1, near: 100}, 11 * 6, linear, ofLinear}, // 2.06 m and 1.03 m in strips of 0.2 m
		{surfaceSum{grain: 0.1, near: 1}, 11 * 6 * 4, cubic, ofCubic},
		{surfaceSum{grain: 0.1, near: 100, closely: true}, 11 * 6 * 4, cubic, ofCubic},
		{surfaceSum{grain: 0.01, near: 100}, 16 * 16, linear, ofLinear},
		{surfaceSum{grain: 10, near: 100}, 1, linear, ofLinear},
		{surfaceSum{grain: 10, near: 10}, 4, cubic, ofCubic}, // one strip of 2.06 m: long against 10 m
		{surfaceSum{grain: 10, near: 20.7}, 1, linear, ofLinear},
	} {
		s, asked := patchSum(c.sum, c.of)
		s.parallelogram(f)
		if *asked != c.asked {
			t.Errorf("grain %g, near %g: asked at %d places, want %d", c.sum.grain, c.sum.near, *asked, c.asked)
		}
		close(t, "sum", s.sum[0]/area, c.want, 1e-12)
		close(t, "sum of the second channel", s.sum[1]/area, 2*c.want, 1e-12)
	}
}

// A triangle is summed by its middle, or by three places, which is exact for squares.
func TestTrianglesAreSummed(t *testing.T) {
	a, u, v := r3.Vec{X: 1, Y: 2, Z: 3}, r3.Vec{X: 2, Y: 0.5}, r3.Vec{X: 0.25, Z: 1}
	tri := triangle{a, r3.Add(a, u), r3.Add(a, v)}
	area := r3.Norm(r3.Cross(u, v)) / 2
	close(t, "area", tri.area(), area, 1e-12)
	longest := max(r3.Norm(u), r3.Norm(v), r3.Norm(r3.Sub(u, v)))
	close(t, "longest side", tri.longest(), longest, 1e-12)
	share := func(p r3.Vec) (float64, float64) { w := r3.Sub(p, a); return (w.X - 0.25*w.Z) / 2, w.Z }
	square := func(p r3.Vec) float64 { x, y := share(p); return 1 + x*x + 3*x*y + 2*y*y }
	linear := func(p r3.Vec) float64 { x, y := share(p); return 1 + 2*x - y }
	const ofSquare, ofLinear = 1 + 1.0/6 + 3.0/12 + 2.0/6, 1 + 2.0/3 - 1.0/3 // twice the integrals over the unit triangle
	for _, c := range []struct {
		near    float64
		closely bool
		asked   int
		of      func(r3.Vec) float64
		want    float64
	}{
		{10 * longest * 1.01, false, 1, linear, ofLinear}, {10 * longest * 0.99, false, 3, square, ofSquare}, {1000, true, 3, square, ofSquare},
	} {
		s, asked := patchSum(surfaceSum{grain: 1, near: c.near, closely: c.closely}, c.of)
		s.triangle(tri)
		if *asked != c.asked {
			t.Errorf("near %g: asked at %d places, want %d", c.near, *asked, c.asked)
		}
		close(t, "sum", s.sum[0]/area, c.want, 1e-12)
	}
	for _, times := range []int{1, 2, 3, 7} {
		s, asked := patchSum(surfaceSum{grain: 1, near: 1000}, linear)
		tri.split(times, s.triangle)
		close(t, "sum in parts", s.sum[0]/area, ofLinear, 1e-12)
		if *asked != times*times {
			t.Errorf("%d parts a side make %d triangles", times, *asked)
		}
	}
}

// The stated error of a reading adds its parts by their squares: those of straight and of reflected light by their shares,
// those of rays by light, each at its level, and all by the factor from illuminance to luminance.
func TestErrorAddsItsParts(t *testing.T) {
	white := func(v float64) colour.RGB { return colour.RGB{v, v, v} }
	b := &Basis{
		Lights: []string{"a", "b"},
		Terms:  []Term{{Light: "a", Path: Direct}, {Light: "a", Path: Reflected}, {Light: "b", Path: Direct}, {Light: "b", Path: Reflected}},
		Points: [][]colour.RGB{{white(0), white(100)}, {white(0), white(30)}, {white(0), white(50)}, {white(0), white(20)}},
		Gains:  []colour.RGB{white(1), white(0.5)},
		columns: []column{
			{rayError: []float64{0, 3}}, {rayError: []float64{0, 4}},
		},
		errorModel: errorModel{direct: 0.02, reflected: 0.1, rays: 2},
	}
	levels := Levels{"a": white(1), "b": white(0.5)}
	direct, reflected := 0.02*(100+0.5*50), 0.1*(30+0.5*20)
	rays := math.Hypot(2*3*1, 2*4*0.5)
	close(t, "error", b.Error(1, levels), 0.5*math.Sqrt(direct*direct+reflected*reflected+rays*rays), 1e-9)
	close(t, "error of nothing", b.Error(0, levels), 0, 1e-12)
}

// The short rule of a triangle of an opening agrees with the long one from where it stands for it: to one part in two hundred over parts that are
// as long as allowed, and to less of smaller ones.
func TestShortRuleOfAnOpening(t *testing.T) {
	e := Emitter{Name: "box", Frame: plan.Frame{At: r3.Vec{Z: 2}, Axis: r3.Vec{Z: -1}, Right: r3.Vec{X: 1}},
		Source: photometry.Source{Flux: 1000, Distribution: measured(t, 1, 0.8), Opening: photometry.Opening{Form: photometry.Rectangle, Width: 1, Height: 1}}}
	l := newLamp(&e, 1, 1, 1)
	for _, c := range []struct{ size, slack float64 }{{1, 0.02}, {0.5, 0.005}, {0.1, 0.0005}} {
		s := c.size * fewPlaces * 2 / math.Sqrt2 // the longest side is a share of the 2 m to the receptor
		for _, at := range []r3.Vec{{X: 0.1, Y: 0.1}, {X: 1.5, Y: -0.4}} {
			sum := cubature{l: l, r: &Receptor{At: at, Axis: r3.Vec{Z: 1}}}
			tri := triangle{{X: -0.3, Y: -0.3, Z: 2}, {X: -0.3 + s, Y: -0.3, Z: 2}, {X: -0.3, Y: -0.3 + s, Z: 2}}
			short, long := sum.short(&tri), sum.refine(&tri, sum.sum(&tri), 3)
			if !(math.Abs(short-long) <= c.slack*long) {
				t.Errorf("%.2f m at %v: %.6g by three places, %.6g by many", s, at, short, long)
			}
		}
	}
}
