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

// overAFloor is a gatherer for a receptor 2 m over the middle of a floor of 4 by 4 patches, with a shelf behind it.
func overAFloor(t *testing.T, lamps int) *gatherer {
	tr := handmade(1, boardFace(t, r3.Vec{X: 9, Z: 3}, r3.Vec{Y: 1}, r3.Vec{X: 1}, 1, 1, 0.5), boardFace(t, r3.Vec{X: -1, Y: -1}, r3.Vec{X: 2}, r3.Vec{Y: 2}, 4, 4, 0.5))
	tr.quality = Quality{Noise: 1e-3, Near: 0.1}
	tr.receptors, tr.placeOf = []receptor.Receptor{{At: r3.Vec{Z: 2}, Axis: r3.Vec{Z: -1}}}, []int32{0}
	tr.places = []place{{receptors: []int{0}, seen: []int32{0, 1}}}
	tr.mesh.faces[1].met = 0.8
	n := 4 * len(tr.patches)
	s := &Solution{t: tr, lamps: lamps, hot: make([]hotParts, lamps)}
	for range lamps {
		s.bright = append(s.bright, make([]float32, n))
	}
	return &gatherer{s: s, view: solid.Viewer{BVH: tr.mesh.bvh}, shares: make([]float64, n), known: make([]bool, n), exact: make([]float64, n), whole: make([]bool, n), rays: slices.Repeat([]float64{1. / 1024}, 1024)}
}

// factorOf is the closed form of an element of that floor: from the receptor over its corners.
func (g *gatherer) factorOf(element uint32) (sum float64) {
	p := &g.s.t.patches[element/4]
	box := g.s.t.mesh.faces[p.face].element4(p.x, p.y, int(element&3))
	b := boxRound(box[:])
	corner := func(x, y float64) float64 {
		return math.Copysign(1, x*y) * rectangleFactor(math.Abs(x), math.Abs(y), 2) / 4
	}
	return corner(b.high.X, b.high.Y) - corner(b.low.X, b.high.Y) - corner(b.high.X, b.low.Y) + corner(b.low.X, b.low.Y)
}

// Elements are found exactly that shine so much that few rays tell too little of them: by how far the square root of what each ray stands for would
// put the reading off, of a face where the brightest may, and of lamps of which no ray met any all.
func TestElementsThatAreFoundExactly(t *testing.T) {
	const met = 4*2 + 1
	for _, c := range []struct {
		name   string
		bright map[uint32]float32 // of the second lamp
		want   []uint32
	}{
		{"none matters", map[uint32]float32{met: 10, 40: 10, 66: 10}, nil},
		{"some do", map[uint32]float32{met: 10, 4*6 + 2: 90, 4*9 + 3: 90, 4*17 + 3: 90, 70: 2}, []uint32{4*6 + 2, 4*9 + 3, 4*17 + 3}},
		{"none is met", map[uint32]float32{4*5 + 2: 1e-3, 4*17 + 1: 5, 5: 7}, []uint32{4*5 + 2, 4*17 + 1}},
	} {
		g := overAFloor(t, 2)
		for e := range g.s.bright[0] {
			g.s.bright[0][e] = 1 // of the first lamp all that is seen is alike
		}
		for e, v := range c.bright {
			g.s.bright[1][e] = v
		}
		g.met, g.shares[met], g.shares[40], g.shares[66] = []uint32{met, 40, 66}, 0.5, 0.25, 0.25
		// The second lamp brings 5 lx and more by the first of these: elements count that rays put off by a thousandth of that. A ray
		// stands for 1/1024, an element for about 0.005: where it shines by 90 lm/m² they are off by 0.2 lx.
		if c.name == "none matters" {
			g.s.t.quality.Noise = 0.1
		} else {
			g.s.t.quality.Noise = 0.03
		}
		for range g.s.lamps {
			g.s.brightest = append(g.s.brightest, brightestOf(g.s.t, g.s.bright[len(g.s.brightest)]))
		}
		g.chooseExact(0)
		if !slices.Equal(g.fixed, c.want) {
			t.Errorf("%s: elements %v are found exactly, want %v", c.name, g.fixed, c.want)
		}
		for _, e := range g.fixed {
			if want := 0.8 * g.factorOf(e); !g.known[e] || !g.whole[e] || !(math.Abs(g.exact[e]-want) <= 1e-9) {
				t.Errorf("%s: element %d has a form factor of %g, want %g", c.name, e, g.exact[e], want)
			}
		}
	}
}

