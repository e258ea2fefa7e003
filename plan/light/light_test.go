package light

import (
	"context"
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"reflect"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/solid"
)

func TestRebase(t *testing.T) {
	r := rand.New(rand.NewPCG(71, 72))
	s, lights := room(r), lamps(r)
	w := build(t, s, Options{Quality: Draft})
	to := Targets{Lattices: []Lattice{floorAt(0, 0, 0, 8, 50)}, Points: []Receptor{
		{At: r3.Vec{X: 4, Y: 4, Z: 1}, Axis: up}, {At: r3.Vec{X: 1, Y: 1, Z: 1.5}, Axis: r3.Vec{X: 1}, Response: Radiance}}}
	old := basis(t, w, lights, to)
	lights[3].Frame.At.X += 0.5
	lights = slices.Delete(lights, 1, 2)
	lights = append(lights, Emitter{Name: "new", Frame: down(2.5), Source: lights[0].Source})
	got, err := w.Rebase(context.Background(), old, lights, lights[2].Name)
	if err != nil {
		t.Fatal(err)
	}
	if want := basis(t, w, lights, to); !reflect.DeepEqual(got, want) {
		t.Error("a basis after a move differs from one made afresh")
	}
	if &got.Fields[0][0][0] != &old.Fields[0][0][0] {
		t.Error("a light that stayed was computed again")
	}
}

func TestCancelled(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	s, floor := reference(0)
	w := build(t, s, Options{Workers: 2})
	cancel()
	if _, err := w.Basis(ctx, referenceLamps(), Targets{Lattices: []Lattice{floor}}); !errors.Is(err, context.Canceled) {
		t.Errorf("a cancelled basis gave %v", err)
	}
	if _, err := Build(ctx, s, Options{}); !errors.Is(err, context.Canceled) {
		t.Errorf("a cancelled build gave %v", err)
	}
}

func TestRefused(t *testing.T) {
	w := build(t, &solid.Set{}, Options{})
	two := []Emitter{{Name: "a"}, {Name: "a"}}
	if _, err := w.Basis(context.Background(), two, Targets{}); err == nil {
		t.Error("two lights of one name were taken")
	}
	for _, l := range []Lattice{{}, {NU: 1}, {NV: 1}, {NU: 1, NV: 1, Response: Radiance}, {NU: 1, NV: 1, Toward: &r3.Vec{}}} {
		if _, err := w.Basis(context.Background(), nil, Targets{Lattices: []Lattice{l}}); err == nil {
			t.Errorf("a lattice of %d by %d points of response %d, turned to %v, was taken", l.NU, l.NV, l.Response, l.Toward)
		}
	}
	if _, err := Build(context.Background(), &solid.Set{}, Options{Quality: 9}); err == nil {
		t.Error("an unknown quality was taken")
	}
}

// A tinted pane over half the floor: three planes, each as the pane says, for drives of any colour.
func TestTintedField(t *testing.T) {
	pane := sheetAt(1, r3.Vec{X: 1, Z: 1.5}, 0, math.Pi/2, 2, 4)
	pane.Front.Direct = colour.RGB{0.9, 0.5, 0.2}
	pane.Back = pane.Front
	w := build(t, &solid.Set{Sheets: []solid.Sheet{pane}}, Options{})
	for _, source := range []photometry.Source{
		{Flux: 1000, Distribution: photometry.Uniform{}}, {Flux: 1000, Distribution: photometry.Cosine{}, Opening: face(0.5, 0.5)}} {
		e := Emitter{Name: "a", Frame: down(3), Source: source}
		floor := floorAt(-1.013, -1.017, 0, 2, 21)
		to := Targets{Lattices: []Lattice{floor}}
		for j := range floor.NV {
			for i := range floor.NU {
				to.Points = append(to.Points, Receptor{At: floor.At(i, j), Axis: up})
			}
		}
		b := basis(t, w, []Emitter{e}, to)
		field := make([]float32, floor.NU*floor.NV)
		d := Levels{"a": {0.2, 1, 3}}
		b.Field(0, d, field)
		l := newLamp(&e, w.faces, w.tubes, w.bundle)
		for n := range field {
			total := d["a"].Times(sampled(w, l, &to.Points[n]))
			close(t, fmt.Sprint(to.Points[n].At), float64(field[n]), total.Y(), 1e-4)
		}
	}
}

