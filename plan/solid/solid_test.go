package solid

import (
	"fmt"
	"math"
	"math/rand/v2"
	"reflect"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
)

// block is an upright box.
func block(id ID, x0, y0, x1, y1, z0, z1 float64) Prism {
	return Prism{ID: id, Base: []r2.Vec{{X: x0, Y: y0}, {X: x1, Y: y0}, {X: x1, Y: y1}, {X: x0, Y: y1}}, Z0: z0, Z1: z1}
}

// pane is an upright sheet across x, from y0 to y1; its front looks to greater x.
func pane(id ID, x, y0, y1, z0, z1, through float64) Sheet {
	clear := Skin{Direct: colour.RGB{through, through, through}}
	return Sheet{ID: id, Front: clear, Back: clear, Corners: []r3.Vec{
		{X: x, Y: y0, Z: z0}, {X: x, Y: y1, Z: z0}, {X: x, Y: y1, Z: z1}, {X: x, Y: y0, Z: z1}}}
}

// turned is the set turned about z and moved.
func turned(s *Set, degrees float64, by r3.Vec) *Set {
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	move := func(p r3.Vec) r3.Vec {
		return r3.Vec{X: cos*p.X - sin*p.Y + by.X, Y: sin*p.X + cos*p.Y + by.Y, Z: p.Z + by.Z}
	}
	t := &Set{}
	for _, p := range s.Prisms {
		base := make([]r2.Vec, len(p.Base))
		for i, c := range p.Base {
			m := move(r3.Vec{X: c.X, Y: c.Y})
			base[i] = r2.Vec{X: m.X, Y: m.Y}
		}
		p.Base, p.Z0, p.Z1 = base, p.Z0+by.Z, p.Z1+by.Z
		t.Prisms = append(t.Prisms, p)
	}
	for _, h := range s.Sheets {
		corners := make([]r3.Vec, len(h.Corners))
		for i, c := range h.Corners {
			corners[i] = move(c)
		}
		h.Corners = corners
		t.Sheets = append(t.Sheets, h)
	}
	return t
}

// A wall cut into pieces round a window must be as tight as the wall, also for a ray that runs
// exactly in the plane where two pieces meet, at any angle of the wall.
func TestNoLightBetweenNeighbours(t *testing.T) {
	wall := &Set{Prisms: []Prism{
		block(1, 0, 0, 1, 0.2, 0, 2.5), block(2, 1, 0, 2, 0.2, 0, 0.9),
		block(3, 1, 0, 2, 0.2, 2.1, 2.5), block(4, 2, 0, 3, 0.2, 0, 2.5)}}
	for _, degrees := range []float64{0, 90, 180, 270, 27, 133.7, 300.01} {
		s := turned(wall, degrees, r3.Vec{X: 0.3, Y: -7.1, Z: 0.15})
		b := NewBVH(s)
		place := func(x, y, z float64) r3.Vec {
			p := turned(&Set{Sheets: []Sheet{{Corners: []r3.Vec{{X: x, Y: y, Z: z}}}}}, degrees, r3.Vec{X: 0.3, Y: -7.1, Z: 0.15})
			return p.Sheets[0].Corners[0]
		}
		for _, c := range []struct {
			x, z    float64
			blocked bool
		}{
			{1, 0.5, true}, {2, 0.5, true}, {1, 2.3, true}, {2, 2.3, true}, // in the joints
			{1.5, 1.5, false}, {1.5, 0.4, true}, {0.5, 1.5, true},
		} {
			if got := b.Blocked(place(c.x, -1, c.z), place(c.x, 2, c.z), nil); got != c.blocked {
				t.Errorf("turned %v°, x %v z %v: blocked %v", degrees, c.x, c.z, got)
			}
		}
		// Along a jamb one side owns the face and the other does not.
		if b.Blocked(place(1, -1, 1.5), place(1, 2, 1.5), nil) == b.Blocked(place(2, -1, 1.5), place(2, 2, 1.5), nil) {
			t.Errorf("turned %v°: the two jambs of a window are alike", degrees)
		}
	}
}

