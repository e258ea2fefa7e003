package light

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/light/radiosity"
	"scrimshaw/plan/light/receptor"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/solid"
)

// painted gives every solid of a set a colour, and puts a floor under it.
func painted(s *solid.Set, r *rand.Rand) *solid.Set {
	skin := func() solid.Skin {
		return solid.Skin{Reflect: colour.RGB{0.1 + 0.8*r.Float64(), 0.1 + 0.8*r.Float64(), 0.1 + 0.8*r.Float64()}}
	}
	for i := range s.Prisms {
		s.Prisms[i].Skin = skin()
	}
	for i := range s.Sheets {
		if h := &s.Sheets[i]; !h.Front.Clear() {
			h.Front, h.Back = skin(), skin()
		}
	}
	s.Sheets = append(s.Sheets, solid.Sheet{ID: 1000, Name: "floor", Front: skin(),
		Corners: []r3.Vec{{X: -1, Y: -1}, {X: 9, Y: -1}, {X: 9, Y: 9}, {X: -1, Y: 9}}})
	return s
}

// shell is a closed room of sheets that all reflect alike.
func shell(w, d, h float64, reflect colour.RGB) *solid.Set {
	p := func(x, y, z float64) r3.Vec { return r3.Vec{X: x, Y: y, Z: z} }
	s := &solid.Set{}
	for i, corners := range [][]r3.Vec{
		{p(0, 0, 0), p(w, 0, 0), p(w, d, 0), p(0, d, 0)},
		{p(0, 0, h), p(0, d, h), p(w, d, h), p(w, 0, h)},
		{p(0, 0, 0), p(0, 0, h), p(w, 0, h), p(w, 0, 0)},
		{p(w, 0, 0), p(w, 0, h), p(w, d, h), p(w, d, 0)},
		{p(w, d, 0), p(w, d, h), p(0, d, h), p(0, d, 0)},
		{p(0, d, 0), p(0, d, h), p(0, 0, h), p(0, 0, 0)},
	} {
		s.Sheets = append(s.Sheets, solid.Sheet{ID: solid.ID(i + 1), Name: [...]string{"floor", "ceiling", "front", "right", "back", "left"}[i],
			Corners: corners, Front: solid.Skin{Reflect: reflect}})
	}
	return s
}

// by is the light of a path at a receptor at a level of 1 for all lights.
func by(b *Basis, i int, path Path) (sum colour.RGB) {
	d := Levels{}
	for _, name := range b.Lights {
		d[name] = colour.RGB{1, 1, 1}
	}
	_, shares := b.Point(i, d)
	for t, share := range shares {
		if b.Terms[t].Path == path {
			sum = sum.Add(share)
		}
	}
	return sum
}

// Every sort of lamp, in a closed room: what is reflected is rho Phi/(A (1 - rho)) in the mean over all
// sides, whatever the lamp, by the flux balance of any closed room; and by a lattice on each side it
// is found to 0.5 %.
func TestClosedRoomOfEveryLamp(t *testing.T) {
	const rho, w, d, h = 0.6, 5.0, 4.0, 2.8
	s := shell(w, d, h, colour.RGB{rho, rho, rho})
	lights := lamps(rand.New(rand.NewPCG(5, 6)))
	for i := range lights {
		lights[i].Frame = looking(r3.Vec{X: 2 + 0.1*float64(i), Y: 1.7, Z: 1.5}, r3.Vec{X: 0.5 * float64(i), Y: 3, Z: 0.3 * float64(i)})
	}
	var to Targets
	for i := range s.Sheets {
		c := s.Sheets[i].Corners
		u, v := r3.Sub(c[1], c[0]), r3.Sub(c[3], c[0])
		nu, nv := int(math.Round(r3.Norm(u)/0.05)), int(math.Round(r3.Norm(v)/0.05))
		u, v = r3.Scale(1/float64(nu), u), r3.Scale(1/float64(nv), v)
		to.Lattices = append(to.Lattices, Lattice{Origin: r3.Add(c[0], r3.Scale(0.5, r3.Add(u, v))), U: u, V: v,
			Normal: r3.Unit(r3.Cross(u, v)), NU: nu, NV: nv})
	}
	b := basis(t, build(t, s, Options{}), lights, to)
	area := 2 * (w*d + w*h + d*h)
	for _, e := range lights {
		flux := 0.0
		for k := range to.Lattices {
			l := &to.Lattices[k]
			values := make([]float32, l.NU*l.NV)
			b.ReflectedField(k, Levels{e.Name: {1, 1, 1}}, values)
			for _, v := range values {
				flux += float64(v) * r3.Norm(l.U) * r3.Norm(l.V)
			}
		}
		close(t, "reflected light of lamp "+e.Name, flux/area, rho*e.Source.Flux/(area*(1-rho)), 5e-3)
	}
}

