package light

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/light/radiosity"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/solid"
)

// boardAt is a silver board about the origin that looks up.
func boardAt(id solid.ID, w, d, lobe float64) solid.Sheet {
	return silver(solid.Sheet{ID: id, Corners: []r3.Vec{{X: -w / 2, Y: -d / 2}, {X: w / 2, Y: -d / 2}, {X: w / 2, Y: d / 2}, {X: -w / 2, Y: d / 2}}}, 0.8, lobe)
}

// overBoard sums what comes of a lamp by a board, lx on it, over places of both that fill them evenly together: the light on each place of the board
// from one of the opening goes on as (n+1)/2pi cos^n about the mirrored way, by the flatter of the two angles.
func overBoard(bvh *solid.BVH, e *Emitter, w, d, power float64, r *Receptor) (sum colour.RGB) {
	const n = 4000
	const step = 1.1673039782614187 // its fifth power is it and one more: four coordinates in steps of its powers fill a cube
	passes := func(from, to r3.Vec) colour.RGB {
		panes, blocked := bvh.Segment(from, to, nil, nil)
		if blocked {
			return colour.RGB{}
		}
		return passed(panes)
	}
	for k := range n {
		var at [4]float64 // from -1/2 to 1/2
		for i := range at {
			at[i] = math.Mod(0.5+float64(k)*math.Pow(step, -float64(i+1)), 1) - 0.5
		}
		on := r3.Vec{X: w * at[0], Y: d * at[1]}
		from := r3.Add(e.Frame.At, r3.Add(r3.Scale(e.Source.Opening.Width*at[2], e.Frame.Right), r3.Scale(e.Source.Opening.Height*at[3], e.Frame.Up())))
		in, out := r3.Sub(on, from), r3.Sub(r.At, on)
		near, far := r3.Norm(in), r3.Norm(out)
		in, out = r3.Scale(1/near, in), r3.Scale(1/far, out)
		lux := e.Source.Intensity(e.Frame.Local(in)) * -in.Z / (near * near)
		cos := r3.Dot(r3.Vec{X: in.X, Y: in.Y, Z: -in.Z}, out)
		bright := (power + 1) / (2 * math.Pi) * math.Pow(max(0, cos), power) * lux / max(out.Z, -in.Z)
		got := bright * out.Z * r.Response.To(-r3.Dot(out, r.Axis)) / (far * far) * w * d / n
		sum = sum.Add(passes(from, on).Times(passes(on, r.At)).Scale(got))
	}
	return sum
}

// What comes by a board is a sum over it and over the lamp, with something in the way before it, after it or nowhere: to two parts in a hundred of
// what would come with nothing in the way, and by its tables to five, where the edge of a shadow falls between their places.
func TestLightByABoardIsASum(t *testing.T) {
	const w, d, lobe = 0.8, 0.6, 30.0
	pane := func(at r3.Vec) solid.Sheet {
		s := sheetAt(2, at, 0, math.Pi/2, 0.5, 0.6)
		s.Front.Direct, s.Back.Direct = colour.RGB{0.9, 0.6, 0.7}, colour.RGB{0.9, 0.6, 0.7}
		return s
	}
	flag := func(at r3.Vec) solid.Sheet { return sheetAt(2, at, 0, math.Pi/2, 0.5, 0.6) }
	free := solid.NewBVH(&solid.Set{})
	in, out := r3.Vec{X: 0.65, Y: 0.2, Z: 0.9}, r3.Vec{X: -0.65, Y: 0.2, Z: 0.9}
	for name, s := range map[string][]solid.Sheet{"free": nil, "lamp past a flag": {flag(in)}, "past a flag": {flag(out)}, "lamp past a pane": {pane(in)}, "past a pane": {pane(out)}} {
		world := build(t, &solid.Set{Sheets: append(s, boardAt(1, w, d, lobe))}, Options{Direct: true})
		for _, o := range []photometry.Opening{{}, face(0.4, 0.3)} {
			e := Emitter{Name: "a", Frame: looking(r3.Vec{X: 1, Y: 0.1, Z: 1.5}, r3.Vec{}), Source: photometry.Source{Flux: 1000, Distribution: photometry.Cosine{}, Opening: o}}
			l := world.newLamp(&e)
			b := &l.boards[0]
			for _, r := range []Receptor{
				{At: r3.Vec{X: -1, Y: -0.1, Z: 1.4}, Axis: r3.Unit(r3.Vec{X: 1, Y: 0.3, Z: -1})}, {At: r3.Vec{X: -0.8, Y: 0.1, Z: 1.9}, Axis: r3.Vec{X: 1}, Response: Dome}, {At: r3.Vec{X: -1.9, Z: 2.4}, Axis: r3.Vec{Z: -1}},
			} {
				want := overBoard(world.bvh, &e, w, d, b.Power, &r)
				whole := overBoard(free, &e, w, d, b.Power, &r).Y()
				for quick, slack := range map[bool]float64{false: 0.02, true: 0.05} {
					tr := &tracer{visibleSums: newVisibleSums(world.bvh), quick: quick}
					got := totalOf(tr.byBoard(l, b, &r))
					for c := range got {
						if !(math.Abs(got[c]-want[c]) <= slack*whole) {
							t.Errorf("%s, %+v to %v, quickly %v: %.5g lx, want %.5g, of %.5g", name, o, r.At, quick, got, want, whole)
							break
						}
					}
				}
			}
		}
	}
}

