package light

import (
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/solid"
)

// glazed is the reference scene with panes in all four windows, one of them tinted, the window lamps just
// outside, and spots, a soft box and a tube with measured light of 24 planes, no two alike.
func glazed(t testing.TB) (*solid.Set, Lattice, []Emitter) {
	s, floor := reference(0)
	pane := func(n int, at r3.Vec, along r3.Vec, pass colour.RGB) {
		half := r3.Scale(0.5, along)
		low, high := r3.Vec{Z: -0.6}, r3.Vec{Z: 0.6}
		skin := solid.Skin{Direct: pass}
		s.Sheets = append(s.Sheets, solid.Sheet{ID: solid.ID(3000000 + n), Name: fmt.Sprintf("pane%d", n), Front: skin, Back: skin,
			Corners: []r3.Vec{
				r3.Add(r3.Sub(at, half), low), r3.Add(r3.Add(at, half), low), r3.Add(r3.Add(at, half), high), r3.Add(r3.Sub(at, half), high),
			}})
	}
	clear, amber := colour.RGB{0.87, 0.87, 0.87}, colour.RGB{0.8, 0.62, 0.36}
	pane(0, r3.Vec{X: 2.5, Y: -0.06, Z: 1.5}, r3.Vec{X: 2}, clear)
	pane(1, r3.Vec{X: 7, Y: -0.06, Z: 1.5}, r3.Vec{X: 2}, clear)
	pane(2, r3.Vec{X: 10.06, Y: 5.5, Z: 1.5}, r3.Vec{Y: 2}, amber)
	pane(3, r3.Vec{X: -0.06, Y: 6.05, Z: 1.5}, r3.Vec{Y: 1.5}, clear)
	lights := referenceLamps()
	for i := range lights {
		e := &lights[i]
		switch {
		case i < 4:
			e.Source.Distribution = measured(t, i, 4)
		case i == 4, i == 8:
			e.Source.Distribution = measured(t, i, 0.8)
		case i >= 10:
			e.Frame.At = r3.Sub(e.Frame.At, r3.Scale(0.15, e.Frame.Axis))
		}
	}
	return s, floor, lights
}