func TestSheetsShareARim(t *testing.T) {
	for _, degrees := range []float64{0, 90, 180, 31.4} {
		s := turned(&Set{Sheets: []Sheet{pane(1, 1, 0, 1, 0, 2, 0.9), pane(2, 1, 1, 2, 0, 2, 0.9)}}, degrees, r3.Vec{})
		sin, cos := math.Sincos(degrees * math.Pi / 180)
		place := func(x, y float64) r3.Vec { return r3.Vec{X: cos*x - sin*y, Y: sin*x + cos*y, Z: 1} }
		passed, blocked := NewBVH(s).Segment(place(0, 1), place(2, 1), nil, nil)
		if blocked || len(passed) != 1 {
			t.Errorf("turned %v°: through a shared rim: %v %v, want one pane", degrees, passed, blocked)
		}
	}
}

func TestStartsOnASurface(t *testing.T) {
	for _, degrees := range []float64{0, 45, 71.3} {
		s := turned(&Set{
			Prisms: []Prism{block(1, 0, 0, 1, 1, 0, 1)},
			Sheets: []Sheet{pane(2, 3, -1, 2, 0, 2, 0)},
		}, degrees, r3.Vec{X: 12.3, Y: 4.56})
		b := NewBVH(s)
		sin, cos := math.Sincos(degrees * math.Pi / 180)
		turn := func(x, y, z float64) r3.Vec { return r3.Vec{X: cos*x - sin*y, Y: sin*x + cos*y, Z: z} }
		place := func(x, y, z float64) r3.Vec { return r3.Add(turn(x, y, z), r3.Vec{X: 12.3, Y: 4.56}) }
		side, sheet := place(1, 0.4, 0.5), place(3, 0.4, 0.5)
		if h, ok := b.First(side, turn(1, 0, 0), nil); !ok || h.ID != 2 || !(math.Abs(h.T-2) <= 1e-9) || h.Front {
			t.Errorf("turned %v°: leaving a face: %+v %v, want the back of 2 at 2 m", degrees, h, ok)
		}
		if h, ok := b.First(side, turn(-1, 0, 0), nil); !ok || h.ID != 1 || h.T > 1e-9 {
			t.Errorf("turned %v°: going into a face: %+v %v, want 1 at once", degrees, h, ok)
		}
		if h, ok := b.First(sheet, turn(-1, 0, 0), nil); !ok || h.ID != 1 || !(math.Abs(h.T-2) <= 1e-9) {
			t.Errorf("turned %v°: leaving a sheet: %+v %v, want 1 at 2 m", degrees, h, ok)
		}
		if b.Blocked(side, sheet, nil) {
			t.Errorf("turned %v°: blocked between two surfaces that see each other", degrees)
		}
		if !b.Blocked(place(0, 0.4, 0.5), sheet, nil) {
			t.Errorf("turned %v°: not blocked through the block from its far face", degrees)
		}
		if b.Blocked(place(1, -1, 0.5), place(1, 0, 0.5), nil) {
			t.Errorf("turned %v°: blocked on the way to a corner", degrees)
		}
		if _, in := b.Inside(side); in {
			t.Errorf("turned %v°: a place on a face counts as inside", degrees)
		}
	}
}

func TestPanesInOrder(t *testing.T) {
	tinted := pane(7, 2, -1, 1, 0, 2, 0)
	tinted.Back.Direct = colour.RGB{0.5, 0.4, 0.3} // met by light that goes to greater x
	b := NewBVH(&Set{Sheets: []Sheet{pane(9, 3, -1, 1, 0, 2, 0.8), tinted, pane(8, 1, -1, 1, 0, 2, 0.9)}})
	from, to := r3.Vec{Z: 1}, r3.Vec{X: 4, Z: 1}
	passed, blocked := b.Segment(from, to, nil, nil)
	want := []Pane{
		{8, 1, colour.RGB{0.9, 0.9, 0.9}, 1}, {7, 2, colour.RGB{0.5, 0.4, 0.3}, 1}, {9, 3, colour.RGB{0.8, 0.8, 0.8}, 1}}
	if blocked || !reflect.DeepEqual(passed, want) {
		t.Errorf("panes %v %v, want %v", passed, blocked, want)
	}
	if _, blocked = b.Segment(to, from, nil, nil); !blocked {
		t.Error("light passed the dark side of a sheet")
	}
	if passed, _ = b.Segment(to, from, []ID{7}, passed[:1]); len(passed) != 3 || passed[1].ID != 9 {
		t.Errorf("panes %v, want what was there, then 9 and 8", passed)
	}
	if h, ok := b.FirstOpaque(to, r3.Vec{X: -1}, nil); !ok || h.ID != 7 {
		t.Errorf("first opaque %+v %v, want 7", h, ok)
	}
	if h, ok := b.First(to, r3.Vec{X: -1}, nil); !ok || h.ID != 9 || !h.Front {
		t.Errorf("first %+v %v, want the front of 9", h, ok)
	}
}

