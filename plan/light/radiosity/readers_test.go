package radiosity

import (
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/light/receptor"
	"scrimshaw/plan/solid"
)

// The standard error of a sum of runs is that of eight of a mean: by the textbook's estimate of the variance.
func TestVarianceOfRuns(t *testing.T) {
	if got, want := variance(&[runs]float64{2, 4, 4, 4, 5, 5, 7, 9}), 8*32./7; !(math.Abs(got-want) <= 1e-12) {
		t.Errorf("the variance is %g, want %g", got, want)
	}
	if got := variance(&[runs]float64{3, 3, 3, 3, 3, 3, 3, 3}); got != 0 {
		t.Errorf("runs that are alike have a variance of %g", got)
	}
}

// rays of a place: two on each of the first patch's first and second element, some on the second patch and through glass.
func readingOf(t *testing.T, hits []uint32) (*gatherer, *place) {
	tr := handmade(1, boardFace(t, r3.Vec{}, r3.Vec{X: 2}, r3.Vec{Y: 1}, 2, 1, 0.5))
	tr.filtered = []filtered{{element: 8, factor: grey(0.5)}}
	tr.quality.Matters = 0.1
	bright := make([]float32, 16)
	for e := range bright {
		bright[e] = float32(e)
	}
	direct := make(directLux, 12)
	for e := range direct {
		direct[e] = float32(2 * e)
	}
	s := &Solution{t: tr, lamps: 1, bright: [][]float32{bright}, hot: make([]hotParts, 1), direct: []directLux{direct}, uneven: [][]bool{{false, true, false}}, halfDifferences: [][]float32{{0, 2, 3}}}
	g := &gatherer{s: s, lamps: []Lamp{&slope{lux: 10, rise: 1}}, shares: make([]float64, 16), known: make([]bool, 16), exact: make([]float64, 16), whole: make([]bool, 16), local: []map[int]colour.RGB{{}}, rays: make([]float64, len(hits))}
	p := &place{hits: hits, at: make([]r3.Vec, len(hits)), receptors: []int{0}}
	for r := range g.rays {
		g.rays[r] = 1 / float64(len(hits))
		p.at[r] = r3.Vec{X: float64(r)}
	}
	g.addShares(p)
	return g, p
}

// What rays of patches put a reading off by counts once for each patch, with all that is seen of it, and of different ones by squares.
func TestSpreadOfLinks(t *testing.T) {
	g, p := readingOf(t, []uint32{4, 5, 4, 9, 12, black, 8, 8, black, black})
	if !slices.Equal(g.met, []uint32{4, 5, 8, 9, 12}) || !(math.Abs(g.shares[4]-0.2) <= 1e-15) || g.shares[0] != 0 {
		t.Errorf("met are %v, with shares %v", g.met, g.shares)
	}
	want := 0.3*2*0.3*2 + 0.4*3*0.4*3
	if got := g.linkSpread(g.s.t, 0); !(math.Abs(got-want) <= 1e-12) {
		t.Errorf("the square is %g, want %g", got, want)
	}
	// Rays come in eight runs; of ten the first, fifth, sixth and so on fall into these.
	var sums [runs]float64
	for r, h := range p.hits {
		if h != black {
			sums[r*8/10] += 0.1 * float64(h)
		}
	}
	if got := g.spread(p, 0); !(math.Abs(got-math.Sqrt(want+variance(&sums))) <= 1e-9) {
		t.Errorf("the spread is %g, want %g", got, math.Sqrt(want+variance(&sums)))
	}
}