// Through a pane a receptor gets of an element what the pane leaves of what the element returns, and straight nothing.
func TestElementsThroughAPane(t *testing.T) {
	g := overAFloor(t, 1)
	pane := solid.Sheet{ID: 70, Corners: []r3.Vec{{X: -3, Y: -3, Z: 1}, {X: 3, Y: -3, Z: 1}, {X: 3, Y: 3, Z: 1}, {X: -3, Y: 3, Z: 1}}, Front: solid.Skin{Direct: grey(0.7)}, Back: solid.Skin{Direct: grey(0.7)}}
	g.s.t.mesh.bvh = solid.NewBVH(&solid.Set{Sheets: []solid.Sheet{pane}})
	g.view.BVH = g.s.t.mesh.bvh
	for n, element := range []uint32{4*7 + 1, 4*12 + 2} {
		g.findFormFactor(0, element)
		if len(g.through) != n+1 || g.exact[element] != 0 {
			t.Fatalf("%d elements are seen through the pane, of the last comes %g straight", len(g.through), g.exact[element])
		}
		if got, want := g.through[n], 0.7*0.8*g.factorOf(element); got.element != element || !(math.Abs(got.gain[1]-want) <= 1e-9) || !slices.Equal(got.via, []solid.ID{70}) {
			t.Errorf("of element %d comes %+v, want %g", element, got, want)
		}
	}
}

// What a receptor gets of a patch is about its area by the cosines at both ends, by the square of how far it is off and a quarter of the area, by
// pi: by hand for one 3 m aside and 4 m below, from a corner of it. Nothing comes from behind it, or from behind the receptor.
func TestRoughLightOfAPatch(t *testing.T) {
	tr := handmade(1, boardFace(t, r3.Vec{X: 2, Y: -1}, r3.Vec{X: 6}, r3.Vec{Y: 2}, 3, 1, 0.5))
	down, aside := r3.Vec{Z: -1}, r3.Vec{X: 1}
	for _, c := range []struct {
		r    receptor.Receptor
		want float64
	}{
		{receptor.Receptor{At: r3.Vec{Z: 4}, Axis: down}, 4 / math.Sqrt(4+1+16) * 0.8 * 4 / (math.Pi * 26)},
		{receptor.Receptor{At: r3.Vec{Z: 4}, Axis: aside}, 4 / math.Sqrt(16+1+16) * 0.8 * 4 / (math.Pi * 26)},
		{receptor.Receptor{At: r3.Vec{Z: 4}, Axis: r3.Vec{Z: 1}}, 0}, {receptor.Receptor{At: r3.Vec{Z: -4}, Axis: r3.Vec{Z: 1}}, 0},
	} {
		if got := tr.mesh.rough(&c.r, &tr.patches[1]); !(math.Abs(got-c.want) <= 1e-12) {
			t.Errorf("%+v gets about %g, want %g", c.r, got, c.want)
		}
	}
}

// A face is left out only where none of its elements could be chosen, were it as bright as the brightest and where the face comes nearest.
func TestFacesCouldMatter(t *testing.T) {
	for _, c := range []struct{ at, nearest r3.Vec }{{r3.Vec{Z: 2}, r3.Vec{}}, {r3.Vec{X: 3, Y: 0.5, Z: 2}, r3.Vec{X: 1, Y: 0.5}}, {r3.Vec{X: -4, Y: 5, Z: 1}, r3.Vec{X: -1, Y: 1}}, {r3.Vec{X: 0.3, Y: -7, Z: 3}, r3.Vec{X: 0.3, Y: -1}}, {r3.Vec{Z: -1}, r3.Vec{}}} {
		g := overAFloor(t, 1)
		g.s.brightest = [][]float32{{0, 0}, {0, 100}}
		way := r3.Sub(c.at, c.nearest)
		square := r3.Norm2(way)
		patch := c.at.Z / math.Sqrt(square) * 0.25 / (math.Pi*square + 0.25/4*math.Pi) // of a patch of 0.25 m² there, as of a disc seen from over its middle
		limit := 100 * math.Sqrt(patch/4*1e-3)
		r := &receptor.Receptor{At: c.at, Axis: r3.Vec{Z: -1}}
		if c.at.Z < 0 {
			if g.matters(r, 1, []float64{0, 1e-9}, 1e-3) {
				t.Error("a face seen from behind matters")
			}
			continue
		}
		if !g.matters(r, 1, []float64{1e9, limit * 0.999}, 1e-3) || g.matters(r, 1, []float64{1e-9, limit * 1.001}, 1e-3) || g.matters(r, 1, []float64{0, 0}, 1e-3) || !g.matters(r, 1, []float64{0, limit * (1 + 1e-10)}, 1e-3) { // roundings leave none out
			t.Errorf("from %v a face matters wrongly up to %g lx", c.at, limit)
		}
	}
}