func TestStartsInside(t *testing.T) {
	b := NewBVH(&Set{Prisms: []Prism{block(1, 0, 0, 1, 1, 0, 1), block(2, 0, 0, 2, 2, 0, 2)}})
	h, ok := b.First(r3.Vec{X: 0.5, Y: 0.5, Z: 0.5}, r3.Vec{Y: 1}, nil)
	if !ok || h.ID != 1 || h.T != 0 || h.Normal != (r3.Vec{Y: -1}) {
		t.Errorf("first from inside: %+v %v, want 1 at once, facing the ray", h, ok)
	}
	if id, ok := b.Inside(r3.Vec{X: 0.5, Y: 0.5, Z: 0.5}); !ok || id != 1 {
		t.Errorf("inside %d %v, want the first of the set", id, ok)
	}
}

// Solids without a body must neither stop light nor disturb the others.
func TestDegenerateSolids(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	s := &Set{
		Prisms: []Prism{
			{}, block(1, 0, 0, 0, 1, 0, 1), block(2, 0, 0, 1, 1, 1, 1), block(3, 0, 0, 1, 1, 2, 0),
			block(4, nan, 0, 1, 1, 0, 1), block(5, 0, 0, inf, 1, 0, 1), block(6, 0, 0, 1, 1, 0, nan),
			{ID: 7, Base: []r2.Vec{{}, {X: 1}}, Z1: 1}},
		Sheets: []Sheet{{}, pane(8, 1, 0, 0, 0, 1, 0), pane(9, nan, 0, 1, 0, 1, 0), pane(10, 0, 0, inf, 0, 1, 0)},
	}
	b := NewBVH(s)
	if b.Blocked(r3.Vec{X: -1, Y: 0.4, Z: 0.5}, r3.Vec{X: 3, Y: 0.5, Z: 0.4}, nil) {
		t.Error("a degenerate solid stops light")
	}
	s.Prisms = append(s.Prisms, block(11, 2, 0, 2.1, 1, 0, 1))
	h, ok := NewBVH(s).First(r3.Vec{X: -1, Y: 0.4, Z: 0.5}, r3.Vec{X: 1}, nil)
	if !ok || h.ID != 11 {
		t.Errorf("first %+v %v, want 11", h, ok)
	}
}

// A base given the wrong way round is the same prism.
func TestClockwiseBase(t *testing.T) {
	p := block(1, 0, 0, 1, 1, 0, 1)
	p.Base[1], p.Base[3] = p.Base[3], p.Base[1]
	h, ok := NewBVH(&Set{Prisms: []Prism{p}}).First(r3.Vec{X: -1, Y: 0.5, Z: 0.5}, r3.Vec{X: 1}, nil)
	if !ok || h.Normal != (r3.Vec{X: -1}) {
		t.Errorf("hit %+v %v, want the face to lesser x", h, ok)
	}
}

// Many solids at one place leave nothing to split by.
func TestManyAtOnePlace(t *testing.T) {
	s := &Set{}
	for i := range 5000 {
		s.Prisms = append(s.Prisms, block(ID(5000-i), 0, 0, 1, 1, 0, 1))
	}
	b := NewBVH(s)
	h, ok := b.First(r3.Vec{X: -1, Y: 0.5, Z: 0.5}, r3.Vec{X: 1}, []ID{5000, 4999})
	if !ok || h.ID != 4998 {
		t.Errorf("hit %+v %v, want the first of the set that is not skipped", h, ok)
	}
}

