package light

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	known "scrimshaw/plan/internal/reference"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/solid"
)

var limits = Limits{Floor: 0, Reach: 30}

func TestWedgeAngles(t *testing.T) {
	w := build(t, &solid.Set{}, Options{})
	level := looking(r3.Vec{Z: 1.5}, r3.Vec{X: 1, Z: 1.5})
	for _, c := range []struct {
		d           photometry.Distribution
		o           photometry.Opening
		beam, field float64
	}{
		{photometry.NewLobe(40, 60), photometry.Opening{}, 20, 30},
		{known.NewCone(26), photometry.Opening{}, 13, 13},
		{photometry.Cosine{}, photometry.Opening{}, 60, math.Acos(0.1) / radian},
		{photometry.Cosine{}, face(1, 1), 60, math.Acos(0.1) / radian},
		{photometry.TubeCosine{}, photometry.Opening{Form: photometry.Tube, Width: 1.2}, 60, math.Acos(0.1) / radian},
		{photometry.Uniform{}, photometry.Opening{}, 180, 180},
	} {
		for share, want := range map[float64]float64{0.5: c.beam, 0.1: c.field} {
			e := Emitter{Name: "a", Frame: level, Source: photometry.Source{Flux: 1000, Distribution: c.d, Opening: c.o}}
			got := w.Wedge(&e, share, limits)
			close(t, fmt.Sprintf("%T left at %g", c.d, share), got.Left, want, 1e-6)
			close(t, fmt.Sprintf("%T right at %g", c.d, share), got.Right, want, 1e-6)
		}
	}
}

// Against a wall square to the axis a wedge is a triangle; through an opening its far side is the
// opening's image, to the edge that is wanted; behind glass it goes on.
func TestWedgeOutline(t *testing.T) {
	pane := sheetAt(9, r3.Vec{X: 1, Z: 1.5}, 0, 0, 10, 3)
	pane.Front.Direct = [3]float64{0.9, 0.9, 0.9}
	pane.Back = pane.Front
	set := &solid.Set{
		Prisms: []solid.Prism{
			{ID: 1, Base: box(4.1, 0, 0.2, 20, 0), Z1: 3},
			{ID: 2, Base: box(2.05, 5.5, 0.1, 10, 0), Z1: 3}, // y over 0.5
			{ID: 3, Base: box(2.05, -5.5, 0.1, 10, 0), Z1: 3}},
		Sheets: []solid.Sheet{pane},
	}
	w := build(t, set, Options{})
	e := Emitter{Name: "a", Frame: looking(r3.Vec{Z: 1.5}, r3.Vec{X: 1, Z: 1.5}), Source: photometry.Source{Flux: 1, Distribution: photometry.NewLobe(60, 90)}}
	got := w.Wedge(&e, 0.5, limits)
	// From the lamp, left to right: along the wall with the hole to its edge, through it to the far wall, back.
	edge := 0.5 / 2.1 * 4 // the far corner of the hole's reveal limits the view
	want := []r2.Vec{{}, {X: 2, Y: 2 * math.Tan(30*radian)}, {X: 2, Y: 0.5}, {X: 2.1, Y: 0.5},
		{X: 4, Y: edge}, {X: 4, Y: -edge}, {X: 2.1, Y: -0.5}, {X: 2, Y: -0.5}, {X: 2, Y: -2 * math.Tan(30*radian)}}
	within := func(p r2.Vec) bool {
		for _, q := range got.Outline {
			if r2.Norm(r2.Sub(p, q)) < 2*crisp {
				return true
			}
		}
		return false
	}
	for _, p := range want {
		if !within(p) {
			t.Errorf("no corner of the wedge near %v: %v", p, got.Outline)
		}
	}
	if len(got.Outline) > 16 {
		t.Errorf("%d corners where 9 would do: %v", len(got.Outline), got.Outline)
	}
}

func TestWedgeOfAFaceStartsAtItsWidth(t *testing.T) {
	w := build(t, &solid.Set{}, Options{})
	e := Emitter{Name: "a", Frame: looking(r3.Vec{Z: 1.5}, r3.Vec{Y: 1, Z: 1.5}), Source: photometry.Source{Flux: 1, Distribution: photometry.Cosine{}, Opening: face(1.2, 0.4)}}
	got := w.Wedge(&e, 0.5, limits).Outline
	first, last := got[0], got[len(got)-1]
	if r2.Norm(r2.Sub(first, r2.Vec{X: -0.6})) > 1e-12 || r2.Norm(r2.Sub(last, r2.Vec{X: 0.6})) > 1e-12 {
		t.Errorf("starts from %v to %v, want the face from left to right", first, last)
	}
	e.Frame.Right, e.Frame.Axis = r3.Vec{Z: -1}, r3.Vec{Y: 1} // rolled by a quarter turn
	got = w.Wedge(&e, 0.5, limits).Outline
	if first = got[0]; r2.Norm(r2.Sub(first, r2.Vec{X: -0.2})) > 1e-12 {
		t.Errorf("rolled, starts from %v, want half the height", first)
	}
}

