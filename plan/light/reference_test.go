package light

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/photometry"
	"scrimshaw/plan/solid"
)

// reference is the scene that speed and error are measured on: a flat of 10 x 8 x 2.8 m with three
// rooms, 30 pieces of wall, 20 pieces of furniture, two people, two flags and a board, and more
// boxes where they are asked for. The floor lattice has 200 by 160 points, 5 cm apart.
func reference(boxes int) (*solid.Set, Lattice) {
	r := rand.New(rand.NewPCG(2024, 5))
	s := &solid.Set{}
	add := func(base []r2.Vec, z0, z1 float64) {
		s.Prisms = append(s.Prisms, solid.Prism{ID: solid.ID(len(s.Prisms) + 1), Base: base, Z0: z0, Z1: z1})
	}
	for _, piece := range referenceWalls() {
		add(piece.base, piece.z0, piece.z1)
	}
	between := func(a, b float64) float64 { return a + (b-a)*r.Float64() }
	for i := range 20 + boxes {
		turn := 0.0
		if i%2 == 1 {
			turn = between(0, math.Pi)
		}
		w, d, h := between(0.3, 1.6), between(0.3, 0.9), between(0.4, 1)
		if i%5 == 0 {
			h += 1 // a wardrobe among tables
		}
		if i >= 20 {
			w, d, h = w/6, d/6, h/2
		}
		add(box(between(0.6, 9.4), between(0.6, 7.4), w, d, turn), 0, h)
	}
	for range 2 {
		x, y := between(2, 8), between(2, 6)
		add(box(x, y, 0.45, 0.28, between(0, math.Pi)), 0, 1.7)
	}
	for i := range 3 {
		s.Sheets = append(s.Sheets, sheetAt(solid.ID(1000000+i), r3.Vec{X: between(2, 8), Y: between(2, 6), Z: between(1.3, 2)},
			between(0, 2*math.Pi), between(-0.5, 0.5), 0.9, 0.6))
	}
	floor := Lattice{
		Origin: r3.Vec{X: 0.025, Y: 0.025}, U: r3.Vec{X: 0.05}, V: r3.Vec{Y: 0.05}, Normal: r3.Vec{Z: 1}, NU: 200, NV: 160,
	}
	return s, floor
}

type wallPiece struct {
	base   []r2.Vec
	z0, z1 float64
}

// referenceWalls cuts twelve straight walls at four windows and three doors.
func referenceWalls() (all []wallPiece) {
	type hole struct{ from, to, sill, head float64 }
	wall := func(x0, y0, x1, y1 float64, holes ...hole) {
		length := math.Hypot(x1-x0, y1-y0)
		ux, uy := (x1-x0)/length, (y1-y0)/length
		piece := func(from, to, z0, z1 float64) {
			a, b := r2.Vec{X: x0 + ux*from, Y: y0 + uy*from}, r2.Vec{X: x0 + ux*to, Y: y0 + uy*to}
			out := r2.Vec{X: uy * 0.12, Y: -ux * 0.12}
			all = append(all, wallPiece{[]r2.Vec{r2.Add(a, out), r2.Add(b, out), b, a}, z0, z1})
		}
		at := 0.0
		for _, h := range holes {
			piece(at, h.from, 0, 2.8)
			if h.sill > 0 {
				piece(h.from, h.to, 0, h.sill)
			}
			piece(h.from, h.to, h.head, 2.8)
			at = h.to
		}
		piece(at, length, 0, 2.8)
	}
	window := func(from, to float64) hole { return hole{from, to, 0.9, 2.1} }
	door := func(from float64) hole { return hole{from, from + 0.9, 0, 2} }
	wall(0, 0, 10, 0, window(1.5, 3.5), window(6, 8))
	wall(10, 0, 10, 8, window(4.5, 6.5))
	wall(10, 8, 0, 8)
	wall(0, 8, 0, 0, window(1.2, 2.7))
	wall(6.06, 0, 6.06, 4.5, door(3))
	wall(6.06, 4.5, 6.06, 8, door(1))
	wall(0, 5.06, 3, 5.06)
	wall(3, 5.06, 6, 5.06, door(1))
	wall(8, 4.56, 10, 4.56)
	wall(3.06, 5.06, 3.06, 6)
	wall(4.2, 8, 4.2, 7.3)
	wall(8, 4.56, 8, 4)
	return all
}