func TestSameTreeEachTime(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	s := randomSet(r, 500)
	if a, b := NewBVH(s), NewBVH(s); !reflect.DeepEqual(a, b) {
		t.Error("two trees of one set differ")
	}
}

func TestSectionAt(t *testing.T) {
	s := &Set{Prisms: []Prism{block(1, 0, 0, 1, 1, 0, 0.75), block(2, 0, 0, 1, 1, 0.75, 2), block(3, 0, 0, 1, 1, 0, 2)}}
	for _, c := range []struct {
		z    float64
		want []ID
	}{{-0.1, nil}, {0, []ID{1, 3}}, {0.75, []ID{2, 3}}, {2, nil}} {
		var got []ID
		for _, f := range s.SectionAt(c.z) {
			got = append(got, f.ID)
		}
		if !reflect.DeepEqual(got, c.want) {
			t.Errorf("section at %v: %v, want %v", c.z, got, c.want)
		}
	}
}

func TestQueriesDoNotAllocate(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 8))
	b := NewBVH(randomSet(r, 60))
	panes := make([]Pane, 0, 64)
	skip := []ID{3}
	from, to, d := randomPoint(r), randomPoint(r), randomDirection(r)
	for name, query := range map[string]func(){
		"First":       func() { b.First(from, d, skip) },
		"FirstOpaque": func() { b.FirstOpaque(from, d, skip) },
		"Blocked":     func() { b.Blocked(from, to, skip) },
		"Segment":     func() { b.Segment(from, to, skip, panes) },
		"Inside":      func() { b.Inside(from) },
	} {
		if n := testing.AllocsPerRun(100, query); n != 0 {
			t.Errorf("%s allocates %v times", name, n)
		}
	}
}

func ExampleBVH_Segment() {
	window := Sheet{ID: 1, Name: "street", Corners: []r3.Vec{{Y: -1}, {Y: 1}, {Y: 1, Z: 2}, {Y: -1, Z: 2}}}
	window.Front.Direct = colour.RGB{0.88, 0.88, 0.88}
	window.Back = window.Front
	table := Prism{ID: 2, Name: "table", Base: []r2.Vec{{X: 1}, {X: 2}, {X: 2, Y: 1}, {X: 1, Y: 1}}, Z1: 0.75}
	set := NewBVH(&Set{Prisms: []Prism{table}, Sheets: []Sheet{window}})

	lamp := r3.Vec{X: -3, Y: 0.5, Z: 1.5}
	panes, blocked := set.Segment(lamp, r3.Vec{X: 3, Y: 0.5, Z: 1.2}, nil, nil)
	fmt.Println(panes[0].ID, panes[0].Factor()[1], blocked)
	_, blocked = set.Segment(lamp, r3.Vec{X: 3, Y: 0.5}, nil, nil)
	fmt.Println(blocked)
	// Output:
	// 1 0.88 false
	// true
}

func benchmarkSet(n int) *BVH { return NewBVH(randomSet(rand.New(rand.NewPCG(9, uint64(n))), n)) }

func BenchmarkBuild(b *testing.B) {
	for _, n := range []int{55, 2000} {
		s := randomSet(rand.New(rand.NewPCG(9, uint64(n))), n)
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				NewBVH(s)
			}
		})
	}
}

func BenchmarkQueries(b *testing.B) {
	for _, n := range []int{55, 2000} {
		set := benchmarkSet(n)
		r := rand.New(rand.NewPCG(10, 10))
		points := make([]r3.Vec, 1025)
		ways := make([]r3.Vec, 1024)
		for i := range points {
			points[i] = randomPoint(r)
		}
		for i := range ways {
			ways[i] = randomDirection(r)
		}
		b.Run(fmt.Sprintf("First/%d", n), func(b *testing.B) {
			b.ReportAllocs()
			for i := 0; b.Loop(); i++ {
				set.First(points[i&1023], ways[i&1023], nil)
			}
		})
		b.Run(fmt.Sprintf("Segment/%d", n), func(b *testing.B) {
			b.ReportAllocs()
			panes := make([]Pane, 0, 64)
			for i := 0; b.Loop(); i++ {
				set.Segment(points[i&1023], points[i&1023+1], nil, panes)
			}
		})
	}
}
