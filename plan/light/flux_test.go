package light

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/photometry"
	"scrimshaw/plan/solid"
)

// overOpening sums light over the places of an opening one by one, lx: I cos t/d² of each.
func overOpening(e *Emitter, r *Receptor) (lux float64) {
	const n = 40
	o := e.Source.Opening
	add := func(x, y, weight float64) {
		from := r3.Add(e.Frame.At, r3.Add(r3.Scale(x, e.Frame.Right), r3.Scale(y, e.Frame.Up())))
		way := r3.Sub(r.At, from)
		far := r3.Norm(way)
		way = r3.Scale(1/far, way)
		lux += weight * e.Source.Intensity(e.Frame.Local(way)) * math.Max(0, -r3.Dot(way, r.Axis)) / (far * far)
	}
	for i := range n {
		u := (float64(i) + 0.5) / n
		switch o.Form {
		case photometry.Rectangle:
			for k := range n {
				add(o.Width*(u-0.5), o.Height*((float64(k)+0.5)/n-0.5), 1.0/(n*n))
			}
		case photometry.Disc:
			for k := range n {
				sin, cos := math.Sincos(2 * math.Pi * (float64(k) + 0.5) / n)
				rho := o.Width / 2 * math.Sqrt(u) // rings of even area
				add(rho*cos, rho*sin, 1.0/(n*n))
			}
		case photometry.Tube:
			add(o.Width*(u-0.5), 0, 1.0/n)
		}
	}
	return lux
}

// What a whole opening gives to a place on a surface is the sum over the opening to within half a percent, from close by to far away. Behind
// a grid it is to within three percent near by; farther off four places stand for the opening, and the kinks of the grid put single places
// off by more, but the light on a surface about the axis by no more than one and a half.
func TestWholeOpeningsOnSurfaces(t *testing.T) {
	rectangle, disc, tube := face(0.6, 0.4), photometry.Opening{Form: photometry.Disc, Width: 0.5}, photometry.Opening{Form: photometry.Tube, Width: 1.2, Height: 0.03}
	grid, _ := photometry.NewGrid(photometry.Cosine{}, 70, 50)
	w := build(t, &solid.Set{}, Options{})
	for name, c := range map[string]struct {
		d photometry.Distribution
		o photometry.Opening
	}{
		"cosine": {photometry.Cosine{}, rectangle}, "lobe": {photometry.NewFaceLobe(60, 100), rectangle}, "grid": {grid, rectangle}, "lobe of a disc": {photometry.NewFaceLobe(50, 80), disc},
		"disc": {photometry.Cosine{}, disc}, "tube": {photometry.TubeCosine{}, tube},
	} {
		e := Emitter{Name: name, Frame: down(3), Source: photometry.Source{Flux: 1000, Distribution: c.d, Opening: c.o}}
		b := w.newSurfaceLamp(newLamp(&e, w.faces, w.tubes, w.bundle))
		for _, sizes := range []float64{0.5, 1.1, 2.1, 2.9, 3.1, 8} {
			far := sizes * c.o.Largest()
			at := func(x, y float64) *Receptor { // by the distance, on a tilted surface that far below
				return &Receptor{At: r3.Vec{X: far * x, Y: far * y, Z: 3 - far*(1-0.2*x-0.1*y)}, Axis: r3.Unit(r3.Vec{X: -0.2, Y: -0.1, Z: 1})}
			}
			tolerance, ofAll := 0.005, 0.005
			if name == "grid" {
				tolerance, ofAll = 0.03, 0.015
			}
			var sum, all float64
			for x := -0.3; x < 0.31; x += 0.15 {
				for y := -0.2; y < 0.21; y += 0.1 {
					got, want := b.whole(at(x, y)), overOpening(&e, at(x, y))
					sum, all = sum+got, all+want
					if (name != "grid" || sizes < 3) && math.Abs(got/want-1) > tolerance {
						t.Errorf("%s at %g sizes, (%.2f, %.2f): %.5g lx, want %.5g", name, sizes, x, y, got, want)
					}
				}
			}
			if !(math.Abs(sum/all-1) <= ofAll) {
				t.Errorf("%s at %g sizes: %.5g of the light on a surface", name, sizes, sum/all)
			}
		}
	}
}

// asked counts how often its intensity is asked for.
type asked struct {
	photometry.Distribution
	times *int
}

func (a asked) Candela(dir r3.Vec) float64 { *a.times++; return a.Distribution.Candela(dir) }

// From three sizes on the fewest places stand for an opening, nearer more, and within its own size a rule that is as close as asked.
func TestHowManyPlacesStandForAnOpening(t *testing.T) {
	w := build(t, &solid.Set{}, Options{})
	for _, c := range []struct {
		o   photometry.Opening
		far int
	}{
		{face(0.6, 0.4), 4}, {face(3, 2), 4}, {photometry.Opening{Form: photometry.Tube, Width: 1.2, Height: 0.03}, 2},
	} {
		times := 0
		e := Emitter{Name: "a", Frame: down(3), Source: photometry.Source{Flux: 1000, Distribution: asked{photometry.NewFaceLobe(60, 100), &times}, Opening: c.o}}
		b := w.newSurfaceLamp(newLamp(&e, w.faces, w.tubes, w.bundle))
		size := c.o.Largest()
		for _, far := range []float64{3.01, 8} {
			times = 0
			if b.whole(&Receptor{At: r3.Vec{Z: 3 - far*size}, Axis: up}); times != c.far {
				t.Errorf("%g sizes off %d places of %+v are asked, want %d", far, times, c.o, c.far)
			}
		}
		for _, far := range []float64{1.01, 2.99} {
			times = 0
			if b.whole(&Receptor{At: r3.Vec{Z: 3 - far*size}, Axis: up}); times != len(b.coarse) || times <= c.far {
				t.Errorf("%g sizes off %d places of %+v are asked, want %d", far, times, c.o, len(b.coarse))
			}
		}
		times = 0
		if b.whole(&Receptor{At: r3.Vec{Z: 3 - 0.99*size}, Axis: up}); times < len(b.coarse) {
			t.Errorf("close by %d places of %+v are asked", times, c.o)
		}
	}
}