// The nearer the receptor to a board the finer the table that serves, from the one of four places a side on, and from that of sixteen where something
// may be hidden: its places lie no farther apart than a ray needs to turn by so much of the lobe.
func TestWhichTableOfABoardServes(t *testing.T) {
	const side, power, near = 2.0, 100.0, 3.0 // places may lie 0.16 m apart by the way to the lamp and to the receptor
	b := &litBoard{board: &board{Mirror: solid.Mirror{Corners: boardAt(1, side, 1, 12).Corners, Plane: solid.Plane{N: r3.Vec{Z: 1}}, Power: power}}, near: near}
	asked := -1
	for k := range tableOrders {
		b.tables = append(b.tables, func() []litPlace {
			asked = k
			return nil
		})
	}
	tr := &tracer{visibleSums: newVisibleSums(solid.NewBVH(&solid.Set{}))}
	// A table of n places has gaps of 2 m / (n-1): the distances at which 0.16 m / (1/far + 1/3 m) is that.
	for _, limit := range []struct {
		apart        float64
		finer, else_ int
	}{{side / 31, 3, 3}, {side / 15, 3, 2}, {side / 7, 2, 1}, {side / 3.01, 1, 1}} {
		far := 1 / (0.16/limit.apart - 1/near)
		if far < 0 {
			continue // farther than any
		}
		for at, want := range map[float64]int{0.999 * far: limit.finer, 1.001 * far: limit.else_} {
			if tr.quickly(b, &Receptor{At: r3.Vec{Z: at}, Axis: r3.Vec{Z: -1}}, false); asked != want {
				t.Errorf("from %.3f m table %d is asked, want %d", at, asked, want)
			}
			if tr.quickly(b, &Receptor{At: r3.Vec{Z: at}, Axis: r3.Vec{Z: -1}}, true); asked != max(fewestHidden, want) {
				t.Errorf("past something from %.3f m table %d is asked, want %d", at, asked, max(fewestHidden, want))
			}
		}
	}
}