func TestMaskedPointsAreDark(t *testing.T) {
	floor := floorAt(0, 0, 0, 2, 21)
	floor.Mask = make([]uint64, (21*21+63)/64)
	floor.Mask[1] |= 1 << 5 // point 69: (6, 3)
	wall := floor
	wall.U, wall.V, wall.Normal = r3.Vec{X: 0.1}, r3.Vec{Z: 0.1}, r3.Vec{Y: 1}
	e := Emitter{Name: "a", Frame: looking(r3.Vec{X: 0.5, Y: 1, Z: 2.2}, r3.Vec{}), Source: photometry.Source{Flux: 1000, Distribution: photometry.Uniform{}}}
	b := basis(t, build(t, &solid.Set{}, Options{}), []Emitter{e}, Targets{Lattices: []Lattice{floor, wall}})
	for k := range 2 {
		for n, v := range b.Fields[0][k] {
			if (v == 0) != (n == 69) {
				t.Errorf("lattice %d: point %d is %v", k, n, v)
			}
		}
	}
}

// A lamp in the very plane of a dome lattice still casts shadows in it.
func TestLampInThePlane(t *testing.T) {
	s := &solid.Set{Prisms: []solid.Prism{{ID: 1, Base: box(2, 0, 0.2, 1, 0), Z1: 3}}}
	e := Emitter{Name: "a", Frame: looking(r3.Vec{Z: 1.5}, r3.Vec{X: 1, Z: 1.5}), Source: photometry.FromCandela(400, photometry.Uniform{}, photometry.Opening{})}
	lat := Lattice{Origin: r3.Vec{X: 1, Z: 1.5}, U: r3.Vec{X: 3}, V: r3.Vec{Y: 3}, Normal: r3.Vec{X: -1}, NU: 2, NV: 2, Response: Dome}
	b := basis(t, build(t, s, Options{}), []Emitter{e}, Targets{Lattices: []Lattice{lat}})
	field := make([]float32, 4)
	b.Field(0, Levels{"a": {1, 1, 1}}, field)
	for n, want := range []float64{400, 0, 400.0 / 10 * (1 + 1/math.Sqrt(10)) / 2, 400.0 / 25 * (1 + 4.0/5) / 2} {
		close(t, fmt.Sprint("point ", n), float64(field[n]), want, 1e-5)
	}
}

// A lattice point in the very place of a lamp has no light rather than no number.
func TestLampOnALatticePoint(t *testing.T) {
	lat := Lattice{Origin: r3.Vec{Z: 1.5}, U: r3.Vec{X: 1}, V: r3.Vec{Y: 1}, Normal: r3.Vec{X: -1}, NU: 2, NV: 2, Response: Dome}
	grid, _ := photometry.NewGrid(photometry.NewLobe(60, 90), 90, 90)
	for _, d := range []photometry.Distribution{photometry.Uniform{}, photometry.Cosine{}, photometry.NewLobe(40, 60), grid} {
		e := Emitter{Name: "a", Frame: looking(r3.Vec{Z: 1.5}, r3.Vec{X: 1, Z: 1.5}), Source: photometry.Source{Flux: 1000, Distribution: d}}
		b := basis(t, build(t, &solid.Set{}, Options{}), []Emitter{e}, Targets{Lattices: []Lattice{lat}, Points: []Receptor{{At: lat.Origin, Axis: up}}})
		for n, v := range b.Fields[0][0] {
			if v64 := float64(v); math.IsNaN(v64) || math.IsInf(v64, 0) || n == 1 && v == 0 {
				t.Errorf("%T: point %d has %v lx", d, n, v)
			}
		}
		if p, _ := b.Point(0, Levels{"a": {1, 1, 1}}); p != (colour.RGB{}) {
			t.Errorf("%T: a meter in the lamp reads %v", d, p)
		}
	}
}

func TestPathNames(t *testing.T) {
	for p, want := range map[Path]string{Direct: "direct", Diffused: "diffused", Mirrored: "mirrored", Reflected: "reflected"} {
		if p.String() != want {
			t.Errorf("path %d is %q, want %q", p, p, want)
		}
	}
}

