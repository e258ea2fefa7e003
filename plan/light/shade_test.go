package light

import (
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/light/receptor"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/solid"
)

// shaded is a lamp of 1000 lm in a shade.
func shaded(at r3.Vec, form photometry.ShadeForm) Emitter {
	d, share := photometry.NewShade(form)
	return Emitter{Name: "a", Frame: looking(at, r3.Add(at, r3.Vec{Z: 1})), Source: photometry.Source{
		Flux: 1000 * share, Distribution: d, Opening: photometry.Opening{Form: photometry.Lampshade, Width: max(form.Top, form.Bottom), Height: form.Height},
	}}
}

var (
	taper = photometry.ShadeForm{Top: 0.2, Bottom: 0.3, Height: 0.22, Bulb: 0.06, Transmittance: 0.33, Reflectance: 0.5}
	drum  = photometry.ShadeForm{Top: 0.4, Bottom: 0.4, Height: 0.25, Bulb: 0.06, Transmittance: 0.33, Reflectance: 0.5}
)

// From afar the figures of a shade, whether they are looked at closely or not, give what its intensity does; and in all
// directions together they send out its flux.
func TestShadeFromAfar(t *testing.T) {
	for name, form := range map[string]photometry.ShadeForm{"taper": taper, "drum": drum} {
		e := shaded(r3.Vec{X: 1, Y: 2, Z: 3}, form)
		l := newLamp(&e, 1, 1, 1)
		for _, facets := range []*shadeFacets{&l.shade.fine, &l.shade.rough} {
			for degrees := 2.5; degrees < 180; degrees += 5 {
				sin, cos := math.Sincos(degrees * radian)
				turn, side := math.Sincos(degrees)
				d := r3.Vec{X: sin * side, Y: sin * turn, Z: cos}
				const far = 200
				r := Receptor{At: r3.Add(l.at, r3.Scale(far, d)), Axis: r3.Scale(-1, d)}
				var v shadeView
				got := 0.0
				for _, g := range v.from(l.shade, facets, r.At) {
					got += g.light(g.corners, &r)
				}
				want := l.intensity(d) / far / far
				off := 0.01
				if facets == &l.shade.rough {
					off = 0.03 // pairs of bands are one
				}
				if !(math.Abs(got-want) <= off*want) {
					t.Errorf("%s of %d bands at %g°: %g lx, want %g", name, len(facets.bands), degrees, got, want)
				}
			}
		}
	}
}

// Near a shade its figures send out as much as from afar: what falls on a box close around it is its flux.
func TestShadeCloseBy(t *testing.T) {
	t.Parallel()
	for name, form := range map[string]photometry.ShadeForm{"taper": taper, "drum": drum} {
		e := shaded(r3.Vec{X: 0.5, Y: 0.5, Z: 0.5}, form)
		l := newLamp(&e, 1, 1, 1)
		for _, quick := range []bool{false, true} {
			tr := tracer{visibleSums: newVisibleSums(solid.NewBVH(&solid.Set{})), quick: quick}
			const n = 48
			sum := 0.0
			for side := range 6 {
				axis, u, v := side/2, (side/2+1)%3, (side/2+2)%3
				for cell := range n * n {
					var p, in [3]float64
					p[axis], in[axis] = float64(side%2), 1-2*float64(side%2)
					p[u], p[v] = (float64(cell%n)+0.5)/n, (float64(cell/n)+0.5)/n
					r := Receptor{At: r3.Vec{X: p[0], Y: p[1], Z: p[2]}, Axis: r3.Vec{X: in[0], Y: in[1], Z: in[2]}}
					sum += tr.total(l, &r).Y() / n / n
				}
			}
			if want := e.Source.Flux; !(math.Abs(sum/want-1) <= 5e-3) {
				t.Errorf("%s, quickly %v: %g lm fall on the box, want %g", name, quick, sum, want)
			}
		}
	}
}

// On a lattice a shade gives what receptors get, to a few per cent close by.
func TestShadeOnALattice(t *testing.T) {
	e := shaded(r3.Vec{X: 1, Y: 1, Z: 0.45}, taper)
	s := &solid.Set{Sheets: []solid.Sheet{{ID: 7, Name: "flag", Corners: []r3.Vec{{X: 1.5, Y: 0.6, Z: 0.1}, {X: 1.5, Y: 1.3, Z: 0.1}, {X: 1.5, Y: 1.3, Z: 0.6}, {X: 1.5, Y: 0.6, Z: 0.6}}}}}
	floor := floorAt(-1, -1, 0, 4, 15)
	to := Targets{Lattices: []Lattice{floor}}
	for n := range floor.NU * floor.NV {
		to.Points = append(to.Points, floor.Receptor(n%floor.NU, n/floor.NU))
	}
	b := basis(t, build(t, s, Options{}), []Emitter{e}, to)
	field := make([]float32, floor.NU*floor.NV)
	b.Field(0, Levels{"a": {1, 1, 1}}, field)
	hidden := 0
	for n, lux := range field {
		total, _ := b.Point(n, Levels{"a": {1, 1, 1}})
		want := total.Y()
		if want == 0 {
			hidden++
		}
		if !(math.Abs(float64(lux)-want) <= 0.03*want+0.05) {
			t.Errorf("point %d: %g lx on the lattice, %g at a receptor", n, lux, want)
		}
	}
	if hidden == 0 || hidden > len(field)/2 {
		t.Errorf("the flag hides %d of %d points", hidden, len(field))
	}
}

