package radiosity

import (
	"context"
	"errors"
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/light/receptor"
	"scrimshaw/plan/solid"
)

// From under a sky that is alike everywhere a receptor gets what its response adds up to, by rays of its own and by those all round.
func TestWeightsOfRays(t *testing.T) {
	axis := r3.Unit(r3.Vec{X: 1, Y: 2, Z: 2})
	tr := &Transport{receptors: []receptor.Receptor{{Axis: axis}, {Axis: axis, Response: receptor.Dome}}, placeOf: []int32{0, 0}}
	tr.places = []place{{hits: make([]uint32, 8)}}
	for i, want := range []float64{1, 2} { // lx for each lm/m² that comes from everywhere: before a plane, and at a dome from either side
		w, sum := tr.rayWeights(i, nil), 0.0
		for _, v := range w {
			sum += v
		}
		if !(math.Abs(sum-want) <= 1e-12) || w[0] != w[7] {
			t.Errorf("rays of its own weigh %v, want %g in all", w, want)
		}
	}
	ways := []r3.Vec{axis, r3.Scale(-1, axis), r3.Unit(r3.Vec{X: 2, Y: -1}), r3.Unit(r3.Add(axis, r3.Unit(r3.Vec{X: 2, Y: -1})))}
	tr.places[0] = place{hits: make([]uint32, 4), directions: ways}
	half := math.Sqrt(0.5)
	for i, want := range [][]float64{{1, 0, 0, half}, {1, 0, 0.5, (1 + half) / 2}} {
		all := 0.0
		for _, v := range want {
			all += v
		}
		for k, w := range tr.rayWeights(i, nil) {
			if got := tr.receptors[i].Response.Integral() * want[k] / all; !(math.Abs(w-got) <= 1e-12) {
				t.Errorf("receptor %d: ray %d weighs %g, want %g", i, k, w, got)
			}
		}
	}
}

// Receptors share a place where they stand at the same one and skip the same, but for spot meters; those that share have twice the rays, all
// round, and a spot meter has one for each run.
func TestReceptorsInPlaces(t *testing.T) {
	at := r3.Vec{X: 1}
	tr := &Transport{quality: Quality{Point: 100}, receptors: []receptor.Receptor{
		{At: at}, {At: r3.Vec{X: 2}}, {At: at, Response: receptor.Dome}, {At: at, Skip: []solid.ID{3}}, {At: at, Response: receptor.Radiance}, {At: at, Response: receptor.Radiance}}}
	tr.group()
	if !slices.Equal(tr.placeOf, []int32{0, 1, 0, 2, 3, 4}) {
		t.Errorf("receptors stand at places %v", tr.placeOf)
	}
	for n, want := range []int{200, 100, 100, runs, runs} {
		p := &tr.places[n]
		if len(p.hits) != want || len(p.at) != want || (p.directions != nil) != (n == 0) {
			t.Errorf("place %d has %d rays, want %d", n, len(p.hits), want)
		}
	}
	tasks := tasksOf([]place{{hits: make([]uint32, 2*raysPerRun+1)}, {hits: make([]uint32, raysPerRun)}})
	if want := []task{{0, 0}, {0, raysPerRun}, {0, 2 * raysPerRun}, {1, 0}}; !slices.Equal(tasks, want) {
		t.Errorf("runs begin at %v, want %v", tasks, want)
	}
}

