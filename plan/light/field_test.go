package light

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/solid"
)

// The shadows drawn on a lattice tell what rays tell, at every point that is lit: random rooms,
// every sort of source, both weights. Points within a ten-millionth of the edge of a shadow may fall either
// way, and random scenes have none.
func TestFieldsAgreeWithRays(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 12))
	for scene := range cases(40, 4) {
		s := room(r)
		w := build(t, s, Options{Quality: Draft})
		lights := lamps(r)
		floor := latticeOf(scene)
		to := Targets{Lattices: []Lattice{floor}}
		var index [][2]int
		for range 300 {
			i, j := r.IntN(floor.NU), r.IntN(floor.NV)
			at := floor.At(i, j)
			if _, in := w.bvh.Inside(at); in {
				continue
			}
			index = append(index, [2]int{i, j})
			to.Points = append(to.Points, Receptor{At: at, Axis: floor.Axis(at), Response: floor.Response})
		}
		b := basis(t, w, lights, to)
		field := make([]float32, floor.NU*floor.NV)
		for _, e := range lights {
			d := Levels{e.Name: {1, 1, 1}}
			b.Field(0, d, field)
			l := newLamp(&e, w.faces, w.tubes, w.bundle)
			for p, ij := range index {
				got, want := float64(field[ij[1]*floor.NU+ij[0]]), 0.0
				if drawable(&floor) {
					want = sampled(w, l, &to.Points[p]).Y()
				} else {
					total, _ := b.Point(p, d)
					want = total.Y()
				}
				if !(math.Abs(got-want) <= 1e-3*math.Max(want, 5)) {
					t.Errorf("scene %d, lamp %s, %v: field %.6g, rays %.6g", scene, e.Name, to.Points[p].At, got, want)
				}
			}
		}
	}
}

// Fields keep their promise at normal quality on every kind of lattice, of every sort of opening: before a lattice, below it and in its plane,
// past solids and glass. Each kind of lattice keeps it by itself, and nothing is far off anywhere.
func TestFieldsOfOddLamps(t *testing.T) {
	t.Parallel()
	r := rand.New(rand.NewPCG(71, 72))
	var got, want [lattices][]float64
	for scene := range 2 * lattices {
		lat := latticeOf(scene)
		if !drawable(&lat) {
			continue // it is traced
		}
		s, lights := room(r), lamps(r)[4:] // those that are no points
		lights[3].Source.Distribution = measured(t, 1, 0.8)
		plane := r3.Unit(r3.Cross(lat.U, lat.V))
		into := &lights[scene%len(lights)].Frame.At
		*into = r3.Sub(*into, r3.Scale(r3.Dot(plane, r3.Sub(*into, lat.Origin)), plane))
		fields, meters := oddFields(t, r, build(t, s, Options{Direct: true}), lat, lights)
		kind := scene % lattices
		got[kind], want[kind] = append(got[kind], fields...), append(want[kind], meters...)
	}
	for kind := range lattices {
		if len(want[kind]) == 0 {
			continue
		}
		mean, p95 := errorsOf(got[kind], want[kind])
		if mean > 0.0025 || p95 > 0.010 {
			t.Errorf("lattice %d: mean %.3f %%, 95th percentile %.2f %%", kind, 100*mean, 100*p95)
		}
		for n, lux := range want[kind] {
			if !(math.Abs(got[kind][n]-lux) <= 0.05*max(lux, 10)) {
				t.Errorf("lattice %d: %.4g lx, want %.4g", kind, got[kind][n], lux)
			}
		}
	}
}