// The shares of a reading name the surface and the pane, and add up to it.
func TestSharesOfReflectedLight(t *testing.T) {
	s := shell(4, 4, 3, colour.RGB{0.5, 0.5, 0.5})
	s.Sheets = append(s.Sheets, solid.Sheet{ID: 7, Name: "pane", Front: solid.Skin{Direct: colour.RGB{0.5, 0.5, 0.5}}, Back: solid.Skin{Direct: colour.RGB{0.5, 0.5, 0.5}},
		Corners: []r3.Vec{{X: 2}, {X: 2, Y: 4}, {X: 2, Y: 4, Z: 3}, {X: 2, Z: 3}}})
	lamp := Emitter{Name: "a", Frame: looking(r3.Vec{X: 1, Y: 2, Z: 1.5}, r3.Vec{X: 0, Y: 2, Z: 1.5}), Source: photometry.Source{Flux: 1000, Distribution: photometry.NewLobe(40, 60)}}
	b := basis(t, build(t, s, Options{}), []Emitter{lamp}, Targets{Points: []Receptor{{At: r3.Vec{X: 3, Y: 2, Z: 1}, Axis: r3.Vec{X: -1}}}})
	total, shares := b.Point(0, Levels{"a": {1, 1, 1}})
	var sum colour.RGB
	seen := map[solid.ID]bool{}
	for t, share := range shares {
		sum = sum.Add(share)
		if term := b.Terms[t]; term.Path == Reflected && slices.Equal(term.Via, []solid.ID{7}) {
			seen[term.From] = true
		}
	}
	close(t, "sum of the shares", sum.Y(), total.Y(), 1e-12)
	if !seen[6] || seen[7] {
		t.Errorf("what comes through the pane left %v last; the lit wall 6 is to be among them and the pane is not", seen)
	}
	if direct := by(b, 0, Direct); direct.Y() > 1e-9 {
		t.Errorf("a lamp that looks away gives %v", direct)
	}
}

// A black solid never raises a reading by more than the error of the quality: black boxes and flags at
// random in a bright room.
func TestBlackNeverRaises(t *testing.T) {
	r := rand.New(rand.NewPCG(71, 72))
	for range cases(12, 1) {
		bare := shell(5, 4, 2.6, colour.RGB{0.7, 0.6, 0.5})
		lights := lamps(r)[:4]
		for i := range lights {
			lights[i].Frame = looking(r3.Vec{X: 1 + 3*r.Float64(), Y: 1 + 2*r.Float64(), Z: 1 + r.Float64()}, r3.Vec{X: 5 * r.Float64(), Y: 4 * r.Float64(), Z: r.Float64()})
		}
		black := &solid.Set{Sheets: slices.Clone(bare.Sheets)}
		black.Prisms = []solid.Prism{{ID: 20, Base: box(0.5+4*r.Float64(), 0.5+3*r.Float64(), 0.6, 0.4, r.Float64()), Z1: 1 + r.Float64()}}
		black.Sheets = append(black.Sheets, sheetAt(21, r3.Vec{X: 1 + 3*r.Float64(), Y: 1 + 2*r.Float64(), Z: 1.2}, 6*r.Float64(), 0, 1.2, 1.2))
		var to Targets
		before, after := build(t, bare, Options{}), build(t, black, Options{})
		for len(to.Points) < cases(20, 5) {
			at := r3.Vec{X: 0.3 + 4.4*r.Float64(), Y: 0.3 + 3.4*r.Float64(), Z: 0.3 + 2*r.Float64()}
			if _, in := after.bvh.Inside(at); !in {
				axis := r3.Unit(r3.Vec{X: r.NormFloat64(), Y: r.NormFloat64(), Z: r.NormFloat64()})
				to.Points = append(to.Points, Receptor{At: at, Axis: axis, Response: Response(len(to.Points) % 2)})
			}
		}
		a, b := basis(t, before, lights, to), basis(t, after, lights, to)
		for i := range to.Points {
			was, is := by(a, i, Reflected).Y()+by(a, i, Direct).Y(), by(b, i, Reflected).Y()+by(b, i, Direct).Y()
			if is > was*(1+reflectedError) {
				t.Errorf("black raised %.5g lx to %.5g", was, is)
			}
		}
	}
}