// A lobe straight down throws a circle, tan of half the beam by the height; on a table a smaller one.
func TestFootprint(t *testing.T) {
	table := solid.Prism{ID: 1, Base: box(2, 0, 4, 10, 0), Z0: 0.7, Z1: 0.8} // x over 0
	w := build(t, &solid.Set{Prisms: []solid.Prism{table}}, Options{})
	e := Emitter{Name: "a", Frame: down(2.8), Source: photometry.Source{Flux: 1, Distribution: photometry.NewLobe(50, 80)}}
	got := w.Wedge(&e, 0.5, limits)
	if !got.Footprint || len(got.Outline) < 60 {
		t.Fatalf("straight down: %+v, want a footprint", got)
	}
	for _, p := range got.Outline {
		height := 2.8
		if p.X > 1e-9 {
			height = 2.0
		}
		if !(math.Abs(p.X) <= 0.02) {
			close(t, fmt.Sprint(p), r2.Norm(p), height*math.Tan(25*radian), 1e-6)
		}
	}
	e.Frame = looking(r3.Vec{Z: 3}, r3.Vec{X: 3 / math.Tan(74*radian)})
	if w.Wedge(&e, 0.5, limits).Footprint {
		t.Error("an aim of 74° below the horizon has a footprint only")
	}
}

// inside tells by turning angles whether a point is in a ring.
func inside(p r2.Vec, ring []r2.Vec) bool {
	turn := 0.0
	for i, a := range ring {
		a, b := r2.Sub(a, p), r2.Sub(ring[(i+1)%len(ring)], p)
		turn += math.Atan2(r2.Cross(a, b), r2.Dot(a, b))
	}
	return math.Abs(turn) > math.Pi
}

// Every corner of a wedge is reached from the emitting edge without entering a solid: walked in
// steps of a millimetre, with a test of its own for being inside.
func TestWedgesStopAtSolids(t *testing.T) {
	t.Parallel()
	r := rand.New(rand.NewPCG(81, 82))
	for range cases(25, 3) {
		s := room(r)
		s.Sheets = nil
		w := build(t, s, Options{})
		for _, e := range lamps(r)[:4] {
			if !(math.Abs(e.Frame.Axis.Z) <= math.Sin(steepest*radian)) {
				continue
			}
			if _, in := w.bvh.Inside(e.Frame.At); in {
				continue
			}
			got := w.Wedge(&e, 0.5, limits)
			right := levelRight(e.Frame)
			for _, v := range got.Outline {
				// Where v is in the plane of axis and right: at + a axis + b right.
				dx, dy := v.X-e.Frame.At.X, v.Y-e.Frame.At.Y
				det := e.Frame.Axis.X*right.Y - e.Frame.Axis.Y*right.X
				a := (dx*right.Y - dy*right.X) / det
				z := e.Frame.At.Z + a*e.Frame.Axis.Z
				if z < limits.Floor-1e-9 {
					t.Fatalf("%v lies %v under the floor", v, -z)
				}
				end := r3.Vec{X: v.X, Y: v.Y, Z: z}
				way := r3.Sub(end, e.Frame.At)
				length := r3.Norm(way)
				for d := 0.001; d < length-0.001; d += 0.002 {
					p := r3.Add(e.Frame.At, r3.Scale(d/length, way))
					for i := range s.Prisms {
						q := &s.Prisms[i]
						if p.Z > q.Z0+1e-6 && p.Z < q.Z1-1e-6 && r2.Norm(r2.Sub(q.Base[0], r2.Vec{X: p.X, Y: p.Y})) < 3 && inside(r2.Vec{X: p.X, Y: p.Y}, q.Base) && deep(p, q.Base) {
							t.Fatalf("the ray from %v to %v is inside solid %d at %v", e.Frame.At, end, q.ID, p)
						}
					}
				}
			}
		}
	}
}

// deep says whether a point keeps a tenth of a millimetre from every side of a ring.
func deep(p r3.Vec, ring []r2.Vec) bool {
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		if math.Abs(r2.Cross(r2.Unit(r2.Sub(b, a)), r2.Sub(r2.Vec{X: p.X, Y: p.Y}, a))) < 1e-4 {
			return false
		}
	}
	return true
}