// oddFields is what fields and receptors say of each lamp at some places of a lattice.
func oddFields(t *testing.T, r *rand.Rand, w *World, lat Lattice, lights []Emitter) (fields, meters []float64) {
	to := Targets{Lattices: []Lattice{lat}}
	var index []int
	for range 50 {
		i, j := r.IntN(lat.NU), r.IntN(lat.NV)
		if _, in := w.bvh.Inside(lat.At(i, j)); !in {
			to.Points, index = append(to.Points, lat.Receptor(i, j)), append(index, j*lat.NU+i)
		}
	}
	b := basis(t, w, lights, to)
	field := make([]float32, lat.NU*lat.NV)
	for _, e := range lights {
		d := Levels{e.Name: {1, 1, 1}}
		b.Field(0, d, field)
		for p, n := range index {
			if total, _ := b.Point(p, d); r3.Norm(r3.Sub(to.Points[p].At, e.Frame.At)) > 0.3 {
				fields, meters = append(fields, float64(field[n])), append(meters, total.Y())
			}
		}
	}
	return fields, meters
}

// Past the edge of cloth, which hides more than it passes, comes part of a lamp straight and part of it dimmed, and beside a board little of it:
// there fields are closer than they promise everywhere.
func TestFieldsPastTheEdgeOfCloth(t *testing.T) {
	e := Emitter{Name: "a", Frame: down(2.5), Source: photometry.Source{Flux: 4000, Distribution: photometry.NewFaceLobe(80, 120), Opening: face(1.2, 0.8)}}
	floor := floorAt(-2, -2, 0, 4, 31)
	to := Targets{Lattices: []Lattice{floor}}
	for n := range floor.NU * floor.NV {
		to.Points = append(to.Points, floor.Receptor(n%floor.NU, n/floor.NU))
	}
	for name, pass := range map[string]float64{"cloth": 0.2, "glass": 0.9} {
		sheet := sheetAt(1, r3.Vec{X: 0.13, Y: 0.07, Z: 1.3}, 0.3, 1.4, 0.9, 0.7)
		sheet.Front.Direct = colour.RGB{pass, pass, pass}
		sheet.Back = sheet.Front
		s := &solid.Set{Sheets: []solid.Sheet{sheet}, Prisms: []solid.Prism{{ID: 2, Base: box(0.9, 0.2, 0.7, 1.5, 0.2), Z0: 1.6, Z1: 1.65}}}
		for q, promised := range map[Quality]struct{ mean, p95 float64 }{Normal: {0.001, 0.005}, Fine: {0.0005, 0.002}} {
			b := basis(t, build(t, s, Options{Direct: true, Quality: q}), []Emitter{e}, to)
			field := make([]float32, floor.NU*floor.NV)
			b.Field(0, Levels{"a": {1, 1, 1}}, field)
			var got, want []float64
			for n, lux := range field {
				total, _ := b.Point(n, Levels{"a": {1, 1, 1}})
				got, want = append(got, float64(lux)), append(want, total.Y())
			}
			if mean, p95 := errorsOf(got, want); mean > promised.mean || p95 > promised.p95 {
				t.Errorf("%s, %s: mean %.3f %%, 95th percentile %.2f %%", name, q, 100*mean, 100*p95)
			}
		}
	}
}

// lattices is how many kinds of lattice there are.
const lattices = 7

// latticeOf is the lattice of a random scene: of floors, planes and domes, at all tilts.
func latticeOf(scene int) Lattice {
	floor := floorAt(0.013, 0.017, 0, 8, 61)
	switch scene % lattices {
	case 1:
		floor.Origin.Z = 1.4
		floor.Response, floor.Normal = Dome, r3.Unit(r3.Vec{X: 1, Y: 2, Z: 0.1})
	case 2:
		floor.Origin.Z, floor.Normal.Z = 1.1, -1
	case 3:
		floor.Normal = r3.Unit(r3.Vec{X: 1, Y: 0.5, Z: 0.7})
	case 4: // upright, askew to everything
		floor.U, floor.V = r3.Vec{X: 0.1, Y: 0.05}, r3.Vec{Z: 0.04}
		floor.Origin, floor.Normal = r3.Vec{X: 0.7, Y: 1.1, Z: 0.013}, r3.Unit(r3.Vec{X: 1, Y: -2})
	case 5: // leaning, looked at from behind
		floor.U, floor.V = r3.Vec{X: 0.1}, r3.Vec{Y: 0.03, Z: 0.04}
		floor.Origin, floor.Normal = r3.Vec{X: 1.1, Y: 3.1, Z: 0.013}, r3.Unit(r3.Vec{Y: 4, Z: -3})
	case 6: // domes turned to a place among them
		floor.Origin.Z = 1.1
		floor.Response, floor.Toward = Dome, &r3.Vec{X: 3, Y: 2.2, Z: 1.1 + 0.3*float64(scene/lattices%3)}
	}
	return floor
}