// What rays of cells put a reading off by counts once for each cell, with all that is seen of it.
func TestSpreadOfCells(t *testing.T) {
	g, p := readingOf(t, []uint32{4, 4, 4, 5})
	g.s.t.cells = []cell{{element: 4}, {element: 5}}
	g.s.cells = [][]cellLight{{{exitance: grey(8), off: 3}, {exitance: grey(8), off: 4}}}
	p.cellOf = []int32{0, 0, -1, 1}
	g.shares, g.met = make([]float64, 16), nil
	g.addShares(p)
	if !slices.Equal(g.met, []uint32{4}) || g.shares[4] != 0.25 {
		t.Errorf("cells left out, met are %v", g.met)
	}
	sums := [runs]float64{0: 2, 2: 2, 4: 1, 6: 2} // the first, third, fifth and seventh run have one ray each
	want := math.Sqrt(0.5*3*0.5*3 + 0.25*4*0.25*4 + 0.25*2*0.25*2 + variance(&sums))
	if got := g.spread(p, 0); !(math.Abs(got-want) <= 1e-9) {
		t.Errorf("the spread is %g, want %g", got, want)
	}
	if got := g.spread(p, 0); !(math.Abs(got-want) <= 1e-9) {
		t.Errorf("the next time it is %g, want %g", got, want)
	}
}

// Of an element that the edge of a shadow runs over counts what comes where rays have met it, if three have and it matters; of what is seen
// as a whole, is even, or hardly counts, nothing is changed.
func TestLightWhereRaysHaveMet(t *testing.T) {
	three := []uint32{4, 4, 4, 8, 8, 8}
	for _, c := range []struct {
		name string
		hits []uint32
		set  func(g *gatherer)
		want bool
	}{
		{"seen in part", three, func(*gatherer) {}, true},
		{"two rays", []uint32{4, 4, 8, 8, 8, 8}, func(*gatherer) {}, false},
		{"known in part", three, func(g *gatherer) { g.known[4] = true }, true},
		{"seen whole", three, func(g *gatherer) { g.known[4], g.whole[4] = true, true }, false},
		{"even", three, func(g *gatherer) { g.s.uneven[0][1] = false }, false},
		{"of no matter", three, func(g *gatherer) { g.s.t.quality.Matters = 0.34 }, false},
		{"just of matter", three, func(g *gatherer) { g.s.t.quality.Matters = 0.33 }, true},
		{"a hot one", three, func(g *gatherer) { g.s.hot[0].of = map[uint32][2]int{4: {}} }, false},
		{"a hot one met often", append(slices.Repeat([]uint32{4}, 16), 8, 8, 8), func(g *gatherer) { g.s.hot[0].of = map[uint32][2]int{4: {}} }, true},
		{"a hot one met less", append(slices.Repeat([]uint32{4}, 15), 8, 8, 8), func(g *gatherer) { g.s.hot[0].of = map[uint32][2]int{4: {}} }, false},
		{"dark", three, func(g *gatherer) { clear(g.s.bright[0]) }, false},
	} {
		g, p := readingOf(t, c.hits)
		c.set(g)
		put := g.shadowCorrection(p, 0)
		n := 0.0
		for _, h := range c.hits {
			if h == 4 {
				n++
			}
		}
		// At x = 0, 1, 2 m ... come 10, 11, 12 lx ..., and 8 on all of the element; half of that is returned.
		want := map[uint32]colour.RGB{}
		if c.want {
			want[4] = grey(0.5 * (10 + (n-1)/2 - 8))
		}
		if len(put) != len(want) || !(math.Abs(put[4][1]-want[4][1]) <= 1e-9) {
			t.Errorf("%s: put right by %v, want %v", c.name, put, want)
		}
	}
}