// The element, and the cell of it, that a place falls on are those whose rectangle holds it; it is near by the middle of the element.
func TestPlacesFallOnTheirElement(t *testing.T) {
	tr := handmade(1, boardFace(t, r3.Vec{X: 9}, r3.Vec{X: 1}, r3.Vec{Y: 1}, 2, 1, 0.5), boardFace(t, r3.Vec{X: 1, Y: 2, Z: 3}, r3.Vec{X: 3}, r3.Vec{Z: 1}, 3, 2, 0.5))
	f := &tr.mesh.faces[1]
	tr.quality.Near = 0.7
	for n := range 18 * 12 {
		x, y := (float64(n%18)+0.5)/6, (float64(n/18)+0.5)/12
		at := f.at(x, y)
		half := [2]int{int(x * 2), int(y * 4)}
		patch := uint32(3 + half[0]/2 + 3*(half[1]/2))
		element := 4*patch + uint32(half[0]%2+2*(half[1]%2))
		if got := f.element(at); got != element {
			t.Fatalf("%v falls on element %d, want %d", at, got, element)
		}
		if got, want := f.part(at), int32(n%18%3+3*(n/18%3)); got != want {
			t.Errorf("%v falls on cell %d, want %d", at, got, want)
		}
		middle := f.at((float64(half[0])+0.5)/2, (float64(half[1])+0.5)/4)
		from := r3.Vec{X: 1.9, Y: 2.2, Z: 3.3}
		if got, want := tr.isNear(from, element), r3.Norm(r3.Sub(middle, from)) < 0.7; got != want {
			t.Errorf("element %d is near: %v", element, got)
		}
		p := &tr.patches[patch]
		if cells := f.cellInAir(p, int(element&3), f.part(at)); len(cells) != 1 || !(math.Abs(areaOf(cells[0])-1./72) <= 1e-9) || r3.Norm(r3.Sub(solid.Centre(cells[0]), at)) > 1e-9 {
			t.Errorf("the cell of %v is %v", at, cells)
		}
		box := f.element4(p.x, p.y, int(element&3))
		if low, high := boxRound(box[:]).low, boxRound(box[:]).high; at.X < low.X || at.X > high.X || at.Z < low.Z || at.Z > high.Z || !(math.Abs(areaOf(box[:])-0.125) <= 1e-12) {
			t.Errorf("element %d is %v", element, box)
		}
	}
}

// An element is split into figures of one size that fill it, in columns.
func TestFiguresFillTheirElement(t *testing.T) {
	tr := handmade(1, boardFace(t, r3.Vec{X: 1, Y: 2, Z: 3}, r3.Vec{X: 4}, r3.Vec{Y: 3}, 2, 3, 0.5))
	f := &tr.mesh.faces[0]
	for s := 1; s < len(tr.patches); s++ {
		p := &tr.patches[s]
		for k := range 4 {
			x, y := p.x+float64(k%2), p.y+0.5*float64(k/2)
			figures := p.split(f, k, 4)
			for i, g := range figures {
				want := f.at(x+(float64(i/4)+0.5)/4, y+(float64(i%4)+0.5)/8)
				if r3.Norm(r3.Sub(solid.Centre(g), want)) > 1e-9 || !(math.Abs(areaOf(g)-1./32) <= 1e-9) {
					t.Errorf("figure %d of element %d of patch %d is %v, want its middle at %v", i, k, s, g, want)
				}
			}
			if len(figures) != 16 {
				t.Errorf("%d figures", len(figures))
			}
		}
	}
}

// What a face meets of the plane just over a lattice: a tenth of a millimetre over it, where a slanting face stands somewhere else.
func TestSectionOfAFace(t *testing.T) {
	f := boardFace(t, r3.Vec{X: -1, Z: -1e-3}, r3.Vec{Y: 2}, r3.Vec{X: 2, Z: 2e-3}, 1, 1, 0.5)
	a, b, ok := f.section(r3.Vec{X: 7}, r3.Vec{Z: 1})
	if a.Y > b.Y {
		a, b = b, a
	}
	if !ok || r3.Norm(r3.Sub(a, r3.Vec{X: 0.1, Z: 1e-4})) > 1e-9 || r3.Norm(r3.Sub(b, r3.Vec{X: 0.1, Y: 2, Z: 1e-4})) > 1e-9 {
		t.Errorf("it meets the plane from %v to %v, %v", a, b, ok)
	}
	if _, _, ok := f.section(r3.Vec{Z: 2}, r3.Vec{Z: 1}); ok {
		t.Error("it meets a plane over it")
	}
}

// Patches that lie side by side are asked about together, so many at most, and not across the end of a row or what nobody follows.
func TestRowsOfPatches(t *testing.T) {
	tr := handmade(1, boardFace(t, r3.Vec{}, r3.Vec{X: 11}, r3.Vec{Y: 2}, 11, 2, 0.5), boardFace(t, r3.Vec{Z: 1}, r3.Vec{X: 2}, r3.Vec{Y: 1}, 2, 1, 0.5))
	for _, c := range []struct{ from, end, want int }{{1, 25, 9}, {9, 25, 12}, {12, 25, 20}, {20, 25, 23}, {23, 25, 25}, {1, 4, 4}} {
		if got := endOfRow(tr.patches, c.from, c.end); got != c.want {
			t.Errorf("a row from %d on ends at %d, want %d", c.from, got, c.want)
		}
	}
	f := &tr.mesh.faces[0]
	if got, want := tr.patches[13].row(f, 3), f.rectangle(1, 1, 3, 1); got != want {
		t.Errorf("a row is %v, want %v", got, want)
	}
	gap := append(slices.Clone(tr.patches[:4]), tr.patches[5:]...)
	if got := endOfRow(gap, 1, 9); got != 4 {
		t.Errorf("a row with a gap ends at %d", got)
	}
}