// What comes of a hot element is that of its parts, each by its own form factor.
func TestReceptorsSeeHotParts(t *testing.T) {
	g := overAFloor(t, 1)
	f := &g.s.t.mesh.faces[1]
	hot := &g.s.hot[0]
	hot.of = map[uint32][2]int{4*7 + 1: {1, 3}, 4*8 + 1: {0, 1}}
	for i, e := range []uint32{4*8 + 1, 4*7 + 1, 4*7 + 2} {
		p := &g.s.t.patches[e/4]
		box := f.element4(p.x, p.y, int(e&3))
		part := newHotPart(box[:], f, 0.0625)
		part.own = grey([]float64{100, 10, 3}[i])
		hot.parts = append(hot.parts, part)
	}
	if got, want := g.ofHot(0, 4*7+1, 0)[1], 10*g.factorOf(4*7+1)+3*g.factorOf(4*7+2); !(math.Abs(got-want) <= 1e-9) {
		t.Errorf("of the hot element come %g lx, want %g", got, want)
	}
	g.s.t.quality.Near = 2.05
	p := g.s.t.receptors[0].At
	var want []uint32
	for _, e := range []uint32{4*7 + 1, 4*8 + 1} {
		q := &g.s.t.patches[e/4]
		box := f.element4(q.x, q.y, int(e&3))
		if r3.Norm(r3.Sub(p, solid.Centre(box[:]))) < 2.05 {
			want = append(want, e)
		}
	}
	if got := g.nearHot(&g.s.t.receptors[0], 0); !slices.Equal(got, want) || len(want) != 1 {
		t.Errorf("near are %v, want %v", got, want)
	}
	if got := g.nearHot(&receptor.Receptor{At: p, Skip: []solid.ID{f.id}}, 0); got != nil {
		t.Errorf("of what is not there %v are near", got)
	}
	if got := g.nearHot(&receptor.Receptor{At: p, Response: receptor.Radiance}, 0); got != nil {
		t.Errorf("to a spot meter %v are near", got)
	}
}

// A dome sees a figure all round: two that look opposite ways get what it fills of all directions, by pi.
func TestDomesSeeFigures(t *testing.T) {
	g := overAFloor(t, 1)
	sum := 0.0
	for _, z := range []float64{-1, 1} {
		factor, whole := g.factor(&receptor.Receptor{At: r3.Vec{Z: 2}, Axis: r3.Vec{Z: z}, Response: receptor.Dome}, g.s.t.mesh.faces[1].corners)
		sum += factor
		if !whole {
			t.Error("a dome does not see all of it")
		}
	}
	if want := 4 * math.Asin(1/5.0) / math.Pi; !(math.Abs(sum-want) <= 1e-9) { // a square of 2 m from 2 m over it: 4 asin(1/(1 + 4))
		t.Errorf("domes get %g, want %g", sum, want)
	}
}