// referenceLamps are four spots, four soft boxes behind grids, two tubes and two windows.
func referenceLamps() []Emitter {
	r := rand.New(rand.NewPCG(2024, 6))
	between := func(a, b float64) float64 { return a + (b-a)*r.Float64() }
	var all []Emitter
	add := func(kind string, at, aim r3.Vec, s photometry.Source) {
		all = append(all, Emitter{Name: fmt.Sprintf("%s%d", kind, len(all)), Frame: looking(at, aim), Source: s})
	}
	place := func(z0, z1 float64) r3.Vec {
		return r3.Vec{X: between(0.8, 9.2), Y: between(0.8, 7.2), Z: between(z0, z1)}
	}
	for range 4 {
		beam := between(12, 40)
		add("spot", place(2.2, 2.7), place(0, 1), photometry.Source{Flux: 8000, Distribution: photometry.NewLobe(beam, 1.6*beam)})
	}
	for range 4 {
		grid, _ := photometry.NewGrid(photometry.Cosine{}, 100, 100)
		side := between(0.9, 1.5)
		add("box", place(1.8, 2.3), place(0.5, 1.2), photometry.Source{Flux: 6000, Distribution: grid,
			Opening: photometry.Opening{Form: photometry.Rectangle, Width: side, Height: side * 0.8}})
	}
	for range 2 {
		at := place(2.3, 2.6)
		add("tube", at, r3.Sub(at, r3.Vec{Z: 1}), photometry.Source{Flux: 2500, Distribution: photometry.TubeCosine{},
			Opening: photometry.Opening{Form: photometry.Tube, Width: 1.2, Height: 0.03}})
	}
	add("window", r3.Vec{X: 2.5, Y: 0.01, Z: 1.5}, r3.Vec{X: 2.5, Y: 1, Z: 1.5}, photometry.Source{Flux: 20000, Distribution: photometry.Cosine{},
		Opening: photometry.Opening{Form: photometry.Rectangle, Width: 2, Height: 1.2}})
	add("window", r3.Vec{X: 9.99, Y: 5.5, Z: 1.5}, r3.Vec{X: 9, Y: 5.5, Z: 1.5}, photometry.Source{Flux: 20000, Distribution: photometry.Cosine{},
		Opening: photometry.Opening{Form: photometry.Rectangle, Width: 2, Height: 1.2}})
	return all
}

func TestReferenceScene(t *testing.T) {
	s, floor := reference(0)
	if n := len(s.Prisms) + len(s.Sheets); n != 55 {
		t.Errorf("the reference scene has %d solids, want 55", n)
	}
	if n := floor.NU * floor.NV; n != 32000 || len(referenceLamps()) != 12 {
		t.Errorf("%d points and %d lamps, want 32000 and 12", n, len(referenceLamps()))
	}
}

func BenchmarkBasis(b *testing.B) {
	for _, boxes := range []int{0, 1945} {
		s, floor := reference(boxes)
		for _, q := range []Quality{Draft, Normal, Fine} {
			for _, workers := range []int{1, 2} {
				b.Run(fmt.Sprintf("solids=%d/quality=%d/workers=%d", 55+boxes, q, workers), func(b *testing.B) {
					b.ReportAllocs()
					w, lights := build(b, s, Options{Quality: q, Workers: workers}), referenceLamps()
					for b.Loop() {
						basis(b, w, lights, Targets{Lattices: []Lattice{floor}})
					}
				})
			}
		}
	}
}

func BenchmarkBasisByLamp(b *testing.B) {
	s, floor := reference(0)
	for _, e := range referenceLamps() {
		b.Run(e.Name, func(b *testing.B) {
			b.ReportAllocs()
			w := build(b, s, Options{Workers: 1})
			for b.Loop() {
				basis(b, w, []Emitter{e}, Targets{Lattices: []Lattice{floor}})
			}
		})
	}
}

func BenchmarkPoints(b *testing.B) {
	s, _ := reference(0)
	w := build(b, s, Options{Workers: 1})
	var to Targets
	r := rand.New(rand.NewPCG(1, 1))
	for range 20 {
		at := r3.Vec{X: 10 * r.Float64(), Y: 8 * r.Float64(), Z: 1.5}
		to.Points = append(to.Points, Receptor{At: at, Axis: r3.Unit(r3.Vec{X: r.NormFloat64(), Y: r.NormFloat64()}), Response: Dome})
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := w.Basis(context.Background(), referenceLamps(), to); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkField(b *testing.B) {
	s, floor := reference(0)
	lights := referenceLamps()
	all := basis(b, build(b, s, Options{Quality: Draft}), lights, Targets{Lattices: []Lattice{floor}})
	d := Levels{}
	for _, e := range lights {
		d[e.Name] = [3]float64{0.5, 0.6, 0.7}
	}
	dst := make([]float32, floor.NU*floor.NV)
	b.ReportAllocs()
	for b.Loop() {
		all.Field(0, d, dst)
	}
}