// A lattice without a place to turn to has one axis, another the way to the place from each point.
func TestAxisOfALattice(t *testing.T) {
	to, up := r3.Vec{X: 3, Y: 4, Z: 1}, r3.Vec{Z: 1}
	for _, c := range []struct {
		l        Lattice
		at, want r3.Vec
	}{
		{Lattice{Normal: up}, r3.Vec{X: 7}, up},
		{Lattice{Normal: up, Toward: &to}, r3.Vec{Z: 1}, r3.Vec{X: 0.6, Y: 0.8}},
		{Lattice{Toward: &to}, r3.Vec{X: 3, Y: 4, Z: 3}, r3.Vec{Z: -1}},
		{Lattice{Toward: &to}, to, r3.Vec{}},
	} {
		if got := c.l.Axis(c.at); r3.Norm(r3.Sub(got, c.want)) > 1e-15 {
			t.Errorf("at %v toward %v: axis %v, want %v", c.at, c.l.Toward, got, c.want)
		}
	}
}

// In the place itself that the domes are turned to, one takes half of what comes from everywhere. Planes are not
// turned.
func TestDomeInThePlaceItself(t *testing.T) {
	w := build(t, &solid.Set{}, Options{})
	e := Emitter{Name: "bulb", Frame: looking(r3.Vec{X: 0, Y: 0, Z: 3}, r3.Vec{}),
		Source: photometry.Source{Flux: 4 * math.Pi * 100, Distribution: photometry.Uniform{}}}
	l := Lattice{Origin: r3.Vec{X: -2, Y: -2, Z: 1}, U: r3.Vec{X: 1}, V: r3.Vec{Y: 1}, NU: 5, NV: 5, Response: Dome, Toward: &r3.Vec{Z: 1}}
	field := make([]float32, 25)
	basis(t, w, []Emitter{e}, Targets{Lattices: []Lattice{l}}).Field(0, Levels{"bulb": {1, 1, 1}}, field)
	if got, want := float64(field[12]), 100.0/4/2; !(math.Abs(got-want) <= 1e-6*want) {
		t.Errorf("%g lx in the place itself, want %g", got, want)
	}
	l.Response = Cosine
	if _, err := w.Basis(t.Context(), []Emitter{e}, Targets{Lattices: []Lattice{l}}); err == nil {
		t.Error("planes are turned to a place")
	}
}

// What a lattice is to skip throws no shadow on it, a board or a pane, and everything else does.
func TestALatticeSkipsSolids(t *testing.T) {
	board := solid.Prism{ID: 1, Base: box(0.5, 0.5, 1, 1, 0), Z0: 0.5, Z1: 0.6}
	pane := sheetAt(2, r3.Vec{X: -0.5, Y: -0.5, Z: 0.5}, 0, math.Pi/2, 1, 1)
	pane.Front.Direct, pane.Back.Direct = colour.RGB{0.5, 0.5, 0.5}, colour.RGB{0.5, 0.5, 0.5}
	w := build(t, &solid.Set{Prisms: []solid.Prism{board}, Sheets: []solid.Sheet{pane}}, Options{Workers: 1})
	e := Emitter{Name: "a", Frame: down(3), Source: photometry.FromCandela(1000, photometry.Uniform{}, photometry.Opening{})}
	under := func(skip ...solid.ID) (behindBoard, behindPane float64) {
		l := floorAt(-1, -1, 0, 2, 141) // rows of several words
		l.Skip = skip
		b := basis(t, w, []Emitter{e}, Targets{Lattices: []Lattice{l}})
		field := make([]float32, l.NU*l.NV)
		b.Field(0, Levels{"a": {1, 1, 1}}, field)
		return float64(field[105*l.NU+105]), float64(field[35*l.NU+35])
	}
	open := 1000 * 3 / math.Pow(9+0.5, 1.5)
	for name, c := range map[string]struct {
		skip        []solid.ID
		board, pane float64
	}{"nothing": {nil, 0, open / 2}, "the board": {[]solid.ID{1}, open, open / 2}, "the pane": {[]solid.ID{2}, 0, open}, "both": {[]solid.ID{2, 1}, open, open}} {
		board, pane := under(c.skip...)
		close(t, name+" skipped: under the board", board, c.board, 1e-3)
		close(t, name+" skipped: under the pane", pane, c.pane, 1e-3)
	}
}