// measured is a table of 24 planes and steps of 2.5°, invented: a lobe that is wider one way than the other and
// leans.
func measured(t testing.TB, n int, narrow float64) photometry.Distribution {
	t.Helper()
	nodes := photometry.Nodes{}
	for c := 0.0; c <= 360; c += 15 {
		nodes.Horizontal = append(nodes.Horizontal, c)
		var row []float64
		for g := 0.0; g <= 90; g += 2.5 {
			sin, cos := math.Sincos(g * radian)
			lean := 1 + 0.3*math.Cos(c*radian-float64(n))*sin
			wide := narrow * (1 + 0.5*math.Cos(2*c*radian))
			row = append(row, 1000*lean*math.Pow(max(0, cos), 1+2*wide*wide))
		}
		nodes.Candela = append(nodes.Candela, row)
	}
	for g := 0.0; g <= 90; g += 2.5 {
		nodes.Vertical = append(nodes.Vertical, g)
	}
	d, _, err := photometry.NewTable(nodes)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func BenchmarkGlazed(b *testing.B) {
	s, floor, lights := glazed(b)
	for _, q := range []Quality{Draft, Normal} {
		for _, workers := range []int{1, 2} {
			b.Run(fmt.Sprintf("quality=%s/workers=%d", q, workers), func(b *testing.B) {
				b.ReportAllocs()
				w := build(b, s, Options{Quality: q, Workers: workers})
				for b.Loop() {
					basis(b, w, lights, Targets{Lattices: []Lattice{floor}})
				}
			})
		}
	}
}

func BenchmarkGlazedByLamp(b *testing.B) {
	s, floor, lights := glazed(b)
	for _, e := range lights {
		b.Run(e.Name, func(b *testing.B) {
			w := build(b, s, Options{Workers: 1})
			for b.Loop() {
				basis(b, w, []Emitter{e}, Targets{Lattices: []Lattice{floor}})
			}
		})
	}
}

// angled is a level sheet of clear glass.
func angled(id solid.ID, at r3.Vec, w, h float64) solid.Sheet {
	s := sheetAt(id, at, 0, math.Pi/2, w, h)
	s.Front = solid.Skin{Direct: colour.RGB{0.9, 0.9, 0.9}, Glass: solid.NewGlass(1.526, 1, 0.9)}
	s.Back = s.Front
	return s
}

// Through glass before the part of a lamp that is seen past a flag comes what each place of that part sends through it.
func TestGlassBeforeAPartOfALamp(t *testing.T) {
	const lampHigh, flagHigh, side, wide = 1.5, 1.0, 0.6, 9.0
	e := Emitter{Name: "a", Frame: looking(r3.Vec{Z: lampHigh}, r3.Vec{}), Source: photometry.Source{Flux: 1000, Distribution: photometry.Cosine{}, Opening: face(side, side)}}
	pane := angled(1, r3.Vec{Z: 0.9}, wide, wide)
	for n := range 20 {
		x, hidden := 1.2+0.0731*float64(n), float64(1-n%2*2) // which side the flag hides
		r := Receptor{At: r3.Vec{X: x, Z: 0.6}, Axis: up}
		edge := x * (lampHigh - flagHigh) / (lampHigh - r.At.Z) // as it hides half of the lamp
		flag := sheetAt(2, r3.Vec{X: edge + hidden*wide/2, Z: flagHigh}, 0, math.Pi/2, wide, wide)
		w := build(t, &solid.Set{Sheets: []solid.Sheet{pane, flag}}, Options{Direct: true})
		l := w.newLamp(&e)
		const strips = 200
		want := 0.0
		for i := range strips {
			for k := range strips {
				p := l.world(r3.Vec{X: ((float64(i)+0.5)/strips - 0.5) * side, Y: ((float64(k)+0.5)/strips - 0.5) * side})
				if hidden*p.X < 0 {
					way := r3.Sub(r.At, p)
					want += 0.9 * pane.Front.Glass.Ratio(way.Z/r3.Norm(way)) * l.fromPoint(p, &r) / (strips * strips)
				}
			}
		}
		close(t, fmt.Sprintf("%g m aside", x), w.Evaluator([]Emitter{e}, Levels{"a": {1, 1, 1}})(r)/want, 1, 3e-3)
	}
}

// However many panes a lattice is seen through, the map takes what passes each by the angle.
func TestFieldThroughManyPanes(t *testing.T) {
	const panes, wide = 80, 0.05
	s := &solid.Set{}
	for i := range panes {
		s.Sheets = append(s.Sheets, angled(solid.ID(i+1), r3.Vec{X: (float64(i) + 0.5) * wide, Z: 1}, wide, 2))
	}
	w := build(t, s, Options{Direct: true})
	e := Emitter{Name: "a", Frame: looking(r3.Vec{Z: 1.6}, r3.Vec{}), Source: photometry.FromCandela(1000, photometry.Uniform{}, photometry.Opening{})}
	floor := floorAt(0.513, -0.017, 0, 9, 150)
	b := basis(t, w, []Emitter{e}, Targets{Lattices: []Lattice{floor}})
	field := make([]float32, floor.NU*floor.NV)
	b.Field(0, Levels{"a": {1, 1, 1}}, field)
	at := w.Evaluator([]Emitter{e}, Levels{"a": {1, 1, 1}})
	for i := range floor.NU {
		r := floor.Receptor(i, 0)
		close(t, fmt.Sprintf("%.2f m aside", r.At.X), float64(field[i])/at(r), 1, 1e-3)
	}
}

// Over a part of a lamp that is seen through glass from steeply aside the mean of what passes is found from its middle and its corners: nearer to the
// mean over many places than what passes from the middle, by five times. Where other panes stand before a corner, it counts as the middle.
func TestGlassOverAPartOfALamp(t *testing.T) {
	const n = 100
	pane := angled(1, r3.Vec{Z: 1}, 20, 20)
	l := newLamp(&Emitter{Frame: down(1.2), Source: photometry.Source{Flux: 1, Distribution: photometry.Cosine{}, Opening: face(0.6, 0.6)}}, 1, 1, 1)
	other := angled(2, r3.Vec{X: 0.85, Z: 1.1}, 0.3, 20) // before two of the corners
	for _, c := range []struct {
		panes []solid.Sheet
		by    float64 // how much of what the corners tell is left
	}{{[]solid.Sheet{pane}, 1}, {[]solid.Sheet{pane, other}, 0.5}} {
		tr := &tracer{visibleSums: newVisibleSums(solid.NewBVH(&solid.Set{Sheets: c.panes}))}
		r := &Receptor{At: r3.Vec{X: 2.4, Z: 0.8}, Axis: up}
		tr.panes, _ = tr.BVH.Segment(l.at, r.At, nil, nil)
		got := tr.overAngles(l.corners[:], r)
		ratio := func(p r3.Vec) float64 {
			way := r3.Sub(r.At, p)
			return pane.Front.Glass.Ratio(-way.Z / r3.Norm(way))
		}
		middle, mean, corners := ratio(l.at), 0.0, 0.0
		for i := range n * n {
			mean += ratio(l.world(r3.Vec{X: ((float64(i%n)+0.5)/n - 0.5) * 0.6, Y: ((float64(i/n)+0.5)/n - 0.5) * 0.6})) / (n * n)
		}
		for _, p := range l.corners {
			if c.by == 1 || p.X < 0 {
				corners += ratio(p) / 4
			} else {
				corners += middle / 4
			}
		}
		close(t, "by the rule of Simpson", got, (corners/middle+2)/3, 1e-3)
		if c.by == 1 && math.Abs(got-mean/middle) > 0.2*math.Abs(1-mean/middle) {
			t.Errorf("%g of what passes from the middle, want %g", got, mean/middle)
		}
	}
}