// The lobe of a board reaches as far aside of the mirrored way as it is wide, by what board and lamp are wide from its middle; from close by
// everywhere.
func TestHowFarALobeReaches(t *testing.T) {
	const spread, size = 0.3, 0.5
	b := &litBoard{board: &board{Mirror: solid.Mirror{Corners: boardAt(1, 0.6, 0.8, 12).Corners, Plane: solid.Plane{N: r3.Vec{Z: 1}}}, least: math.Cos(spread)}}
	for _, o := range []photometry.Opening{{}, face(0.2, 0.1)} {
		lampAt := func(p r3.Vec) *lamp {
			return newLamp(&Emitter{Name: "a", Frame: looking(p, r3.Vec{}), Source: photometry.Source{Flux: 1, Distribution: photometry.Cosine{}, Opening: o}}, 1, 1, 1)
		}
		l := lampAt(r3.Vec{Y: -3, Z: 4}) // 5 m off: its light goes on toward (0, 0.6, 0.8)
		for _, within := range []float64{0, 0.2} {
			limit := spread + math.Asin((size+within)/2) + math.Asin((size+o.Width)/5)
			for turn, want := range map[float64]bool{0: true, limit - 1e-6: true, limit + 1e-6: false, math.Pi: false} {
				sin, cos := math.Sincos(turn)
				if got := b.reaches(l, r3.Vec{X: 2 * sin, Y: 1.2 * cos, Z: 1.6 * cos}, within); got != want {
					t.Errorf("%g rad aside, within %g m, of %+v: %v", turn, within, o, got)
				}
			}
			for far, want := range map[float64]bool{size + within - 0.01: true, size + within + 0.01: false} {
				if got := b.reaches(l, r3.Vec{Y: -0.6 * far, Z: -0.8 * far}, within); got != want {
					t.Errorf("from %g m behind, within %g m: %v", far, within, got)
				}
			}
		}
		for near, want := range map[float64]bool{size + o.Width - 0.01: true, size + o.Width + 0.01: false} {
			if got := b.reaches(lampAt(r3.Vec{Z: near}), r3.Vec{Z: -9}, 0); got != want {
				t.Errorf("behind a board that a lamp of %+v is %g m from: %v", o, near, got)
			}
		}
	}
}

// A patch sees nothing of a lamp by a board that it looks away from or lies behind, nor out of the lobe, nor past a wall.
func TestPatchesSeeBoards(t *testing.T) {
	e := Emitter{Name: "a", Frame: looking(r3.Vec{Y: -2, Z: 2}, r3.Vec{}), Source: photometry.FromCandela(1000, photometry.Uniform{}, photometry.Opening{})}
	facing, away := r3.Unit(r3.Vec{Y: -1, Z: -1}), r3.Unit(r3.Vec{Y: 1, Z: 1})
	block := func(y, z, half float64) []solid.Prism {
		return []solid.Prism{{ID: 2, Base: box(0, y, 2*half, 0.2, 0), Z0: z - half, Z1: z + half}}
	}
	for name, c := range map[string]struct {
		at, normal r3.Vec
		between    []solid.Prism
		want       radiosity.Visibility
	}{
		"in the lobe": {r3.Vec{Y: 2, Z: 2}, facing, nil, radiosity.Unoccluded}, "looking away": {r3.Vec{Y: 2, Z: 2}, away, nil, radiosity.Hidden},
		"behind it": {r3.Vec{Y: 0.1, Z: -0.2}, r3.Vec{Z: 1}, nil, radiosity.Hidden}, "out of the lobe": {r3.Vec{Y: -2, Z: 2}, r3.Unit(r3.Vec{Y: 1, Z: -1}), nil, radiosity.Hidden},
		"past a wall": {r3.Vec{Y: 2, Z: 2}, facing, block(1, 1, 0.9), radiosity.Hidden}, "past a post": {r3.Vec{Y: 2, Z: 2}, facing, block(1, 1, 0.1), radiosity.PartlyOccluded},
		"its lamp past a post": {r3.Vec{Y: 2, Z: 2}, facing, block(-1, 1, 0.1), radiosity.PartlyOccluded},
	} {
		w := build(t, &solid.Set{Sheets: []solid.Sheet{boardAt(1, 1, 1, 12)}, Prisms: c.between}, Options{Direct: true, Workers: 1})
		l := w.newLamp(&e)
		lamp, ok := w.surfaceLampOf(l).(*mirroredLamp)
		if !ok || len(lamp.boards) != 1 {
			t.Fatal("the lamp has no board")
		}
		f := looking(c.at, r3.Add(c.at, c.normal))
		corner := func(x, y float64) r3.Vec {
			return r3.Add(c.at, r3.Add(r3.Scale(x, f.Right), r3.Scale(y, f.Up())))
		}
		if got := lamp.boards[0].setPatch(0, []r3.Vec{corner(-0.1, -0.1), corner(0.1, -0.1), corner(0.1, 0.1), corner(-0.1, 0.1)}, c.normal); got != c.want {
			t.Errorf("%s: %d, want %d", name, got, c.want)
		}
	}
}