// Domes that turn to a place are read on a lattice as receptors are, in rows of any length.
func TestDomesThatTurnInLongRows(t *testing.T) {
	w := build(t, &solid.Set{}, Options{Workers: 1})
	for _, nu := range []int{5, 64, 65, 141} {
		l := Lattice{Origin: r3.Vec{X: -2, Y: -1, Z: 1}, U: r3.Vec{X: 4 / float64(nu-1)}, V: r3.Vec{Y: 0.5}, Normal: r3.Vec{Z: 1}, NU: nu, NV: 5,
			Response: Dome, Toward: &r3.Vec{X: 0.3, Y: 3, Z: 1.4}}
		to := Targets{Lattices: []Lattice{l}}
		for n := range l.NU * l.NV {
			to.Points = append(to.Points, l.Receptor(n%l.NU, n/l.NU))
		}
		for _, o := range []photometry.Opening{{}, {Form: photometry.Rectangle, Width: 0.4, Height: 0.3}} {
			e := Emitter{Name: "a", Frame: looking(r3.Vec{X: -1, Y: 2, Z: 2.5}, r3.Vec{Z: 1}),
				Source: photometry.Source{Flux: 1000, Distribution: photometry.Cosine{}, Opening: o}}
			b := basis(t, w, []Emitter{e}, to)
			field := make([]float32, l.NU*l.NV)
			b.Field(0, Levels{"a": {1, 1, 1}}, field)
			for n, lux := range field {
				total, _ := b.Point(n, Levels{"a": {1, 1, 1}})
				if !(math.Abs(float64(lux)-total.Y()) <= 1e-3*total.Y()) {
					t.Fatalf("%d in a row, opening %v, point %d: %g lx on the lattice, %g at a receptor", nu, o, n, lux, total.Y())
				}
			}
		}
	}
}

// Stretches of points that all of a lamp is hidden from are left out, and get what each of their points gets that is traced: nothing.
// Behind a wall most are; of random rooms and lamps many, and any that shows something is traced.
func TestHiddenStretches(t *testing.T) {
	r := rand.New(rand.NewPCG(51, 52))
	wall := &solid.Set{Prisms: []solid.Prism{{ID: 1, Base: box(4, 4, 0.2, 8, 0), Z0: 0, Z1: 4}}}
	left := 0
	for n := range cases(8, 3) {
		s, lights := room(r), lamps(r)
		if n == 0 {
			s = wall
		}
		for i := range lights {
			w := build(t, s, Options{Workers: 1})
			l := newLamp(&lights[i], w.faces, w.tubes, w.bundle)
			floor := floorAt(0.1, 0.1, 0.8, 7.8, 32)
			floor.NV, floor.V = 8, r3.Scale(31.0/7, floor.V)
			got, err := w.tracedField(t.Context(), &floor, l)
			if err != nil {
				t.Fatal(err)
			}
			quick := l.shade != nil || l.screened != nil || l.before != nil
			want, err := w.eachPoint(t.Context(), &floor, len(got)/(floor.NU*floor.NV), quick, nil, func(t *tracer, r *Receptor) colour.RGB { return t.total(l, r) })
			if err != nil {
				t.Fatal(err)
			}
			for k := range want {
				if !(math.Abs(float64(got[k]-want[k])) <= 1e-9*l.flux) {
					t.Fatalf("room %d, lamp %s, point %d: %g lx, traced alone %g", n, lights[i].Name, k, got[k], want[k])
				}
			}
			seen := w.newSurfaceLamp(l)
			for j := range floor.NV {
				if seen.hides(0, []r3.Vec{floor.At(0, j), floor.At(together-1, j)}) {
					left++
				}
			}
		}
	}
	if left < 20 {
		t.Errorf("only %d stretches are hidden", left)
	}
}

