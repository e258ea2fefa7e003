package light

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/solid"
	"scrimshaw/testdata/published"
)

// facing down from a height, right to greater x.
func down(z float64) plan.Frame {
	return plan.Frame{At: r3.Vec{Z: z}, Axis: r3.Vec{Z: -1}, Right: r3.Vec{X: 1}}
}

var up = r3.Vec{Z: 1}

func face(w, h float64) photometry.Opening {
	return photometry.Opening{Form: photometry.Rectangle, Width: w, Height: h}
}

func label(row published.Row) string { return fmt.Sprint(row.Label, row.In) }

// A printed figure holds to half a unit of its last decimal.
func printed(t *testing.T, what string, got, want, unit float64) {
	t.Helper()
	if !(math.Abs(got-want) <= 0.51*unit) {
		t.Errorf("%s: %.8g, published %.8g", what, got, want)
	}
}

func TestPublishedPoints(t *testing.T) {
	row := published.Read(t, "distributions.txt", "point")[0]
	e := Emitter{Name: "a", Frame: down(row.In[1]), Source: photometry.FromCandela(row.In[0], photometry.Uniform{}, photometry.Opening{})}
	printed(t, label(row), lux(t, &solid.Set{}, e, Receptor{Axis: up}), row.Out[0], 1e-4)
	for _, row := range published.Read(t, "light.txt", "diffuse point") {
		e.Frame, e.Source = down(3), photometry.FromCandela(1000, photometry.Cosine{}, photometry.Opening{})
		at := r3.Vec{X: row.In[0], Y: row.In[1]}
		printed(t, label(row), lux(t, &solid.Set{}, e, Receptor{At: at, Axis: up}), row.Out[0], 1e-4)
	}
}

func TestPublishedFaces(t *testing.T) {
	empty := &solid.Set{}
	for _, row := range published.Read(t, "formfactor.txt", "disc") {
		disc := photometry.Opening{Form: photometry.Disc, Width: 2 * row.In[1]}
		e := Emitter{Name: "a", Frame: down(row.In[2]), Source: photometry.FromLuminance(row.In[0], disc)}
		printed(t, label(row), lux(t, empty, e, Receptor{Axis: up}), row.Out[0], 1e-6)
	}
	for _, row := range published.Read(t, "formfactor.txt", "corner") {
		a, b, d := row.In[0], row.In[1], row.In[2]
		e := Emitter{Name: "a", Frame: down(d), Source: photometry.FromLuminance(1, face(a, b))}
		e.Frame.At.X, e.Frame.At.Y = a/2, b/2
		printed(t, label(row), lux(t, empty, e, Receptor{Axis: up}), row.Out[0], 1e-10)
	}
	for _, row := range published.Read(t, "formfactor.txt", "centred") {
		e := Emitter{Name: "a", Frame: down(row.In[2]), Source: photometry.FromLuminance(row.In[0], face(row.In[1], row.In[1]))}
		printed(t, label(row), lux(t, empty, e, Receptor{Axis: up}), row.Out[0], 1e-6)
	}
	for _, row := range published.Read(t, "formfactor.txt", "perpendicular") {
		a, b, d := row.In[0], row.In[1], row.In[2]
		f := looking(r3.Vec{X: a / 2, Y: d, Z: b / 2}, r3.Vec{X: a / 2, Z: b / 2})
		e := Emitter{Name: "a", Frame: f, Source: photometry.FromLuminance(1, face(a, b))}
		printed(t, label(row), lux(t, empty, e, Receptor{Axis: up}), row.Out[0], 1e-10)
	}
	for _, row := range published.Read(t, "formfactor.txt", "sphere") {
		ball := photometry.Opening{Form: photometry.Sphere, Width: 2 * row.In[1]}
		e := Emitter{Name: "a", Frame: down(row.In[2]), Source: photometry.FromLuminance(row.In[0], ball)}
		printed(t, label(row), lux(t, empty, e, Receptor{Axis: up}), row.Out[0], 1e-6)
	}
}