func ExampleWorld_Basis() {
	// A lamp of 1000 cd, 2 m over a table 0.75 m high: once with all its light, once at half.
	table := solid.Prism{ID: 1, Name: "table", Base: []r2.Vec{{}, {X: 1}, {X: 1, Y: 1}, {Y: 1}}, Z1: 0.75}
	world, err := Build(context.Background(), &solid.Set{Prisms: []solid.Prism{table}}, Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	lamp := Emitter{
		Name:   "lamp",
		Frame:  plan.Frame{At: r3.Vec{X: 0.5, Y: 0.5, Z: 2.75}, Axis: r3.Vec{Z: -1}, Right: r3.Vec{X: 1}},
		Source: photometry.FromCandela(1000, photometry.Cosine{}, photometry.Opening{}),
	}
	onTop := Receptor{At: r3.Vec{X: 0.5, Y: 0.5, Z: 0.75}, Axis: r3.Vec{Z: 1}}
	below := Receptor{At: r3.Vec{X: 0.5, Y: 0.5}, Axis: r3.Vec{Z: 1}}
	b, err := world.Basis(context.Background(), []Emitter{lamp}, Targets{Points: []Receptor{onTop, below}})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, level := range []float64{1, 0.5} {
		level := Levels{"lamp": colour.RGB{level, level, level}}
		top, _ := b.Point(0, level)
		floor, _ := b.Point(1, level)
		fmt.Printf("%.1f lx on the table, %.1f lx under it\n", top.Y(), floor.Y())
	}
	// Output:
	// 250.0 lx on the table, 0.0 lx under it
	// 125.0 lx on the table, 0.0 lx under it
}

// An opening that is as bright from everywhere sends out its flux: the sum of its brightness, seen as small as it looks, over all directions.
func TestBrightnessOfOpenings(t *testing.T) {
	disc, tube, ball := photometry.Opening{Form: photometry.Disc, Width: 0.6}, photometry.Opening{Form: photometry.Tube, Width: 1.2, Height: 0.03}, photometry.Opening{Form: photometry.Sphere, Width: 0.4}
	for name, c := range map[string]struct {
		o     photometry.Opening
		looks func(cos float64) float64 // m², or m of a tube, by the angle from its axis or its length
	}{
		"face": {face(1.5, 0.4), func(cos float64) float64 { return 1.5 * 0.4 * math.Max(0, cos) }}, "disc": {disc, func(cos float64) float64 { return math.Pi * 0.09 * math.Max(0, cos) }},
		"tube": {tube, func(cos float64) float64 { return 1.2 * math.Sqrt(1-cos*cos) }}, "sphere": {ball, func(float64) float64 { return math.Pi * 0.04 }},
	} {
		e := Emitter{Name: name, Frame: down(3), Source: photometry.Source{Flux: 1000, Distribution: photometry.Lambertian(c.o.Form), Opening: c.o}}
		const rings = 20000
		sum := 0.0
		for i := range rings {
			sum += c.looks(-1+2*(float64(i)+0.5)/rings) * 4 * math.Pi / rings
		}
		close(t, "flux of a "+name, newLamp(&e, 1, 1, 1).luminance()*sum/1000, 1, 1e-4)
	}
}

// The light at receptors is kept in three channels of eight bytes each, of each term.
func TestSizeOfABasis(t *testing.T) {
	if got := (&Basis{Points: make([][]colour.RGB, 4), resolved: make([]Receptor, 5)}).PointValues(); got != 4*5*3*8/4 {
		t.Errorf("the light of four terms at five receptors takes %d values of four bytes", got)
	}
}

// Shares of receptors make one term for each way that light comes: the panes, and the mirror that it came by.
func TestTermsOfShares(t *testing.T) {
	pane, mirror := solid.ID(7), solid.ID(8)
	var c column
	c.collect("a", [][]share{{{}, {via: []solid.ID{pane}}}, {{}, {mirror: &mirror}, {via: []solid.ID{pane}}}, nil})
	if len(c.terms) != 3 {
		t.Fatalf("%d terms: %+v", len(c.terms), c.terms)
	}
	for i := range c.terms {
		for k := range i {
			if a, b := &c.terms[i], &c.terms[k]; a.Path == b.Path && a.From == b.From && len(a.Via) == len(b.Via) {
				t.Errorf("terms %d and %d are alike: %+v", k, i, *a)
			}
		}
	}
}