// What a receptor would get of a patch with nothing in the way is about its form factor, in the bounds of how wide it is seen.
func TestRoughFormFactors(t *testing.T) {
	tr := handmade(1, boardFace(t, r3.Vec{X: -0.5, Y: -0.5}, r3.Vec{X: 1}, r3.Vec{Y: 1}, 1, 1, 0.5))
	for _, c := range []struct {
		r    receptor.Receptor
		want float64
	}{
		{receptor.Receptor{At: r3.Vec{Z: 10}, Axis: r3.Vec{Z: -1}}, rectangleFactor(0.5, 0.5, 10)},
		{receptor.Receptor{At: r3.Vec{X: 30, Z: 40}, Axis: r3.Unit(r3.Vec{X: -3, Z: -4})}, 0.8 / 2500 / math.Pi},
		{receptor.Receptor{At: r3.Vec{X: 30, Z: 40}, Axis: r3.Unit(r3.Vec{X: -3, Z: -4}), Response: receptor.Dome}, 0.8 / 2500 / math.Pi},
		{receptor.Receptor{At: r3.Vec{Z: 40}, Axis: r3.Unit(r3.Vec{Z: 1}), Response: receptor.Dome}, 0},
		{receptor.Receptor{At: r3.Vec{Z: -10}, Axis: r3.Vec{Z: 1}}, 0},
	} {
		if got := tr.mesh.rough(&c.r, &tr.patches[1]); !(math.Abs(got-c.want) <= 0.01*c.want+1e-7) {
			t.Errorf("a receptor %+v gets %g, want %g", c.r, got, c.want)
		}
	}
}

// A figure that a receptor sees through panes counts by them, apart from what it sees straight.
func TestFactorsThroughPanes(t *testing.T) {
	square := func(z, from, to float64) []r3.Vec {
		return []r3.Vec{{X: from, Y: -9, Z: z}, {X: to, Y: -9, Z: z}, {X: to, Y: 9, Z: z}, {X: from, Y: 9, Z: z}}
	}
	set := &solid.Set{Sheets: []solid.Sheet{{ID: 7, Corners: square(1, 0, 9), Front: solid.Skin{Direct: grey(0.5)}, Back: solid.Skin{Direct: grey(0.5)}}}}
	tr := handmade(1, boardFace(t, r3.Vec{X: -0.5, Y: -0.25, Z: 2}, r3.Vec{Y: 0.5}, r3.Vec{X: 1}, 1, 1, 0.5))
	tr.mesh.bvh = solid.NewBVH(set)
	g := &gatherer{s: &Solution{t: tr}, view: solid.Viewer{BVH: tr.mesh.bvh}}
	figure := tr.mesh.faces[0].corners
	half := rectangleFactor(0.5, 0.25, 2) / 2
	r := &receptor.Receptor{Axis: r3.Vec{Z: 1}}
	sum, whole := g.factor(r, figure)
	if !(math.Abs(sum-half) <= 1e-9) || len(g.through) != 1 || !(math.Abs(g.through[0].gain[1]-half/2) <= 1e-9) || !slices.Equal(g.through[0].via, []solid.ID{7}) {
		t.Errorf("it sees %g straight, want %g, and %+v", sum, half, g.through)
	}
	_ = whole
	if _, whole := g.factor(&receptor.Receptor{At: r3.Vec{X: -9}, Axis: r3.Vec{Z: 1}}, figure); !whole {
		t.Error("a figure with nothing before it is not seen whole")
	}
	if _, whole := g.factor(&receptor.Receptor{At: r3.Vec{X: -9}, Axis: r3.Unit(r3.Vec{X: -2, Z: 9})}, figure); whole {
		t.Error("a figure that the plane of a receptor cuts is seen whole")
	}
}

// What comes back is summed by the thing it comes from and the panes on the way: one key each, in the order of coming.
func TestKeysOfWays(t *testing.T) {
	g, _ := readingOf(t, nil)
	g.s.t.filtered[0].via = []solid.ID{6}
	for _, c := range []struct {
		element uint32
		through []solid.ID
		want    int
	}{{4, nil, 0}, {9, nil, 0}, {12, nil, 1}, {4, []solid.ID{6}, 1}, {4, []solid.ID{5}, 2}, {4, []solid.ID{5, 6}, 3}, {5, nil, 0}} {
		if got := g.key(c.element, c.through); got != c.want {
			t.Errorf("element %d by %v has key %d, want %d", c.element, c.through, got, c.want)
		}
	}
	if len(g.keys) != 4 || g.keys[3].From != 1 || !slices.Equal(g.keys[3].Via, []solid.ID{5, 6}) {
		t.Errorf("keys are %+v", g.keys)
	}
}