// A lattice of several words a row has the shadows of soft light as receptors have them.
func TestShadowsOnAWideLattice(t *testing.T) {
	e := Emitter{Name: "a", Frame: down(2.5), Source: photometry.Source{Flux: 4000, Distribution: photometry.Cosine{}, Opening: face(1.2, 0.8)}}
	floor := floorAt(-3, -0.4, 0, 6, 150)
	floor.NV, floor.V.Y = 9, 0.1
	set := &solid.Set{Prisms: []solid.Prism{{ID: 1, Base: box(-1, 0.1, 1.2, 0.7, 0.2), Z0: 1.2, Z1: 1.25}, {ID: 2, Base: box(1.6, 0, 0.7, 0.5, 0.4), Z0: 0.6, Z1: 0.65}}}
	to := Targets{Lattices: []Lattice{floor}}
	for n := 0; n < floor.NU*floor.NV; n += 7 {
		to.Points = append(to.Points, floor.Receptor(n%floor.NU, n/floor.NU))
	}
	b := basis(t, build(t, set, Options{Direct: true, Workers: 1}), []Emitter{e}, to)
	var got, want []float64
	for k := range to.Points {
		total, _ := b.Point(k, Levels{"a": {1, 1, 1}})
		got, want = append(got, float64(b.Fields[0][0][7*k])), append(want, total.Y())
	}
	if mean, p95 := errorsOf(got, want); mean > 0.0025 || p95 > 0.01 {
		t.Errorf("mean %.3f %%, 95th percentile %.2f %%", 100*mean, 100*p95)
	}
}

// The points of a lattice that is traced have in each channel what receptors there have, row by row, behind a tinted pane and beside it: by a point and
// by a face.
func TestTintedFieldsThatAreTraced(t *testing.T) {
	pane := sheetAt(1, r3.Vec{X: 1, Z: 1.5}, 0, math.Pi/2, 2, 4)
	pane.Front.Direct = colour.RGB{0.9, 0.5, 0.2}
	pane.Back = pane.Front
	floor := floorAt(-1.013, -1.017, 0, 3, 7)
	floor.NV, floor.Normal = 4, r3.Unit(r3.Vec{X: 0.3, Z: 1})
	if drawable(&floor) {
		t.Fatal("the lattice is drawn")
	}
	to := Targets{Lattices: []Lattice{floor}}
	for n := range floor.NU * floor.NV {
		to.Points = append(to.Points, floor.Receptor(n%floor.NU, n/floor.NU))
	}
	w := build(t, &solid.Set{Sheets: []solid.Sheet{pane}}, Options{Direct: true})
	for _, source := range []photometry.Source{{Flux: 1000, Distribution: photometry.Uniform{}}, {Flux: 1000, Distribution: photometry.Cosine{}, Opening: face(0.5, 0.5)}} {
		e := Emitter{Name: "a", Frame: down(1), Source: source}
		b := basis(t, w, []Emitter{e}, to)
		field := make([]float32, floor.NU*floor.NV)
		for c := range 3 {
			var d colour.RGB
			d[c] = 1
			b.Field(0, Levels{"a": d}, field)
			for n := range field {
				want, _ := b.Point(n, Levels{"a": d})
				close(t, fmt.Sprintf("channel %d of point %d", c, n), float64(field[n]), want.Y(), 1e-5)
			}
		}
	}
}