// The light of a grid ends at the tangent of its cut-off, and that of a cosine nowhere before the plane of its face.
func TestWhereLightEndsInAHalfPlane(t *testing.T) {
	grid, _ := photometry.NewGrid(photometry.Cosine{}, 70, 50)
	cells, _ := photometry.NewHoneycomb(photometry.Cosine{}, 60)
	for _, c := range []struct {
		d                 photometry.Distribution
		degrees, tangents float64
	}{
		{grid, 0, math.Tan(35 * radian)}, {grid, 90, math.Tan(25 * radian)}, {grid, 180, math.Tan(35 * radian)}, {cells, 30, math.Tan(30 * radian)}, {photometry.Cosine{}, 40, math.Inf(1)}, {photometry.Uniform{}, 0, math.Inf(1)},
	} {
		sin, cos := math.Sincos(c.degrees * radian)
		if got := lastTangent(c.d, cos, sin); got != c.tangents && !(math.Abs(got-c.tangents) < 1e-6) {
			t.Errorf("%T ends at %g toward %g degrees, want %g", c.d, got, c.degrees, c.tangents)
		}
	}
}

// A place lies within a shade between its openings, and nearer to the axis than the side, which goes straight from rim to rim.
func TestPlacesWithinAShade(t *testing.T) {
	s := shadeLamp{at: r3.Vec{X: 1, Z: 2}, axis: r3.Vec{Z: 1}, half: 0.1, low: 0.17, high: 0.07}
	for _, c := range []struct {
		over, aside float64
		within      bool
	}{
		{0, 0.119, true}, {0, 0.121, false}, {0.05, 0.094, true}, {0.05, 0.096, false}, {-0.099, 0.169, true}, {-0.099, 0.1705, false}, {0.099, 0.07, true}, {0.101, 0, false}, {-0.101, 0, false}, {-0.05, -0.144, true},
	} {
		if got := s.holds(r3.Vec{X: 1, Y: c.aside, Z: 2 + c.over}); got != c.within {
			t.Errorf("%g over the middle, %g aside: within %v", c.over, c.aside, got)
		}
	}
}

// A part of an opening is summed by three places where it is half as long as far, at most, and else by seven in each of the pieces that are as long as far;
// a side has four of them at most.
func TestHowManyPlacesStandForAPart(t *testing.T) {
	times := 0
	e := Emitter{Name: "a", Frame: down(3), Source: photometry.Source{Flux: 1000, Distribution: asked{photometry.NewFaceLobe(60, 100), &times}, Opening: face(4, 4)}}
	l := newLamp(&e, 1, 1, 1)
	v := newVisibleSums(solid.NewBVH(&solid.Set{}))
	for _, near := range []float64{0.25, 0.5} {
		for _, c := range []struct {
			longest float64 // by the distance
			places  int
		}{{0.4, 3}, {0.49, 3}, {0.51, 7}, {0.9, 7}, {1.5, 4 * 7}, {2.5, 9 * 7}, {3.5, 16 * 7}, {5, 16 * 7}} {
			side := c.longest * near / math.Sqrt2
			times = 0
			got := v.rough(l, &Receptor{At: r3.Vec{Z: 3 - near}, Axis: up}, []r3.Vec{{Z: 3}, {X: side, Z: 3}, {Y: side, Z: 3}}, fewPlaces)
			if times != c.places {
				t.Errorf("of a part %g times as long as %g m %d places are asked, want %d", c.longest, near, times, c.places)
			}
			want := 0.0
			const n = 100
			for k := range n * n {
				from, turn := (float64(k%n)+0.5)/n, (float64(k/n)+0.5)/n // strips along the longest side, and along each
				x, y := side*from*(1-turn), side*from*turn
				far := math.Sqrt(x*x + y*y + near*near)
				cd := e.Source.Intensity(e.Frame.Local(r3.Vec{X: -x / far, Y: -y / far, Z: -near / far}))
				want += cd / 16 * near / (far * far * far) * side * side * from / (n * n)
			}
			if !(math.Abs(got/want-1) <= 0.03) {
				t.Errorf("a part %g times as long as %g m gives %.5g lx, want %.5g", c.longest, near, got, want)
			}
		}
	}
}

// The short rules agree with the whole: 2.99 sizes off the longer one is asked, 3.01 off the shorter, whatever the size.
func TestShortRulesByDistance(t *testing.T) {
	w := build(t, &solid.Set{}, Options{})
	for _, size := range []float64{0.2, 1, 4} {
		e := Emitter{Name: "a", Frame: down(3), Source: photometry.Source{Flux: 1000, Distribution: photometry.NewFaceLobe(60, 100), Opening: face(size, size/2)}}
		b := w.newSurfaceLamp(newLamp(&e, w.faces, w.tubes, w.bundle))
		for _, c := range []struct {
			far  float64
			rule []node
		}{{1.01, b.coarse}, {2.99, b.coarse}, {3.01, b.distant}, {30, b.distant}} {
			r := &Receptor{At: r3.Vec{X: size * c.far * 0.6, Z: 3 - size*c.far*0.8}, Axis: up}
			want := 0.0
			for i := range c.rule {
				want += c.rule[i].weight * b.l.fromPoint(c.rule[i].at, r)
			}
			close(t, "light", b.whole(r)/want, 1, 1e-12)
		}
	}
}
