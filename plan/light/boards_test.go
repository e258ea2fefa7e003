package light

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/solid"
)

// silver is a sheet that mirrors from its front in a lobe, over an angle, degrees.
func silver(s solid.Sheet, rho, lobe float64) solid.Sheet {
	s.Front, s.Back = solid.Skin{Reflect: colour.RGB{rho, rho, rho}, Mirror: 1, Lobe: lobe}, solid.Skin{}
	return s
}

// A board sends out all that it mirrors but for the tail of the lobe, and never more than falls on it.
func TestBoardSendsNoMoreThanFalls(t *testing.T) {
	t.Parallel()
	const side, far, rho = 0.1, 30.0, 0.8
	board := silver(solid.Sheet{ID: 1, Corners: []r3.Vec{{X: -side / 2, Y: -side / 2}, {X: side / 2, Y: -side / 2}, {X: side / 2, Y: side / 2}, {X: -side / 2, Y: side / 2}}}, rho, 0)
	for _, lobe := range []float64{6, 12, 40, 90} {
		board.Front.Lobe = lobe
		w := build(t, &solid.Set{Sheets: []solid.Sheet{board}}, Options{Direct: true})
		for _, slant := range []float64{0, 40, 80} {
			sin, cos := math.Sincos(slant * radian)
			e := Emitter{Name: "a", Frame: looking(r3.Scale(far, r3.Vec{X: sin, Z: cos}), r3.Vec{}), Source: photometry.FromCandela(1000, photometry.Uniform{}, photometry.Opening{})}
			l := w.newLamp(&e)
			tr := &tracer{visibleSums: newVisibleSums(w.bvh)}
			flux := 0.0
			const rings, round = 500, 120
			for i := range rings {
				s, c := math.Sincos((float64(i) + 0.5) * math.Pi / 2 / rings)
				for k := range round {
					y, x := math.Sincos(2 * math.Pi * (float64(k) + 0.5) / round)
					out := r3.Vec{X: s * x, Y: s * y, Z: c}
					r := Receptor{At: r3.Scale(far, out), Axis: r3.Scale(-1, out)}
					flux += rho * totalOf(tr.byBoard(l, &l.boards[0], &r)).Y() * far * far * s * (math.Pi / 2 / rings) * (2 * math.Pi / round)
				}
			}
			falls := rho * 1000 * cos / (far * far) * side * side
			share, power := flux/falls, l.boards[0].Power
			if tail := (power + 1) / (power + 2); share > 1+1e-3 || slant == 0 && math.Abs(share-tail) > 2e-3 || slant == 40 && lobe <= 12 && share < 0.95 {
				t.Errorf("a lobe of %g degrees from %g degrees aside sends %.4f of what it mirrors, and from ahead it should %.4f", lobe, slant, share, tail)
			}
			// cos^power falls to a half at half of the angle.
			close(t, "half", math.Pow(math.Cos(lobe/2*radian), power), 0.5, 1e-12)
		}
	}
}

// A lamp that touches a board, and a receptor that does, have light that is a number.
func TestTouchingABoard(t *testing.T) {
	sheet := solid.Sheet{ID: 1, Corners: []r3.Vec{{Y: -0.5, Z: -0.5}, {Y: 0.5, Z: -0.5}, {Y: 0.5, Z: 0.5}, {Y: -0.5, Z: 0.5}}}
	for _, o := range []photometry.Opening{{}, face(0.4, 0.4), {Form: photometry.Sphere, Width: 0.2}} {
		e := Emitter{Name: "a", Frame: looking(r3.Vec{}, r3.Vec{X: 1}), Source: photometry.Source{Flux: 1000, Distribution: photometry.Cosine{}, Opening: o}}
		to := Targets{Points: []Receptor{{At: r3.Vec{X: 1e-12}, Axis: r3.Vec{Y: 1}}, {At: r3.Vec{X: 1e-6, Y: 0.1}, Axis: r3.Vec{X: -1}}, {At: r3.Vec{X: 1}, Axis: r3.Vec{X: -1}, Response: Dome}}}
		for _, mirroring := range []solid.Sheet{silver(sheet, 0.8, 12), glass(sheet, 0.8)} {
			b := basis(t, build(t, &solid.Set{Sheets: []solid.Sheet{mirroring}}, Options{}), []Emitter{e}, to)
			for i := range to.Points {
				if y := by(b, i, Mirrored).Y(); math.IsNaN(y) || math.IsInf(y, 0) || y < 0 {
					t.Errorf("%v, receptor %d: %g lx", o, i, y)
				}
			}
		}
	}
}