func TestPublishedTubes(t *testing.T) {
	tube := func(length, d, x float64) Emitter {
		f := down(d)
		f.At.X = x
		flux := math.Pi * math.Pi * 1000 * length
		return Emitter{Name: "a", Frame: f, Source: photometry.Source{Flux: flux, Distribution: photometry.TubeCosine{},
			Opening: photometry.Opening{Form: photometry.Tube, Width: length}}}
	}
	for _, row := range published.Read(t, "formfactor.txt", "line") {
		e := tube(row.In[0], row.In[1], row.In[0]/2)
		printed(t, label(row), lux(t, &solid.Set{}, e, Receptor{Axis: up}), row.Out[0], 1e-6)
	}
	row := published.Read(t, "formfactor.txt", "tube")[0]
	printed(t, label(row), lux(t, &solid.Set{}, tube(row.In[0], row.In[1], 0), Receptor{Axis: up}), row.Out[0], 1e-6)
}

// CIE 171:2006 case 5.3, in its closed room.
func TestPublishedCeiling(t *testing.T) {
	room := &solid.Set{Prisms: []solid.Prism{
		{ID: 1, Base: box(-2.1, 0, 0.2, 4.4, 0), Z1: 3}, {ID: 2, Base: box(2.1, 0, 0.2, 4.4, 0), Z1: 3},
		{ID: 3, Base: box(0, -2.1, 4, 0.2, 0), Z1: 3}, {ID: 4, Base: box(0, 2.1, 4, 0.2, 0), Z1: 3},
		{ID: 5, Base: box(0, 0, 4.4, 4.4, 0), Z0: 3, Z1: 3.2}, {ID: 6, Base: box(0, 0, 4.4, 4.4, 0), Z0: -0.2, Z1: 0}}}
	e := Emitter{Name: "a", Frame: down(3), Source: photometry.FromLuminance(1000, face(1, 1))}
	for _, row := range published.Read(t, "formfactor.txt", "area source") {
		r := Receptor{At: r3.Vec{X: row.In[0] - 2, Y: row.In[1] - 2, Z: row.In[2]}, Axis: r3.Vec{X: row.In[3], Y: row.In[4], Z: row.In[5]}}
		printed(t, label(row), lux(t, room, e, r), row.Out[0], 0.01)
	}
}

// A meter under a lobe is I(t) cos i/d², whatever way lamp and meter look.
func TestLobeByFormula(t *testing.T) {
	r := rand.New(rand.NewPCG(21, 22))
	direction := func() r3.Vec { return r3.Unit(r3.Vec{X: r.NormFloat64(), Y: r.NormFloat64(), Z: r.NormFloat64()}) }
	for range 500 {
		beam := 5 + 60*r.Float64()
		lobe := photometry.NewLobe(beam, 1.7*beam)
		at, p := r3.Scale(5, direction()), r3.Scale(3, direction())
		e := Emitter{Name: "a", Frame: looking(at, r3.Add(p, direction())), Source: photometry.FromCandela(5000, lobe, photometry.Opening{})}
		axis := direction()
		way := r3.Sub(p, at)
		d := r3.Norm(way)
		angle := math.Acos(min(1, r3.Dot(way, e.Frame.Axis)/d))
		n := math.Log(math.Log2(10)) / math.Log(1.7)
		intensity := 5000 * math.Exp2(-math.Pow(angle/(beam/2*math.Pi/180), n))
		cos := -r3.Dot(way, axis) / d
		close(t, "flat", lux(t, &solid.Set{}, e, Receptor{At: p, Axis: axis}), intensity*max(0, cos)/(d*d), 1e-9)
		close(t, "dome", lux(t, &solid.Set{}, e, Receptor{At: p, Axis: axis, Response: Dome}), intensity*(1+cos)/2/(d*d), 1e-9)
	}
}