// What falls on a patch by a board is what falls on all of its places, however wide it is beside the lobe.
func TestFluxByABoard(t *testing.T) {
	e := Emitter{Name: "a", Frame: looking(r3.Vec{Y: -2, Z: 2}, r3.Vec{}), Source: photometry.FromCandela(1000, photometry.Uniform{}, photometry.Opening{})}
	normal := r3.Unit(r3.Vec{Y: -1, Z: -1})
	at := r3.Vec{Y: 2, Z: 2}
	f := looking(at, r3.Add(at, normal))
	w := build(t, &solid.Set{Sheets: []solid.Sheet{boardAt(1, 1, 1, 12)}}, Options{Direct: true, Workers: 1})
	b := w.surfaceLampOf(w.newLamp(&e)).(*mirroredLamp).boards[0]
	for _, side := range []float64{0.1, 0.5, 1, 2, 4} {
		corner := func(x, y float64) r3.Vec {
			return r3.Add(at, r3.Add(r3.Scale(x*side/2, f.Right), r3.Scale(y*side/2, f.Up())))
		}
		patch := []r3.Vec{corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)}
		b.setPatch(0, patch, normal)
		want := 0.0
		const n = 40
		for k := range n * n {
			place := corner((2*float64(k%n)+1)/n-1, (2*float64(k/n)+1)/n-1)
			want += b.light(0, &Receptor{At: place, Axis: normal}).Y() * side * side / (n * n)
		}
		if got := b.flux(0, patch, false).Y(); !(math.Abs(got/want-1) <= 0.01) {
			t.Errorf("%g lm fall on a patch of %g m by the board, want %g", got, side, want)
		}
	}
}

// By how many points of a face it is known how it lights a board: each way as many as lie a share of the lobe apart, and two more; of one close to the
// board as many as lie apart like the places of its finest table.
func TestPointsOfATable(t *testing.T) {
	const power, side = 100.0, 3.2 // half a width of the lobe is 0.1
	for _, c := range []struct {
		near       float64
		wide, high float64
		points     int
	}{
		{2, 1, 0.5, (4 + 2) * (2 + 2)},       // 0.32 m apart
		{1, 1, 0.5, (7 + 2) * (4 + 2)},       // 0.16 m
		{0.01, 0.45, 0.3, (5 + 2) * (3 + 2)}, // 3.2 m in 32
	} {
		b := &litBoard{board: &board{Mirror: solid.Mirror{Corners: boardAt(1, side, 1, 12).Corners, Plane: solid.Plane{N: r3.Vec{Z: 1}}, Power: power}}, near: c.near}
		e := Emitter{Frame: down(2), Source: photometry.Source{Flux: 1000, Distribution: photometry.Cosine{}, Opening: face(c.wide, c.high)}}
		places := b.table(newLamp(&e, 1, 1, 1), tableOrders[0])
		if len(places) != tableOrders[0]*tableOrders[0] {
			t.Fatalf("%d places", len(places))
		}
		for i := range places {
			if got := len(places[i].rays); got != c.points {
				t.Errorf("from %g m place %d is lit by %d points, want %d", c.near, i, got, c.points)
			}
		}
	}
}

// For single receptors the points of a face that lights a board lie closer: 0.8 of half a width of the lobe apart, as seen from the nearest of the board.
func TestPointsThatLightABoard(t *testing.T) {
	for _, height := range []float64{1, 2, 3} {
		w := build(t, &solid.Set{Sheets: []solid.Sheet{boardAt(1, 2, 2, 12)}}, Options{Direct: true})
		e := Emitter{Frame: down(height), Source: photometry.Source{Flux: 1000, Distribution: photometry.Cosine{}, Opening: face(0.9, 0.4)}}
		l := w.newLamp(&e)
		lobe := math.Sqrt(math.Log(math.Cos(6*radian)) / math.Log(0.5)) // one over the root of the power that falls to a half at 6 degrees
		apart := 0.8 * lobe * height
		if got, want := len(l.boards[0].points), int((math.Ceil(0.9/apart)+2)*(math.Ceil(0.4/apart)+2)); got != want {
			t.Errorf("from %g m it is lit by %d points, want %d", height, got, want)
		}
	}
}