// What was read of each receptor is given by receptor and lamp; of a solution that was read by none there is nothing.
func TestReadingsByReceptorAndLamp(t *testing.T) {
	s := &Solution{readings: []reading{
		{keys: []Key{{}}, values: [][]colour.RGB{{grey(1)}, {grey(2)}}, spread: []float64{0.1, 0.2}},
		{keys: []Key{{}, {}}, values: [][]colour.RGB{{grey(3), grey(4)}, {grey(5), grey(6)}}, spread: []float64{0.3, 0.4}},
	}}
	for i := range 2 {
		for lamp := range 2 {
			if got, want := s.Spread(i, lamp), []float64{0.1, 0.2, 0.3, 0.4}[2*i+lamp]; got != want {
				t.Errorf("receptor %d, lamp %d: spread %g, want %g", i, lamp, got, want)
			}
			if got, want := s.Point(i, lamp), [][]colour.RGB{{grey(1)}, {grey(2)}, {grey(3), grey(4)}, {grey(5), grey(6)}}[2*i+lamp]; !slices.Equal(got, want) || len(s.Keys(i)) != len(want) {
				t.Errorf("receptor %d, lamp %d: %v by %d ways, want %v", i, lamp, got, len(s.Keys(i)), want)
			}
		}
	}
	if none := (&Solution{}); none.Keys(0) != nil || none.Point(0, 0) != nil || none.Spread(0, 0) != 0 {
		t.Error("of what was not read something is given")
	}
}

// An element that too few rays have met keeps no other from being put right, in whatever order they are taken.
func TestElementsArePutRightEachByItself(t *testing.T) {
	for range 16 {
		g, p := readingOf(t, []uint32{4, 4, 4, 5, 5, 6, 6, 7, 7})
		g.s.t.quality.Matters = 0.01
		// At x = 0, 1 and 2 m come 10, 11 and 12 lx, and 8 on all of the element; half of that is returned.
		if put := g.shadowCorrection(p, 0); len(put) != 1 || !(math.Abs(put[4][1]-0.5*(11-8)) <= 1e-9) {
			t.Fatalf("put right by %v, want the first element alone by 1.5 lm/m²", put)
		}
	}
}

// Rays that bring a receptor nothing, and those of cells, which are lit by themselves, tell nothing of how an element is lit.
func TestRaysThatTellNoShadow(t *testing.T) {
	for name, c := range map[string]struct {
		leave func(g *gatherer, p *place)
		want  float64 // lm/m²; 0 where too few rays are left
	}{
		"all tell":           {func(*gatherer, *place) {}, 0.5 * (11.5 - 8)},
		"one brings nothing": {func(g *gatherer, _ *place) { g.rays[3] = 0 }, 0.5 * (11 - 8)},
		"one is of a cell":   {func(_ *gatherer, p *place) { p.cellOf[3] = 0 }, 0.5 * (11 - 8)},
		"two bring nothing":  {func(g *gatherer, _ *place) { g.rays[0], g.rays[3] = 0, 0 }, 0},
		"two are of cells":   {func(_ *gatherer, p *place) { p.cellOf[0], p.cellOf[3] = 0, 1 }, 0},
	} {
		g, p := readingOf(t, []uint32{4, 4, 4, 4, 8, 8})
		p.cellOf = []int32{-1, -1, -1, -1, -1, -1}
		c.leave(g, p)
		if got := g.shadowCorrection(p, 0)[4][1]; !(math.Abs(got-c.want) <= 1e-9) {
			t.Errorf("%s: put right by %g lm/m², want %g", name, got, c.want)
		}
	}
}