// A face behind a grid has no closed form: the plain sum over a million points of it, which is good
// to 1e-4.
func TestGriddedFaceBySum(t *testing.T) {
	t.Parallel()
	places := []r3.Vec{{X: 0.3, Y: 0.2}, {X: 1.3, Y: 0.5}, {}, {X: 0.2, Y: 1.1}, {X: 2, Y: 0.9}, {X: 0.1, Z: 1.2}}
	grid, _ := photometry.NewGrid(photometry.Cosine{}, 100, 60)
	for _, form := range []photometry.Form{photometry.Rectangle, photometry.Disc} {
		e := Emitter{Name: "a", Frame: down(1.5), Source: photometry.Source{Flux: 1000, Distribution: grid,
			Opening: photometry.Opening{Form: form, Width: 1.2, Height: 0.8}}}
		for _, at := range places[:cases(len(places), 2)] {
			for _, w := range []Response{Cosine, Dome} {
				r := Receptor{At: at, Axis: r3.Unit(r3.Vec{X: 0.3, Z: 1}), Response: w}
				close(t, fmt.Sprint("gridded ", form, at, w), lux(t, &solid.Set{}, e, r), plainSum(&e, &r, 1000), 1e-4)
			}
		}
	}
}

// plainSum is the sum over n by n cells of the opening, of one size.
func plainSum(e *Emitter, r *Receptor, n int) (sum float64) {
	o := e.Source.Opening
	l := newLamp(e, 1, 1, 1)
	for i := range n {
		for k := range n {
			x, y := (float64(i)+0.5)/float64(n), (float64(k)+0.5)/float64(n)
			p := r3.Vec{X: (x - 0.5) * o.Width, Y: (y - 0.5) * o.Height}
			if o.Form == photometry.Disc {
				sin, cos := math.Sincos(2 * math.Pi * y)
				p = r3.Vec{X: math.Sqrt(x) * cos * o.Width / 2, Y: math.Sqrt(x) * sin * o.Width / 2}
			}
			sum += l.fromPoint(l.world(p), r)
		}
	}
	return sum / float64(n*n)
}

// What is hidden by half is half, and a pane takes its share and is named.
func TestPanesAndShadows(t *testing.T) {
	pane := sheetAt(7, r3.Vec{Z: 2}, 0, math.Pi/2, 2, 2)
	pane.Front.Direct = colour.RGB{0.8, 0.8, 0.8}
	pane.Back = pane.Front
	tinted := sheetAt(3, r3.Vec{Z: 1}, 0, math.Pi/2, 2, 2)
	tinted.Front.Direct = colour.RGB{0.9, 0.5, 0.2}
	tinted.Back = tinted.Front
	w := build(t, &solid.Set{Sheets: []solid.Sheet{tinted, pane}}, Options{})
	e := Emitter{Name: "a", Frame: down(3), Source: photometry.FromCandela(900, photometry.Uniform{}, photometry.Opening{})}
	b := basis(t, w, []Emitter{e}, Targets{Points: []Receptor{
		{Axis: up}, {Axis: up, Skip: []solid.ID{3}}, {At: r3.Vec{X: 50}, Axis: up}}})
	want := []Term{
		{Light: "a", Via: []solid.ID{}},
		{Light: "a", Via: []solid.ID{7}},
		{Light: "a", Via: []solid.ID{7, 3}}}
	for i, term := range b.Terms {
		if term.Light != want[i].Light || !slices.Equal(term.Via, want[i].Via) {
			t.Errorf("term %d is %+v, want %+v", i, term, want[i])
		}
	}
	total, shares := b.Point(0, Levels{"a": {1, 2, 3}})
	for c, f := range []float64{0.8 * 0.9, 0.8 * 0.5 * 2, 0.8 * 0.2 * 3} {
		close(t, "through both", total[c], 100*f, 1e-12)
	}
	if shares[0] != (colour.RGB{}) || shares[1] != (colour.RGB{}) || shares[2] != total {
		t.Errorf("shares %v of %v: all goes through both panes", shares, total)
	}
	total, _ = b.Point(1, Levels{"a": {1, 1, 1}})
	close(t, "past the skipped pane", total.Y(), 80, 1e-12)
}