// The narrower its lobe, the more a board is a flat mirror.
func TestNarrowBoardIsAMirror(t *testing.T) {
	sheet := solid.Sheet{ID: 1, Corners: []r3.Vec{{Y: -2, Z: -2}, {Y: 2, Z: -2}, {Y: 2, Z: 2}, {Y: -2, Z: 2}}}
	e := Emitter{Name: "a", Frame: looking(r3.Vec{X: 1, Y: -0.6}, r3.Vec{}), Source: photometry.Source{Flux: 1000, Distribution: photometry.Cosine{}, Opening: face(0.5, 0.5)}}
	at := Targets{Points: []Receptor{{At: r3.Vec{X: 1, Y: 0.6, Z: 0.1}, Axis: r3.Vec{X: -1}}}}
	mirrored := by(basis(t, build(t, &solid.Set{Sheets: []solid.Sheet{glass(sheet, 0.8)}}, Options{}), []Emitter{e}, at), 0, Mirrored).Y()
	last := math.Inf(1)
	for _, lobe := range []float64{24, 12, 6} {
		got := by(basis(t, build(t, &solid.Set{Sheets: []solid.Sheet{silver(sheet, 0.8, lobe)}}, Options{}), []Emitter{e}, at), 0, Mirrored).Y()
		off := math.Abs(got/mirrored - 1)
		if off > last/2 || off > 0.3 {
			t.Errorf("a lobe of %g degrees is %.1f %% from a mirror, one twice as wide %.1f %%", lobe, 100*off, 100*last)
		}
		last = off
	}
}

// Fields by boards are those of receptors, in furnished rooms and past what stands in the way.
func TestBoardFieldsAgreeWithReceptors(t *testing.T) {
	t.Parallel()
	r := rand.New(rand.NewPCG(95, 96))
	for scene := range cases(4, 1) {
		s, lights := room(r), lamps(r)
		for k, lobe := range []float64{12, 40} {
			at := r3.Vec{X: 1 + 6*r.Float64(), Y: 1 + 6*r.Float64(), Z: 0.8 + r.Float64()}
			s.Sheets = append(s.Sheets, silver(sheetAt(solid.ID(900+k), at, 2*math.Pi*r.Float64(), 0.6*r.Float64(), 1, 1), 0.8, lobe))
		}
		floor := floorAt(0.013, 0.017, 0.4, 8, 23)
		w := build(t, s, Options{Direct: true})
		to := Targets{Lattices: []Lattice{floor}}
		var index []int
		for range 150 {
			i, j := r.IntN(floor.NU), r.IntN(floor.NV)
			if _, in := w.bvh.Inside(floor.At(i, j)); !in {
				to.Points, index = append(to.Points, floor.Receptor(i, j)), append(index, j*floor.NU+i)
			}
		}
		b := basis(t, w, lights, to)
		off, sum := 0.0, 0.0
		for k := range lights {
			l := w.newLamp(&lights[k])
			field, err := w.boardField(t.Context(), &floor, l)
			if err != nil {
				t.Fatal(err)
			}
			for p, n := range index {
				want := 0.0
				for i, term := range b.Terms {
					if term.Light == lights[k].Name && term.Path == Mirrored {
						want += b.Points[i][p].Y()
					}
				}
				off, sum = off+math.Abs(float64(field[n])-want), sum+want
			}
		}
		if off > 0.02*sum || sum == 0 {
			t.Errorf("scene %d: the fields by boards are %.2f %% off", scene, 100*off/sum)
		}
	}
}

// disc is a sheet of twelve corners about a place, that looks along z.
func disc(id solid.ID, at r3.Vec, radius float64) (s solid.Sheet) {
	const sides = 12
	s.ID = id
	for i := range sides {
		y, x := math.Sincos(2 * math.Pi * float64(i) / sides)
		s.Corners = append(s.Corners, r3.Add(at, r3.Vec{X: radius * x, Y: radius * y}))
	}
	return s
}

// A round board is as large as it is: how far places are from it, and fields by the tables as receptors by their rules, with something
// in the way and without.
func TestRoundBoard(t *testing.T) {
	const radius = 0.4
	round := silver(disc(1, r3.Vec{}, radius), 0.8, 30)
	flag := sheetAt(2, r3.Vec{X: 0.5, Z: 1}, 0, math.Pi/2, 0.5, 0.6)
	e := Emitter{Name: "a", Frame: looking(r3.Vec{X: 1, Z: 1.5}, r3.Vec{}), Source: photometry.FromCandela(1000, photometry.Uniform{}, photometry.Opening{})}
	for name, s := range map[string]*solid.Set{"free": {Sheets: []solid.Sheet{round}}, "past a flag": {Sheets: []solid.Sheet{round, flag}}} {
		w := build(t, s, Options{Direct: true})
		b := &w.boards[0]
		close(t, "beside a corner", b.distance(r3.Vec{X: -radius - 0.3, Z: 0.4}), 0.5, 1e-12)
		close(t, "over it", b.distance(r3.Vec{X: -0.2, Y: 0.2, Z: 0.4}), 0.4, 1e-12)
		close(t, "across", b.side(), 2*radius, 1e-12)
		exactly, quickly := w.Evaluator([]Emitter{e}, Levels{"a": {1, 1, 1}}), w.QuickEvaluator([]Emitter{e}, Levels{"a": {1, 1, 1}})
		bare := build(t, &solid.Set{Sheets: []solid.Sheet{flag}}, Options{Direct: true}).Evaluator([]Emitter{e}, Levels{"a": {1, 1, 1}})
		off, sum := 0.0, 0.0
		for i := range 20 {
			r := Receptor{At: r3.Vec{X: -0.4 - 0.05*float64(i), Y: 0.02 * float64(i), Z: 1.2}, Axis: r3.Vec{Z: -1}}
			off, sum = off+math.Abs(quickly(r)-exactly(r)), sum+exactly(r)
			if exactly(r) <= bare(r) && name == "free" {
				t.Errorf("nothing comes by the board to %v", r.At)
			}
		}
		if off > 0.01*sum || !(sum > 0) {
			t.Errorf("%s: by tables light is %.2f %% off", name, 100*off/sum)
		}
	}
}