func TestSight(t *testing.T) {
	w := build(t, &solid.Set{Prisms: []solid.Prism{{ID: 1, Base: box(0, 3.1, 10, 0.2, 0), Z1: 3}}}, Options{})
	got := w.Sight(looking(r3.Vec{Z: 1.5}, r3.Vec{Y: 1, Z: 1.5}), 60, limits)
	x := 3 * math.Tan(30*radian)
	want := []r2.Vec{{}, {X: -x, Y: 3}, {X: x, Y: 3}}
	if len(got) != len(want) {
		t.Fatalf("sees %v, want %v", got, want)
	}
	for i := range want {
		if r2.Norm(r2.Sub(got[i], want[i])) > 1e-9 {
			t.Errorf("sees %v, want %v", got, want)
		}
	}
}

// A probe and a basis are the same light.
func TestEvaluator(t *testing.T) {
	r := rand.New(rand.NewPCG(91, 92))
	s, lights := room(r), lamps(r)
	w := build(t, s, Options{Quality: Draft})
	d := Levels{}
	for i, e := range lights {
		d[e.Name] = [3]float64{1, 0.1 * float64(i), 0.5}
	}
	probe := w.Evaluator(lights, d)
	var to Targets
	for range 50 {
		to.Points = append(to.Points, Receptor{At: r3.Vec{X: 8 * r.Float64(), Y: 8 * r.Float64()}, Axis: up, Response: Response(r.IntN(2))})
	}
	b := basis(t, w, lights, to)
	for i, p := range to.Points {
		total, _ := b.Point(i, d)
		close(t, fmt.Sprint(p.At), probe(p), total.Y(), 1e-12)
	}
}

func BenchmarkWedge(b *testing.B) {
	s, _ := reference(0)
	w := build(b, s, Options{})
	lights := referenceLamps()
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		w.Wedge(&lights[i%len(lights)], 0.5, limits)
	}
}

func ExampleWorld_Wedge() {
	world, err := Build(context.Background(), &solid.Set{}, Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	spot := Emitter{
		Name:   "spot",
		Frame:  plan.Frame{At: r3.Vec{Z: 2}, Axis: r3.Vec{Y: 1}, Right: r3.Vec{X: 1}},
		Source: photometry.FromCandela(20000, photometry.NewLobe(20, 36), photometry.Opening{}),
	}
	wedge := world.Wedge(&spot, 0.5, Limits{Reach: 5})
	first := wedge.Outline[1]
	fmt.Printf("%.0f° to the left, to %.2f, %.2f\n", wedge.Left, first.X, first.Y)
	// Output:
	// 10° to the left, to -0.87, 4.92
}

// A beam is drawn up to a cloth that scatters most of what it lets through, through its gaps, and on through one that lets
// most go straight, glass or a net.
func TestWedgesEndOnCloth(t *testing.T) {
	for name, c := range map[string]struct {
		direct, diffuse float64
		ends            bool
	}{"silk": {0.05, 0.3, true}, "full diffusion": {0, 0.4, true}, "net": {0.5, 0.03, false}, "glass": {0.9, 0, false}} {
		skin := solid.Skin{Direct: colour.RGB{c.direct, c.direct, c.direct}, Diffuse: colour.RGB{c.diffuse, c.diffuse, c.diffuse}}
		s := &solid.Set{Sheets: []solid.Sheet{{ID: 1, Name: "cloth", Front: skin, Back: skin, Corners: []r3.Vec{
			{X: -5, Y: 3, Z: -5}, {X: 0.5, Y: 3, Z: -5}, {X: 0.5, Y: 3, Z: 5}, {X: -5, Y: 3, Z: 5}}}}}
		spot := Emitter{Name: "spot", Frame: plan.Frame{Axis: r3.Vec{Y: 1}, Right: r3.Vec{X: 1}},
			Source: photometry.Source{Flux: 1000, Distribution: photometry.NewLobe(60, 90)}}
		beyond := 0.0
		for _, p := range build(t, s, Options{}).Wedge(&spot, 0.5, Limits{Floor: -10, Reach: 9}).Outline {
			if p.X < 0.4 {
				beyond = max(beyond, p.Y)
			} else if p.X > 1.2 && p.Y < 3.1 && r2.Norm(p) > 3.4 {
				t.Errorf("%s: the beam ends at %v, past the edge of the cloth", name, p)
			}
		}
		if ends := beyond < 3.01; ends != c.ends {
			t.Errorf("%s: the beam goes on to %.2f m, and ends on it: %v", name, beyond, c.ends)
		}
	}
}