// A straight edge over the middle of a face hides half of it.
func TestHalfHidden(t *testing.T) {
	edge := solid.Prism{ID: 1, Base: box(-5, 0, 10, 10, 0), Z0: 1, Z1: 1.2}
	e := Emitter{Name: "a", Frame: down(2), Source: photometry.FromLuminance(1000, face(1, 1))}
	all := lux(t, &solid.Set{}, e, Receptor{Axis: up})
	half := lux(t, &solid.Set{Prisms: []solid.Prism{edge}}, e, Receptor{Axis: up})
	close(t, "half of a face", half/all, 0.5, 0.01)
	for _, o := range []photometry.Opening{
		{Form: photometry.Disc, Width: 0.6}, {Form: photometry.Sphere, Width: 0.6}, {Form: photometry.Tube, Width: 0.6}} {
		e.Source = photometry.Source{Flux: 1000, Distribution: photometry.Lambertian(o.Form), Opening: o}
		all = lux(t, &solid.Set{}, e, Receptor{Axis: up})
		half = lux(t, &solid.Set{Prisms: []solid.Prism{edge}}, e, Receptor{Axis: up})
		close(t, fmt.Sprint("half of form ", o.Form), half/all, 0.5, 0.02)
	}
}

// The luminance of a surface is rho E/pi, in its colour, behind glass by what that passes.
func TestRadiance(t *testing.T) {
	grey := solid.Skin{Reflect: colour.RGB{0.18, 0.18, 0.18}}
	red := solid.Skin{Reflect: colour.RGB{0.5, 0.1, 0.05}}
	pane := sheetAt(9, r3.Vec{X: -1, Z: 1}, 0, 0, 2, 2)
	pane.Front.Direct, pane.Back.Direct = colour.RGB{0.9, 0.9, 0.9}, colour.RGB{0.9, 0.9, 0.9}
	set := &solid.Set{
		Prisms: []solid.Prism{{ID: 1, Base: box(0, 0, 1, 1, 0), Z1: 2, Skin: red}},
		Sheets: []solid.Sheet{pane},
	}
	bodies := &solid.Set{Prisms: []solid.Prism{{ID: 2, Base: box(-0.6, 0, 0.05, 0.4, 0), Z1: 2, Skin: grey}}}
	lamp := Emitter{Name: "a", Frame: looking(r3.Vec{X: -3.5, Z: 1}, r3.Vec{Z: 1}), Source: photometry.FromCandela(900, photometry.Uniform{}, photometry.Opening{})}
	to := Targets{Points: []Receptor{
		{At: r3.Vec{X: -5, Z: 1}, Axis: r3.Vec{X: 1}, Response: Radiance},
		{At: r3.Vec{X: -5, Y: 0.3, Z: 1}, Axis: r3.Vec{X: 1}, Response: Radiance},
		{At: r3.Vec{X: -5, Z: 1}, Axis: r3.Vec{X: -1}, Response: Radiance},
		{At: r3.Vec{X: -5, Z: 3}, Axis: r3.Vec{X: 1}, Response: Radiance}, // the lamp lights it, and it meets nothing
	}}
	b := basis(t, build(t, set, Options{Bodies: bodies}), []Emitter{lamp}, to)
	at := func(i int) colour.RGB { l, _ := b.Point(i, Levels{"a": {1, 1, 1}}); return l }
	through := 0.9 * 0.9 // in and out
	body := 900 / (2.875 * 2.875) / math.Pi * through
	wall := 900 * 3 / math.Pow(9+0.09, 1.5) / math.Pi * through
	for c := range 3 {
		close(t, "body", at(0)[c], 0.18*body, 1e-12)
		close(t, "wall", at(1)[c], red.Reflect[c]*wall, 1e-12)
	}
	for i := 2; i < 4; i++ {
		if at(i) != (colour.RGB{}) {
			t.Errorf("luminance of nothing is %v", at(i))
		}
	}
}