// In a cell that the edge of a shadow may run over counts the mean over what of it lies in the air; else what comes to its place, or where next to
// nothing of it lies in the air.
func TestStraightLightOntoCells(t *testing.T) {
	for _, c := range []struct {
		name   string
		uneven bool
		parts  func(f *face) *[4][][]r3.Vec
		hidden bool
		want   float64 // lx at 10 + x lx, x in m
	}{
		{"even", false, nil, false, 10 + 1.4},
		{"uneven", true, nil, false, 10 + 1.5},
		{"half of it in the air", true, func(f *face) *[4][][]r3.Vec {
			box := f.rectangle(1.5, 0, 0.5, 1)
			return &[4][][]r3.Vec{1: {box[:]}}
		}, false, 10 + 1.5 + 1./12},
		{"none of it", true, func(*face) *[4][][]r3.Vec { return new([4][][]r3.Vec) }, false, 10 + 1.4},
		{"hidden", true, nil, true, 0},
	} {
		tr := handmade(1, boardFace(t, r3.Vec{}, r3.Vec{X: 2}, r3.Vec{Y: 2}, 1, 1, 0.5))
		if c.parts != nil {
			tr.patches[1].parts = c.parts(&tr.mesh.faces[0])
		}
		at := r3.Vec{X: 1.4, Y: 0.5} // in the middle cell of the second element
		tr.cells = []cell{{element: 5, at: at}}
		s := &Solution{t: tr, uneven: [][]bool{{false, c.uneven}}}
		got := s.ontoCell(&slope{lux: 10, rise: 1, hidden: [2]bool{c.hidden, true}}, 0, 0, 0)
		if !(math.Abs(got[1]-c.want) <= 1e-9) {
			t.Errorf("%s: a cell gets %g lx, want %g", c.name, got[1], c.want)
		}
	}
}

// What a cell gets from surfaces is the mean of what its rays have met, and the halves of them differ by what each half has.
func TestSurfacesLightACell(t *testing.T) {
	tr := handmade(1, boardFace(t, r3.Vec{}, r3.Vec{X: 2}, r3.Vec{Y: 2}, 1, 1, 0.5))
	s := &Solution{t: tr, hot: make([]hotParts, 1), direct: []directLux{{0, 0, 0, 0, 2, 2, 2, 2}}, blocks: []block{{exitance: []columns32{4: {10}, 5: {20}, 6: {40}, 7: {80}}}}}
	got, off := s.ontoCellFromSurfaces(newTracer(tr.mesh), []uint32{4, 5, 6, 7}, viewpoint{}, 0)
	if !(math.Abs(got[1]-37.5) <= 1e-9) || !(math.Abs(off-12.5) <= 1e-9) {
		t.Errorf("a cell gets %g lx, its halves differ by %g, want 37.5 and 12.5", got[1], off)
	}
	s.hot[0].of = map[uint32][2]int{7: {}}
	if got, off = s.ontoCellFromSurfaces(newTracer(tr.mesh), []uint32{4, 5, 6, 7}, viewpoint{}, 0); !(math.Abs(got[1]-37.25) <= 1e-9) || !(math.Abs(off-12.25) <= 1e-9) {
		t.Errorf("without what is hot a cell gets %g lx, its halves differ by %g, want 37.25 and 12.25", got[1], off)
	}
	if got := s.ownHot(7, 0); got != (colour.RGB{1, 1, 1}) || s.ownHot(6, 0) != (colour.RGB{}) {
		t.Errorf("a hot element returns %v of the lamp's own light", got)
	}
}

// What patches get of what is hot counts as if each of their links had met as much, for each lamp and channel.
func TestHotLightCountsByLinks(t *testing.T) {
	tr := handmade(3, boardFace(t, r3.Vec{}, r3.Vec{X: 2}, r3.Vec{Y: 1}, 2, 1, 0.5))
	tr.sees(1, 0, 0, 0)
	tr.sees(2, 0, 0, 0, 0, 0)
	w := newSolver(tr)
	w.addHot([]float32{0, 0, 0, 1, 2, 4, 10, 20, 40}, 1)
	if want := []columns32{{}, {0, 0, 0, 3, 6, 12}, {0, 0, 0, 50, 100, 200}}; !slices.Equal(w.ofDirect, want) {
		t.Errorf("sums are %v, want %v", w.ofDirect, want)
	}
}

// Places on figures of any areas are as likely as the figures are large, and even on each: by their means.
func TestPlacesOnSeveralFigures(t *testing.T) {
	small := []r3.Vec{{}, {X: 1}, {X: 1, Y: 1}, {Y: 1}}
	large := []r3.Vec{{X: 5}, {X: 8}, {X: 5, Y: 4}} // 6 m², its middle at (6, 4/3)
	var sum r3.Vec
	on := 0
	const n = 140
	for k := range n * n {
		at := placeIn(7, [][][]r3.Vec{{small}, nil, {large}}, (float64(k%n)+0.5)/n, (float64(k/n)+0.5)/n)
		sum = r3.Add(sum, r3.Scale(1.0/(n*n), at))
		if at.X < 2 {
			on++
		}
	}
	if want := (r3.Vec{X: (0.5 + 6*6) / 7, Y: (0.5 + 8) / 7}); r3.Norm(r3.Sub(sum, want)) > 0.01 || !(math.Abs(float64(on)/(n*n)-1./7) <= 0.01) {
		t.Errorf("places lie about %v, want %v, %d of %d on the small one", sum, want, on, n*n)
	}
}