// A shade has no beam.
func TestShadeHasNoBeam(t *testing.T) {
	e := shaded(r3.Vec{Z: 1}, taper)
	if w := build(t, &solid.Set{}, Options{}).Wedge(&e, 0.5, Limits{Reach: 5}); w.Left != 180 || w.Right != 180 {
		t.Errorf("its beam ends %g° to the left and %g° to the right", w.Left, w.Right)
	}
}

// What stands in a shade, or in its rim's plane, reads light that is finite, and no less than nought; so does a dome.
func TestShadeFromOddPlaces(t *testing.T) {
	e := shaded(r3.Vec{}, taper)
	l := newLamp(&e, 1, 1, 1)
	tr := tracer{visibleSums: newVisibleSums(solid.NewBVH(&solid.Set{}))}
	for _, at := range []r3.Vec{{}, {X: 0.05, Z: 0.02}, {X: 0.05, Z: 0.11}, {X: 0.3, Z: -0.11}, {Z: 0.3}, {Z: -0.3}, {X: 0.125}, {X: 0.02}} {
		for _, response := range []receptor.Response{Cosine, Dome} {
			for _, axis := range []r3.Vec{{Z: 1}, {Z: -1}, {X: 1}, {X: -1}} {
				got := tr.total(l, &Receptor{At: at, Axis: axis, Response: response}).Y()
				if !(got >= 0 && got < 1e6) {
					t.Errorf("at %v toward %v: %g lx", at, axis, got)
				}
			}
		}
	}
	if inside := tr.total(l, &Receptor{At: r3.Vec{X: 0.08}, Axis: r3.Vec{X: -1}}).Y(); !(inside > 1000/(4*math.Pi*0.08*0.08)) {
		t.Errorf("beside the bulb: %g lx", inside)
	}
}

// All of a shade's light ends on the walls of a closed room, however often it is thrown back.
func TestShadeInAClosedRoom(t *testing.T) {
	t.Parallel()
	set := shell(3, 3, 2.4, colour.RGB{0.5, 0.5, 0.5})
	e := shaded(r3.Vec{X: 1.4, Y: 1.6, Z: 0.8}, taper)
	to := Targets{}
	const n = 8
	var areas []float64
	for _, s := range set.Sheets {
		u, v := r3.Sub(s.Corners[1], s.Corners[0]), r3.Sub(s.Corners[3], s.Corners[0])
		normal := r3.Unit(r3.Cross(u, v))
		for cell := range n * n {
			p := r3.Add(s.Corners[0], r3.Add(r3.Scale((float64(cell%n)+0.5)/n, u), r3.Scale((float64(cell/n)+0.5)/n, v)))
			to.Points = append(to.Points, Receptor{At: p, Axis: normal})
			areas = append(areas, r3.Norm(r3.Cross(u, v))/n/n)
		}
	}
	b := basis(t, build(t, set, Options{}), []Emitter{e}, to)
	sum := 0.0
	for i := range to.Points {
		_, shares := b.Point(i, Levels{"a": {1, 1, 1}})
		for k, share := range shares {
			if b.Terms[k].Path == Reflected {
				sum += share.Y() * areas[i]
			}
		}
	}
	if want := e.Source.Flux; !(math.Abs(sum/want-1) <= 0.02) {
		t.Errorf("%s come back, want %g lm", fmt.Sprint(sum), want)
	}
}

// A lamp in a shade of cloth has no beam, for its side shines; one in a shade of metal has that of its mouth.
func TestWedgesOfShades(t *testing.T) {
	w := build(t, &solid.Set{}, Options{})
	for transmittance, want := range map[float64]bool{0.33: false, 0: true} {
		form := taper
		form.Transmittance = transmittance
		e := shaded(r3.Vec{Z: 1}, form)
		e.Frame = looking(r3.Vec{Z: 1}, r3.Vec{X: 1, Z: 1})
		wedge := w.Wedge(&e, 0.5, Limits{Floor: -5, Reach: 10})
		if has := wedge.Left < 90 && wedge.Right < 90; has != want || has && (wedge.Left < 10 || math.Abs(wedge.Left-wedge.Right) > 1e-6) {
			t.Errorf("a side that passes %g: a beam of %g° and %g°", transmittance, wedge.Left, wedge.Right)
		}
	}
}

// The box of a shade holds all figures that it is seen as, from wherever that is: shadows are passed over by it.
func TestShadeFiguresLieInItsBox(t *testing.T) {
	tall := photometry.ShadeForm{Top: 0.07, Bottom: 0.08, Height: 0.07, Bulb: 0.06, Transmittance: 0.33, Reflectance: 0.5}
	for name, form := range map[string]photometry.ShadeForm{"taper": taper, "drum": drum, "little more than its bulb": tall} {
		e := shaded(r3.Vec{X: 1, Y: 2, Z: 3}, form)
		l := newLamp(&e, 1, 1, 1)
		s, half := l.shade, l.local(r3.Sub(l.shade.body[7], l.at))
		for n := range 2000 {
			sin, cos := math.Sincos(float64(n))
			from := r3.Add(s.at, r3.Scale(0.02+float64(n%50)/20, r3.Vec{X: sin * cos, Y: cos, Z: sin * math.Sin(0.37*float64(n))}))
			var v shadeView
			for _, g := range v.from(s, &s.rough, from) {
				for _, c := range g.corners {
					if at := l.local(r3.Sub(c, l.at)); !(math.Abs(at.X) <= half.X) || !(math.Abs(at.Y) <= half.Y) || !(math.Abs(at.Z) <= half.Z) {
						t.Fatalf("%s from %v: a corner lies %v off the middle, farther than %v", name, from, at, half)
					}
				}
			}
		}
	}
}