// Large faces are drawn, in four sets of every other patch each way; small ones, those with an outline and those of a set of very many faces
// are not.
func TestFacesThatAreDrawn(t *testing.T) {
	board := func(nu, nv int) face {
		return boardFace(t, r3.Vec{}, r3.Vec{X: float64(nu)}, r3.Vec{Y: float64(nv)}, nu, nv, 0.5)
	}
	outlined := board(9, 9)
	outlined.outline = outlineOf(&outlined)
	tr := handmade(1, board(9, 8), board(9, 7), outlined, board(8, 8))
	var patches []uint32
	for n := uint32(1); n < tr.mesh.count; n++ {
		if n != 20 {
			patches = append(patches, n)
		}
	}
	drawn, rest := tr.mesh.drawings(patches)
	if len(drawn) != 8 || len(rest) != 63+81 || rest[0] != 71 || rest[len(rest)-1] != 71+63+81-1 {
		t.Fatalf("%d sets are drawn, %d patches are not", len(drawn), len(rest))
	}
	f := &tr.mesh.faces[0]
	seen := 0
	for k := range 4 {
		d := &drawn[k]
		nu, nv := d.size(f)
		for n, i := range d.found {
			if i < 0 {
				continue
			}
			seen++
			cell := int(patches[i] - f.first)
			if cell%9 != 2*(n%nu)+d.a || cell/9 != 2*(n/nu)+d.b || !d.inAir[n] {
				t.Errorf("patch %d is point %d of set %d, %d", patches[i], n, d.a, d.b)
			}
		}
		if want := [...][2]int{{5, 4}, {4, 4}, {5, 4}, {4, 4}}[k]; [2]int{nu, nv} != want || drawn[k].a != k%2 || drawn[k].b != k/2 {
			t.Errorf("set %d has %d by %d points", k, nu, nv)
		}
	}
	if seen != 71 {
		t.Errorf("%d patches are drawn", seen)
	}
}

// Of a patch that is drawn the rays count that start in the air: those of two patches with a stone on a corner, of one that is known to lie in the air and
// one that nobody follows.
func TestRaysOfADrawing(t *testing.T) {
	tr := handmade(1, boardFace(t, r3.Vec{}, r3.Vec{X: 9}, r3.Vec{Y: 5}, 6, 2, 0.5))
	f := &tr.mesh.faces[0]
	stone := func(id solid.ID, x, y float64) solid.Prism { // 0.6 m by 1 m
		return solid.Prism{ID: id, Base: []r2.Vec{{X: x, Y: y}, {X: x + 0.6, Y: y}, {X: x + 0.6, Y: y + 1}, {X: x, Y: y + 1}}, Z1: 1}
	}
	tr.mesh.bvh = solid.NewBVH(&solid.Set{Prisms: []solid.Prism{stone(1, 0, 0), stone(2, 3.9, 2.5), stone(3, 6, 0)}})
	d := &drawing{found: []int{0, -1, 1, 2}, inAir: []bool{false, false, false, true}}
	out := []linked{{patch: tr.mesh.patch(0, 1)}, {patch: tr.mesh.patch(0, 9)}, {patch: tr.mesh.patch(0, 5)}}
	p := &depthBuffer{m: tr.mesh, hits: []uint32{11, 12, 13, 14}}
	for _, c := range []struct {
		x, y float64
		want [3]bool
	}{{0.2, 0.2, [...]bool{false, true, true}}, {0.8, 0.2, [...]bool{true, false, true}}, {0.2, 0.8, [...]bool{true, true, true}}, {0.8, 0.8, [...]bool{true, true, true}}} {
		for i := range out {
			out[i].links = nil
		}
		d.addRays(p, f, c.x, c.y, out)
		for i, want := range c.want {
			var links []uint32
			if want {
				links = []uint32{[...]uint32{11, 13, 14}[i]}
			}
			if !slices.Equal(out[i].links, links) {
				t.Errorf("from (%g, %g) of patch %d come the rays %v, want %v", c.x, c.y, out[i].number, out[i].links, links)
			}
		}
	}
}