// reflectedError is what normal quality promises of the reflected light at a single receptor.
const reflectedError = 0.02

// A moved lamp is worked out again, reflected light and all, and the others keep what they had.
func TestRebaseOfReflectedLight(t *testing.T) {
	s := shell(4, 4, 3, colour.RGB{0.6, 0.5, 0.4})
	lights := lamps(rand.New(rand.NewPCG(9, 10)))[:4]
	for i := range lights {
		lights[i].Frame = looking(r3.Vec{X: 1 + 0.4*float64(i), Y: 1, Z: 2}, r3.Vec{X: 2, Y: 3})
	}
	to := Targets{Points: []Receptor{{At: r3.Vec{X: 2, Y: 2, Z: 1}, Axis: up}}, Lattices: []Lattice{floorAt(0.1, 0.1, 0, 3.8, 50)}}
	w := build(t, s, Options{Quality: Draft})
	old := basis(t, w, lights, to)
	lights[1].Frame = looking(r3.Vec{X: 3, Y: 3, Z: 1}, r3.Vec{X: 1, Y: 1})
	got, err := w.Rebase(t.Context(), old, lights, lights[1].Name)
	if err != nil {
		t.Fatal(err)
	}
	if &got.Reflected[0][0][0] != &old.Reflected[0][0][0] {
		t.Error("a light that stays is reflected again")
	}
	old.Forget()
	again, err := w.Rebase(t.Context(), old, lights, lights[1].Name)
	if err != nil {
		t.Fatal(err)
	}
	if !slices.Equal(again.Reflected[1][0], got.Reflected[1][0]) {
		t.Error("a basis that has forgotten is made again otherwise")
	}
	want := basis(t, w, lights, to)
	for i := range lights {
		if !slices.Equal(got.Reflected[i][0], want.Reflected[i][0]) {
			t.Errorf("the field of %s differs from that of a new basis", lights[i].Name)
		}
	}
	if a, b := by(got, 0, Reflected), by(want, 0, Reflected); !(math.Abs(a.Y()/b.Y()-1) <= 1e-12) {
		t.Errorf("reflected %v, by a new basis %v", a, b)
	}
}

// What comes back to a receptor does not depend on who else looks: with a lattice beside it the same surfaces shine
// as without.
func TestReceptorsDoNotDependOnLattices(t *testing.T) {
	s, floor := furnishedReference()
	lights := referenceLamps()[3:6]
	d := Levels{}
	for _, e := range lights {
		d[e.Name] = colour.RGB{1, 1, 1}
	}
	points := []Receptor{{At: r3.Vec{X: 4, Y: 3, Z: 1.5}, Axis: r3.Vec{X: 1}}, {At: r3.Vec{X: 7.5, Y: 6, Z: 1}, Axis: r3.Vec{Z: 1}, Response: Dome}}
	w := build(t, s, Options{Quality: Draft})
	alone := basis(t, w, lights, Targets{Points: points})
	beside := basis(t, w, lights, Targets{Points: points, Lattices: []Lattice{floor}})
	for i := range points {
		got, _ := alone.Point(i, d)
		want, _ := beside.Point(i, d)
		close(t, fmt.Sprint("receptor ", i), got.Y(), want.Y(), 2e-4)
	}
}