// A ratio counts as the step above it as often as is right in the mean.
func TestStepsOfGlass(t *testing.T) {
	for _, c := range []struct{ ratio, turn, want float64 }{{0.6, 0.39, 0.75}, {0.6, 0.41, 0.5}, {0.95, 0.49, 1}, {0.95, 0.51, 0.9}, {0.1, 0.39, 0.25}, {0.1, 0.41, 0}, {0.75, 0.99, 0.75}} {
		if got := stepOf(c.ratio, c.turn); got != c.want {
			t.Errorf("%g at %g counts as %g, want %g", c.ratio, c.turn, got, c.want)
		}
	}
}

// A view's corners are its outermost points.
func TestCornersOfAView(t *testing.T) {
	v := &view{origin: r3.Vec{X: 1}, u: r3.Vec{X: 2}, v: r3.Vec{Y: 3}, nu: 4, nv: 5}
	if got, want := v.corners(), []r3.Vec{{X: 1}, {X: 7}, {X: 7, Y: 12}, {X: 1, Y: 12}}; !slices.Equal(got, want) {
		t.Errorf("the corners are %v, want %v", got, want)
	}
}

// A prism close by may touch the patches that it stands on, and no others, nor those that it lies wholly behind.
func TestPrismsTouchPatches(t *testing.T) {
	f := boardFace(t, r3.Vec{}, r3.Vec{X: 4}, r3.Vec{Y: 3}, 4, 3, 0.5)
	for _, c := range []struct {
		b    box
		want map[[2]int]bool
	}{
		{box{r3.Vec{X: 1.2, Y: 0.2}, r3.Vec{X: 2.5, Y: 0.7, Z: 1}}, map[[2]int]bool{{1, 0}: true, {2, 0}: true}},
		{box{r3.Vec{X: 3.5, Y: 1.5}, r3.Vec{X: 5, Y: 9, Z: 1}}, map[[2]int]bool{{3, 1}: true, {3, 2}: true}},
		{box{r3.Vec{X: 1.2, Y: 0.2, Z: -1}, r3.Vec{X: 2.5, Y: 0.7}}, nil},
		{box{r3.Vec{X: 1.2, Y: 0.2, Z: 0.1}, r3.Vec{X: 2.5, Y: 0.7, Z: 1}}, nil},
	} {
		for n := range 12 {
			if got := f.touches(n%4, n/4, []box{c.b}); got != c.want[[2]int{n % 4, n / 4}] {
				t.Errorf("%+v touches patch %d, %d: %v", c.b, n%4, n/4, got)
			}
		}
	}
	for _, n := range []r3.Vec{{X: 1}, {Y: 1}, {Z: 1}, {X: -1}, {Y: -1}, {Z: -1}} {
		f := face{basis: basis{n: n}}
		front, back := r3.Scale(0.5, n), r3.Scale(-2, n)
		about := func(at r3.Vec) *box {
			one := r3.Vec{X: 1, Y: 1, Z: 1}
			return &box{r3.Sub(at, one), r3.Add(at, one)}
		}
		if f.behind(about(front)) || !f.behind(about(back)) || f.behind(about(r3.Scale(-0.9, n))) {
			t.Errorf("boxes lie behind a face along %v wrongly", n)
		}
	}
}

// A point in the plane of a face has it under itself as far as its rim goes.
func TestFacesUnderAPlace(t *testing.T) {
	f := boardFace(t, r3.Vec{X: 1, Y: 1}, r3.Vec{X: 3}, r3.Vec{Y: 2}, 1, 1, 0.5)
	for at, want := range map[r3.Vec]bool{{X: 1.1, Y: 1.1}: true, {X: 3.9, Y: 2.9}: true, {X: 1, Y: 2}: true, {X: 4, Y: 2}: true, {X: 2, Y: 1}: true, {X: 2, Y: 3}: true, {X: 0.9, Y: 2}: false, {X: 4.1, Y: 2}: false, {X: 2, Y: 0.9}: false, {X: 2, Y: 3.1}: false} {
		if got := f.liesUnder(at); got != want {
			t.Errorf("the face lies under %v: %v", at, got)
		}
	}
	if _, ok := newFace([]r3.Vec{{}, {X: 1e-7}, {X: 1e-7, Y: 1e-6}}); ok {
		t.Error("what has next to no area has a face")
	}
	if _, ok := newFace([]r3.Vec{{}, {X: 1e200}, {X: 1e200, Y: 1e200}}); ok {
		t.Error("what has no end has a face")
	}
}