// Of the rays of a receptor on a floor as many meet the ceiling as its form factor says.
func TestRaysOfAReceptor(t *testing.T) {
	const w, d, h = 4.0, 3.0, 2.5
	box := boxOf(w, d, h, func(int) colour.RGB { return grey(0.5) })
	tr, _ := trace(t, box, Quality{Patch: 0.5, Links: 16, Point: 1 << 12}, []receptor.Receptor{{At: r3.Vec{X: w / 2, Y: d / 2, Z: 1e-3}, Axis: r3.Vec{Z: 1}}}, nil)
	hits := tr.places[0].hits
	up := 0
	for _, e := range hits {
		if f := &tr.mesh.faces[tr.patches[e/4].face]; f.n.Z < -0.9 {
			up++
		}
	}
	if got, want := float64(up)/float64(len(hits)), rectangleFactor(w/2, d/2, h-1e-3); len(hits) != 1<<12 || !(math.Abs(got-want) <= 0.005) {
		t.Errorf("of %d rays %g meet the ceiling, want %g", len(hits), got, want)
	}
}

// Among more faces than sixteen for each patch of a set a face is not drawn.
func TestFacesAmongManyAreNotDrawn(t *testing.T) {
	tr := handmade(1, boardFace(t, r3.Vec{}, r3.Vec{X: 9}, r3.Vec{Y: 8}, 9, 8, 0.5))
	var patches []uint32
	for n := uint32(1); n <= 72; n++ {
		patches = append(patches, n)
	}
	for _, c := range []struct{ faces, sets int }{{facesToPatch*18 + 1, 4}, {facesToPatch * 19, 0}} {
		for len(tr.mesh.faces) < c.faces {
			tr.mesh.faces = append(tr.mesh.faces, face{first: tr.mesh.count, corners: tr.mesh.faces[0].corners})
		}
		if drawn, _ := tr.mesh.drawings(patches); len(drawn) != c.sets {
			t.Errorf("among %d faces %d sets are drawn, want %d", c.faces, len(drawn), c.sets)
		}
	}
}

// What rays of a receptor meet close by is looked at in cells, each of which some ray has met; an end of the run comes back as an error.
func TestRaysOfPlacesFindCells(t *testing.T) {
	box := boxOf(4, 3, 2.5, func(int) colour.RGB { return grey(0.5) })
	at := r3.Vec{X: 2, Y: 1.5, Z: 0.3}
	points := []receptor.Receptor{{At: at, Axis: r3.Vec{Z: -1}}}
	q := Quality{Patch: 0.5, Links: 16, Point: 256, Near: 0.5, Cell: 4}
	tr, bvh := trace(t, box, q, points, nil)
	if len(tr.cells) < 4 {
		t.Fatalf("%d cells are found", len(tr.cells))
	}
	met := make([]bool, len(tr.cells))
	for k, n := range tr.places[0].cellOf {
		if n >= 0 {
			met[n] = true
			if far := r3.Norm(r3.Sub(tr.places[0].at[k], at)); far > 0.5+0.2 {
				t.Errorf("ray %d meets a cell %g m off", k, far)
			}
		}
	}
	if slices.Contains(met, false) {
		t.Errorf("by cell, whether a ray has met it: %v", met)
	}
	for i := range tr.cells {
		if c := &tr.cells[i]; !(math.Abs(c.at.Z) <= 1e-9) {
			t.Errorf("cell %d lies at %v, and not on the floor", i, c.at)
		}
	}
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := Trace(ctx, box, bvh, q, 1, points, nil); !errors.Is(err, context.Canceled) {
		t.Errorf("it gave up with %v", err)
	}
	tr.workers = 1
	if err := tr.traceFromPlaces(ctx); !errors.Is(err, context.Canceled) {
		t.Errorf("rays gave up with %v", err)
	}
}

// Boxes meet that are less than twice the clearance apart, along whichever side and in whichever order.
func TestBoxesThatMeet(t *testing.T) {
	one := box{r3.Vec{X: 1, Y: 2, Z: 3}, r3.Vec{X: 2, Y: 4, Z: 6}}
	for gap, want := range map[float64]bool{-0.5: true, 0: true, 1.9e-5: true, 2.1e-5: false, 1: false} {
		for axis, shift := range []r3.Vec{{X: 1 + gap}, {Y: 2 + gap}, {Z: 3 + gap}} {
			other := box{r3.Add(one.low, shift), r3.Add(one.high, shift)}
			if one.meets(&other) != want || other.meets(&one) != want {
				t.Errorf("along axis %d, %g m apart, they meet: %v, %v; want %v", axis, gap, one.meets(&other), other.meets(&one), want)
			}
		}
	}
}