// What surfaces get straight of a lamp adds up to what it sends, before anything is put right: in a closed room with
// things in it every lamp's light lands to 1 %, that of a narrow beam too.
func TestNoFootprintIsMissed(t *testing.T) {
	t.Parallel()
	r := rand.New(rand.NewPCG(31, 32))
	s := shell(6, 5, 2.8, colour.RGB{0.5, 0.5, 0.5})
	for i := range 5 {
		s.Prisms = append(s.Prisms, solid.Prism{ID: solid.ID(100 + i), Base: box(0.7+1.1*float64(i), 1+3*r.Float64(), 0.4, 0.5, r.Float64()), Z1: 0.4 + r.Float64(),
			Skin: solid.Skin{Reflect: colour.RGB{0.4, 0.4, 0.4}}})
	}
	w := build(t, s, Options{})
	bvh := w.BVH()
	lights := lamps(r)
	for i := range lights {
		e := &lights[i]
		for {
			at := r3.Vec{X: 0.9 + 4.2*r.Float64(), Y: 0.9 + 3.2*r.Float64(), Z: 1.6 + 0.5*r.Float64()}
			if _, in := bvh.Inside(at); !in {
				e.Frame = looking(at, r3.Vec{X: 3 + r.Float64(), Y: 2.5, Z: 2 * r.Float64()})
				break
			}
		}
		lamp := newLamp(e, w.faces, w.tubes, w.bundle)
		tr, err := radiosity.Trace(t.Context(), s, bvh, w.radiosity, 1, []receptor.Receptor{{At: r3.Vec{X: 3, Y: 2.5, Z: 1.5}, Axis: r3.Vec{Z: 1}, Response: receptor.Dome}}, nil)
		if err != nil {
			t.Fatal(err)
		}
		solution, err := tr.Solve(t.Context(), []radiosity.Lamp{withoutRays{w.newSurfaceLamp(lamp)}})
		if err != nil {
			t.Fatal(err)
		}
		sent, _, _ := solution.Balance(0)
		close(t, "flux that lands of "+e.Name, sent[1]/e.Source.Flux, 1, 0.01)
	}
}

// withoutRays is a lamp whose light is left as the patches have it.
type withoutRays struct{ radiosity.Lamp }

func (withoutRays) EmitRays(func(solid.Hit, r3.Vec, colour.RGB) bool) bool { return false }

// Receptors are solved closer where rays leave one of them off by more than is allowed of its light: the errors of the lights by their squares.
func TestWhenReceptorsAreSolvedCloser(t *testing.T) {
	w := build(t, shell(4, 3, 2.5, colour.RGB{0.5, 0.5, 0.5}), Options{Quality: Draft, Workers: 1})
	lights := lamps(rand.New(rand.NewPCG(7, 8)))[3:5]
	for i := range lights {
		lights[i].Frame = looking(r3.Vec{X: 1 + float64(i), Y: 1.2, Z: 1.1}, r3.Vec{X: 3, Y: 2})
	}
	to := Targets{Points: []Receptor{{At: r3.Vec{X: 3, Y: 2, Z: 0.4}, Axis: r3.Vec{Z: 1}}, {At: r3.Vec{X: 0.5, Y: 2.5, Z: 0.2}, Axis: r3.Vec{X: 1}, Response: Dome}}}
	b := basis(t, w, lights, to)
	rough := mustSolve(t, w, b, lights)
	worst := slices.Max(rayErrors(b, rough))
	for _, by := range []float64{0.999, 1.001} {
		w.allowedRayError = by * worst
		if got := w.refined(b, []int{0, 1}, rough); len(got) != 2 && by < 1 || len(got) != 0 && by > 1 || worst == 0 {
			t.Errorf("where %g of the error is allowed, %v are solved closer", by, got)
		}
	}
}