// An element that is seen through panes or by mirrors is the same part of the patch behind them.
func TestElementsBehindPanes(t *testing.T) {
	tr := handmade(1, boardFace(t, r3.Vec{}, r3.Vec{X: 3}, r3.Vec{Y: 1}, 3, 1, 0.5))
	tr.filtered = []filtered{{element: 8}, {element: 12, mirror: true}}
	for element, want := range map[uint32]uint32{5: 5, 15: 15, 16: 8, 18: 10, 19: 11, 20: 12, 21: 13, 23: 15} {
		if got := tr.behind(element); got != want || tr.isMirrored(element) != (element >= 20) {
			t.Errorf("behind %d is %d, want %d, mirrored: %v", element, got, want, tr.isMirrored(element))
		}
	}
}

// What is read of elements that panes or mirrors show has the key of the element, by what it passed.
func TestKeysThroughPanes(t *testing.T) {
	tr := handmade(1, boardFace(t, r3.Vec{}, r3.Vec{X: 1}, r3.Vec{Y: 1}, 1, 1, 0.5), boardFace(t, r3.Vec{}, r3.Vec{X: 1}, r3.Vec{Y: 1}, 1, 1, 0.5))
	tr.filtered = []filtered{{element: 5, via: []solid.ID{8}}, {element: 9, via: []solid.ID{8, 9}}}
	for element, want := range map[uint32]Key{6: {From: 1}, 10: {From: 2}, 12: {1, []solid.ID{8}}, 16: {2, []solid.ID{8, 9}}} {
		if got, _ := tr.keyOf(element); got.From != want.From || !slices.Equal(got.Via, want.Via) {
			t.Errorf("element %d has the key %+v, want %+v", element, got, want)
		}
	}
}

// A reading is off by what panes show of a patch, too.
func TestSpreadThroughPanes(t *testing.T) {
	g, _ := readingOf(t, nil)
	g.s.t.filtered = append(g.s.t.filtered, filtered{element: 5})
	g.met = []uint32{16}
	g.shares = make([]float64, 20)
	g.shares[16] = 0.5
	if got := g.linkSpread(g.s.t, 0); got != 0.5*2*0.5*2 { // of the first patch, 2 lm/m²
		t.Errorf("the square is %g, want 1", got)
	}
}

// On a lattice each column of several blocks goes to its own plane.
func TestColumnsOfBlocksOnALattice(t *testing.T) {
	tr := handmade(3, boardFace(t, r3.Vec{}, r3.Vec{X: 1}, r3.Vec{Y: 1}, 1, 1, 0.5))
	f := &frame{Lattice: receptor.Lattice{NU: 1, NV: 1, U: r3.Vec{X: 1}, V: r3.Vec{Y: 1}, Normal: r3.Vec{Z: 1}}, rays: 2}
	f.buffers[0] = itemBuffer{points: []int32{0}, seen: []uint32{4, 5}, short: []uint16{0, 1}}
	tr.lattices = []*frame{f}
	s := &Solution{t: tr, lamps: 3, hot: make([]hotParts, 3), blocks: make([]block, 2)}
	s.withoutHot = [][]columns32{make([]columns32, 8), make([]columns32, 8)}
	s.withoutHot[0][4], s.withoutHot[0][5] = columns32{2, 4, 6, 8, 10, 12}, columns32{4, 4, 4, 4, 4, 4}
	s.withoutHot[1][4] = columns32{20, 40, 60}
	got, err := s.Lattice(t.Context(), 0)
	if err != nil {
		t.Fatal(err)
	}
	for lamp, want := range [][]float32{{3, 4, 5}, {6, 7, 8}, {10, 20, 30}} {
		if !slices.Equal(got[lamp], want) {
			t.Errorf("of lamp %d come %v, want %v", lamp, got[lamp], want)
		}
	}
}
