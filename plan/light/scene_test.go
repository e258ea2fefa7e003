package light

import (
	"context"
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/solid"
)

// looking is the frame of a lamp at a place that is aimed at another, its right level.
func looking(at, aim r3.Vec) plan.Frame {
	axis := r3.Unit(r3.Sub(aim, at))
	right := r3.Cross(axis, r3.Vec{Z: 1})
	if r3.Norm(right) < 1e-9 {
		right = r3.Vec{X: 1}
	}
	return plan.Frame{At: at, Axis: axis, Right: r3.Unit(right)}
}

// cases is how many cases a test takes: all, or in a short run a few, so that each idea is still tried.
func cases(all, few int) int {
	if testing.Short() {
		return few
	}
	return all
}

// build makes a world or fails.
func build(t testing.TB, s *solid.Set, o Options) *World {
	t.Helper()
	w, err := Build(context.Background(), s, o)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

// basis computes or fails.
func basis(t testing.TB, w *World, lights []Emitter, to Targets) *Basis {
	t.Helper()
	b, err := w.Basis(context.Background(), lights, to)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// lux reads one receptor under one emitter in a set, at a level of 1.
func lux(t testing.TB, s *solid.Set, e Emitter, r Receptor) float64 {
	t.Helper()
	b := basis(t, build(t, s, Options{}), []Emitter{e}, Targets{Points: []Receptor{r}})
	total, _ := b.Point(0, Levels{e.Name: {1, 1, 1}})
	return total.Y()
}

func close(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance*math.Max(1, math.Abs(want))) {
		t.Errorf("%s: %.10g, want %.10g", what, got, want)
	}
}

// floorAt is a level lattice that faces up, n by n points on a square.
func floorAt(x, y, z, side float64, n int) Lattice {
	step := side / float64(n-1)
	return Lattice{
		Origin: r3.Vec{X: x, Y: y, Z: z}, U: r3.Vec{X: step}, V: r3.Vec{Y: step},
		Normal: r3.Vec{Z: 1}, NU: n, NV: n,
	}
}

// room is walls and furniture at random in a square of 8 m, with a pane or two.
func room(r *rand.Rand) *solid.Set {
	s := &solid.Set{}
	id := solid.ID(0)
	between := func(a, b float64) float64 { return a + (b-a)*r.Float64() }
	for range 4 + r.IntN(20) {
		id++
		z := 0.0
		if r.IntN(3) == 0 {
			z = between(0, 2)
		}
		turn := between(0, math.Pi)
		if r.IntN(2) == 0 {
			turn = 0
		}
		s.Prisms = append(s.Prisms, solid.Prism{ID: id, Base: box(between(0, 8), between(0, 8), between(0.1, 1.5), between(0.1, 1.5), turn), Z0: z, Z1: z + between(0.1, 2)})
	}
	for range r.IntN(4) {
		id++
		s.Sheets = append(s.Sheets, sheetAt(id, r3.Vec{X: between(0, 8), Y: between(0, 8), Z: between(0.3, 2.3)},
			between(0, 2*math.Pi), between(-1.2, 1.2), between(0.3, 1.5), between(0.3, 1.5)))
		if r.IntN(2) == 0 {
			h := &s.Sheets[len(s.Sheets)-1]
			f := between(0.4, 0.95)
			h.Front.Direct = colour.RGB{f, f, f}
			h.Back = h.Front
		}
	}
	return s
}

// box is a rectangle in plan.
func box(x, y, w, d, turn float64) []r2.Vec {
	sin, cos := math.Sincos(turn)
	var base []r2.Vec
	for _, c := range [][2]float64{{-w, -d}, {w, -d}, {w, d}, {-w, d}} {
		base = append(base, r2.Vec{X: x + (cos*c[0]-sin*c[1])/2, Y: y + (sin*c[0]+cos*c[1])/2})
	}
	return base
}

// sheetAt is a rectangle about a point, its normal at a bearing and an elevation in radians.
func sheetAt(id solid.ID, at r3.Vec, bearing, tilt, w, h float64) solid.Sheet {
	sinB, cosB := math.Sincos(bearing)
	sinT, cosT := math.Sincos(tilt)
	f := looking(at, r3.Add(at, r3.Vec{X: cosT * cosB, Y: cosT * sinB, Z: sinT}))
	up := f.Up()
	corner := func(x, y float64) r3.Vec {
		return r3.Add(at, r3.Add(r3.Scale(x*w/2, f.Right), r3.Scale(y*h/2, up)))
	}
	return solid.Sheet{ID: id, Corners: []r3.Vec{corner(-1, -1), corner(-1, 1), corner(1, 1), corner(1, -1)}}
}

// lamps is one of each sort of source at random places, at least clear of the floor.
func lamps(r *rand.Rand) []Emitter {
	grid, _ := photometry.NewGrid(photometry.Cosine{}, 110, 90)
	kinds := []photometry.Source{
		{Flux: 4000, Distribution: photometry.NewLobe(40, 60)},
		{Flux: 4000, Distribution: photometry.NewLobe(15, 30)},
		{Flux: 4000, Distribution: photometry.Uniform{}},
		{Flux: 4000, Distribution: photometry.Cosine{}},
		{Flux: 4000, Distribution: photometry.Cosine{}, Opening: photometry.Opening{Form: photometry.Rectangle, Width: 1.2, Height: 0.6}},
		{Flux: 4000, Distribution: grid, Opening: photometry.Opening{Form: photometry.Rectangle, Width: 0.9, Height: 0.9}},
		{Flux: 4000, Distribution: photometry.NewLobe(70, 110), Opening: photometry.Opening{Form: photometry.Disc, Width: 0.5}},
		{Flux: 4000, Distribution: photometry.Cosine{}, Opening: photometry.Opening{Form: photometry.Disc, Width: 1}},
		{Flux: 4000, Distribution: photometry.TubeCosine{}, Opening: photometry.Opening{Form: photometry.Tube, Width: 1.2, Height: 0.03}},
		{Flux: 4000, Distribution: photometry.Uniform{}, Opening: photometry.Opening{Form: photometry.Sphere, Width: 0.4}},
	}
	var all []Emitter
	for i, k := range kinds {
		at := r3.Vec{X: 8 * r.Float64(), Y: 8 * r.Float64(), Z: 0.7 + 2*r.Float64()}
		aim := r3.Vec{X: 8 * r.Float64(), Y: 8 * r.Float64(), Z: r.Float64()}
		all = append(all, Emitter{Name: string(rune('a' + i)), Frame: looking(at, aim), Source: k})
	}
	return all
}