// A field has what comes by a board, too.
func TestFieldsByABoard(t *testing.T) {
	board := silver(solid.Sheet{ID: 1, Corners: []r3.Vec{{Y: -1, Z: -1}, {Y: 1, Z: -1}, {Y: 1, Z: 1}, {Y: -1, Z: 1}}}, 0.8, 24)
	e := Emitter{Name: "a", Frame: looking(r3.Vec{X: 1, Y: -0.6}, r3.Vec{}), Source: photometry.Source{Flux: 1000, Distribution: photometry.Cosine{}, Opening: face(0.2, 0.2)}}
	wall := Lattice{Origin: r3.Vec{X: 1, Y: 0.4, Z: -0.1}, U: r3.Vec{Y: 0.1}, V: r3.Vec{Z: 0.2}, Normal: r3.Vec{X: -1}, NU: 5, NV: 2}
	to := Targets{Lattices: []Lattice{wall}}
	for n := range wall.NU * wall.NV {
		to.Points = append(to.Points, wall.Receptor(n%wall.NU, n/wall.NU))
	}
	b := basis(t, build(t, &solid.Set{Sheets: []solid.Sheet{board}}, Options{Direct: true}), []Emitter{e}, to)
	field := make([]float32, wall.NU*wall.NV)
	b.Field(0, Levels{"a": {1, 1, 1}}, field)
	for n, lux := range field {
		total, _ := b.Point(n, Levels{"a": {1, 1, 1}})
		if want := total.Y(); !(math.Abs(float64(lux)/want-1) <= 0.02) || by(b, n, Mirrored).Y() < 0.9*want {
			t.Errorf("point %d has %g lx, want %g", n, lux, want)
		}
	}
}

// A field has three channels where any pane that colours something stands before it, whichever comes first.
func TestChannelsOfAField(t *testing.T) {
	grey := solid.Skin{Direct: colour.RGB{0.5, 0.5, 0.5}}
	tinted := solid.Skin{Direct: colour.RGB{0.5, 0.5, 0.4}}
	before := func(skin solid.Skin, points uint64) pane {
		return pane{caster: &caster{sheet: &solid.Sheet{Front: skin, Back: grey}}, some: []uint64{points}}
	}
	for i, c := range []struct {
		panes []pane
		want  int
	}{
		{nil, 1}, {[]pane{before(grey, 6)}, 1}, {[]pane{before(tinted, 6)}, 3}, {[]pane{before(grey, 6), before(tinted, 6)}, 3}, {[]pane{before(tinted, 1), before(grey, 6)}, 1},
		{[]pane{before(tinted, 1), before(tinted, 2)}, 3},
	} {
		f := &field{panes: c.panes, blank: []uint64{1}}
		if got := f.channels(); got != c.want {
			t.Errorf("case %d: %d channels, want %d", i, got, c.want)
		}
	}
}

// A triangle of a board has a rule of seven points on each of the triangles that it is split into, twice as long as the points may lie apart; no more than
// twenty-four a side. Their weights add up to its area.
func TestRulesOverATriangle(t *testing.T) {
	figure := []r3.Vec{{}, {X: 1}, {Y: 1}} // its longest side is 1.414 m
	for apart, strips := range map[float64]int{10: 1, 0.8: 1, 0.7: 2, 0.1: 8, 0.05: 15, 1e-9: 24} {
		all := rule(figure, apart)
		sum := 0.0
		for i := range all {
			sum += all[i].weight
		}
		if len(all) != 7*strips*strips || !(math.Abs(sum-0.5) <= 1e-9) {
			t.Errorf("points up to %g m apart: %d with weights of %g in all, want %d of 0.5", apart, len(all), sum, 7*strips*strips)
		}
	}
}