// rayErrors are the shares of the light of receptors that rays leave them off by, all lights at a level of 1. It takes what comes back out
// of the columns of the basis, which have none of it yet where a World asks.
func rayErrors(b *Basis, rough *radiosity.Solution) (out []float64) {
	for k := range b.columns {
		c := &b.columns[k]
		direct := len(slices.DeleteFunc(slices.Clone(c.terms), func(t Term) bool { return t.Path != Direct }))
		c.terms, c.points = c.terms[:direct], c.points[:direct]
	}
	for n := range b.resolved {
		square, all := 0.0, 0.0
		for k := range b.columns {
			square += rough.Spread(n, k) * rough.Spread(n, k)
			for _, e := range rough.Point(n, k) {
				all += e.Y()
			}
			for _, points := range b.columns[k].points {
				all += points[n].Y()
			}
		}
		out = append(out, math.Sqrt(square)/all)
	}
	return out
}

// Of receptors at many places those alone are solved closer that need it, with all that stand where one does; the others read what they
// read without.
func TestInACrowdThoseThatNeedItAreSolvedCloser(t *testing.T) {
	w := build(t, shell(4, 3, 2.5, colour.RGB{0.5, 0.5, 0.5}), Options{Quality: Draft, Workers: 2})
	lights := lamps(rand.New(rand.NewPCG(7, 8)))[3:4]
	lights[0].Frame = looking(r3.Vec{X: 1, Y: 1.2, Z: 1.1}, r3.Vec{X: 3, Y: 2})
	var to Targets
	for i := range fewPlacesRead + 4 {
		at := r3.Vec{X: 0.3 + 0.17*float64(i), Y: 2.5, Z: 0.3 + 0.06*float64(i)}
		to.Points = append(to.Points, Receptor{At: at, Axis: r3.Vec{Z: 1}, Response: Dome}, Receptor{At: at, Axis: r3.Vec{X: 1}, Response: Dome})
	}
	w.allowedRayError = math.Inf(1)
	rough := basis(t, w, lights, to)
	errors := rayErrors(rough, mustSolve(t, w, rough, lights))
	sorted := slices.Sorted(slices.Values(errors))
	last := len(sorted) - 1
	w.allowedRayError = (sorted[last] + sorted[last-1]) / 2
	b := basis(t, w, lights, to)
	worst := slices.Index(errors, sorted[last]) &^ 1
	if want := []int{worst, worst + 1}; !slices.Equal(b.finer.of, want) {
		t.Fatalf("%v are solved closer, want %v", b.finer.of, want)
	}
	levels := Levels{lights[0].Name: {1, 1, 1}}
	for i := range to.Points {
		was, _ := rough.Point(i, levels)
		if is, _ := b.Point(i, levels); (is != was) != slices.Contains(b.finer.of, i) {
			t.Errorf("receptor %d reads %v, and %v where none is solved closer", i, is, was)
		}
	}
	again, err := w.Rebase(t.Context(), b, lights, lights[0].Name)
	if err != nil {
		t.Fatal(err)
	}
	if again.finer.transport != b.finer.transport || !slices.EqualFunc(again.Points, b.Points, func(x, y []colour.RGB) bool { return slices.Equal(x, y) }) {
		t.Error("another basis of the same lights reads otherwise")
	}
}

// mustSolve is the light of some lights by the transport of a basis.
func mustSolve(t *testing.T, w *World, b *Basis, lights []Emitter) *radiosity.Solution {
	var seen []radiosity.Lamp
	for i := range lights {
		seen = append(seen, w.surfaceLampOf(w.newLamp(&lights[i])))
	}
	out, err := b.transport.Solve(t.Context(), seen)
	if err != nil {
		t.Fatal(err)
	}
	return out
}