// What comes straight asks for nothing of boards and mirrors, and for tables of how boards are lit only quick rules ask.
func TestStraightLightMakesNoTables(t *testing.T) {
	board := silver(solid.Sheet{ID: 1, Corners: []r3.Vec{{Y: -0.5, Z: -0.5}, {Y: 0.5, Z: -0.5}, {Y: 0.5, Z: 0.5}, {Y: -0.5, Z: 0.5}}}, 0.8, 12)
	e := Emitter{Name: "a", Frame: looking(r3.Vec{X: 1}, r3.Vec{}), Source: photometry.Source{Flux: 1000, Distribution: photometry.Cosine{}, Opening: face(0.4, 0.4)}}
	r := Receptor{At: r3.Vec{X: 0.5}, Axis: r3.Vec{X: -1}}
	work := func(s *solid.Set, ask func(w *World)) float64 {
		w := build(t, s, Options{Direct: true})
		return testing.AllocsPerRun(3, func() { ask(w) })
	}
	straight := func(w *World) { Straight(w, &e, &r) }
	bare, lit := &solid.Set{}, &solid.Set{Sheets: []solid.Sheet{board}}
	if a, b := work(bare, straight), work(lit, straight); b > a+5 {
		t.Errorf("straight light takes %g pieces of memory, and %g with a board", a, b)
	}
	exact := work(lit, func(w *World) { w.Evaluator([]Emitter{e}, Levels{"a": {1, 1, 1}})(r) })
	quick := work(lit, func(w *World) { w.QuickEvaluator([]Emitter{e}, Levels{"a": {1, 1, 1}})(r) })
	if exact > quick/2 {
		t.Errorf("exact rules take %g pieces of memory, quick ones %g", exact, quick)
	}
}

// A screen before one half of a board, as a receptor sees it, takes half of what comes by the board where its halves are alike; beside the way it takes
// nothing, and before all of it everything.
func TestHalfOfABoardIsHidden(t *testing.T) {
	board := silver(solid.Sheet{ID: 1, Corners: []r3.Vec{{Y: -1, Z: -1}, {Y: 1, Z: -1}, {Y: 1, Z: 1}, {Y: -1, Z: 1}}}, 0.8, 24)
	e := Emitter{Name: "a", Frame: looking(r3.Vec{X: 1, Y: -0.6}, r3.Vec{}), Source: photometry.Source{Flux: 1000, Distribution: photometry.Cosine{}, Opening: face(0.2, 0.2)}}
	for _, response := range []Response{Cosine, Dome} {
		at := Targets{Points: []Receptor{{At: r3.Vec{X: 1, Y: 0.6}, Axis: r3.Vec{X: -1}, Response: response}}}
		past := func(low, high float64) float64 { // a screen before the receptor, from a height to another
			s := &solid.Set{Sheets: []solid.Sheet{board}}
			if low < high {
				s.Sheets = append(s.Sheets, solid.Sheet{ID: 2, Corners: []r3.Vec{{X: 0.8, Y: 0.1, Z: low}, {X: 0.8, Y: 1.1, Z: low}, {X: 0.8, Y: 1.1, Z: high}, {X: 0.8, Y: 0.1, Z: high}}})
			}
			return by(basis(t, build(t, s, Options{}), []Emitter{e}, at), 0, Mirrored).Y()
		}
		open := past(0, 0)
		for _, c := range []struct{ low, high, share float64 }{{-1, 0, 0.5}, {0, 1, 0.5}, {-1, 1, 0}, {0.3, 1, 1}} {
			if got := past(c.low, c.high); !(math.Abs(got/open-c.share) <= 2e-3) {
				t.Errorf("response %v, a screen from %g to %g m: %.4f of what comes by the board, want %g", response, c.low, c.high, got/open, c.share)
			}
		}
	}
}
