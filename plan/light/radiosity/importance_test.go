package radiosity

import (
	"math"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/solid"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// linkedCloth is a floor of two patches and a cloth of one, with links written by hand.
func linkedCloth(t *testing.T) *Transport {
	x, y := r3.Vec{X: 1}, r3.Vec{Y: 1}
	floor := boardFace(t, r3.Vec{}, r3.Vec{X: 2}, y, 2, 1, 0.5)
	under := boardFace(t, r3.Vec{Z: 2}, y, x, 1, 1, 0.4)
	over := boardFace(t, r3.Vec{Z: 2}, x, y, 1, 1, 0.2)
	tr := handmade(1, floor, under, over)
	tr.clothOf(1, 2, 0.3, 0.6)
	tr.sees(1, 4*3, 4*3+1, 4*2, black)
	tr.sees(2, 4*1)
	tr.sees(3, 4*1+2, 4*2)
	tr.sees(4, 4*2+3)
	return tr
}

// What hangs on a patch comes of those that see it, against the way of the light: worked out by hand, link by link, and through a
// cloth by what shines from its one face of what falls on the other.
func TestImportanceByHand(t *testing.T) {
	tr := linkedCloth(t)
	tr.places = []place{{hits: []uint32{4 * 1, 4 * 3, 4*3 + 2, 4 * 2}, cellOf: []int32{-1, 0, -1, -1}}}
	tr.cells = []cell{{face: 1, element: 4 * 3, hits: []uint32{4 * 1, 4*2 + 1}, beyond: []uint32{4 * 2, 4*2 + 2}}}
	// By rays a quarter each. The cell on the under side hands on 0.4 of its quarter, half by each of its two rays, and 0.3 of that beyond.
	first := []float64{0, 0.25 + 0.05, 0.25 + 0.05 + 0.1*0.3, 0.25, 0}
	got := newAdjoint(tr).ofReceptors()
	for s, want := range first {
		if !(math.Abs(got[s]-want) <= 1e-12) {
			t.Errorf("on patch %d hangs %g at first, want %g", s, got[s], want)
		}
	}
	// What a step hands from a row to a column: a quarter of 0.5 by each of the floor's four rays; through the cloth what its other face sees.
	step := [5][5]float64{
		1: {0, 0, 0.125, 0.25, 0}, 2: {0, 0.5, 0, 0, 0},
		3: {0, 0.2, 0.2 + 0.3*0.4, 0, 0}, 4: {0, 0.6 * 0.2 / 2, 0.2 + 0.6*0.2/2, 0, 0},
	}
	now, all := first, make([]float64, 5)
	for range adjointPasses {
		next := make([]float64, 5)
		for s := 1; s < 5; s++ {
			all[s] += now[s]
			for to, share := range step[s] {
				next[to] += share * now[s]
			}
		}
		all[4] += 0.3 * now[3]
		all[3] += 0.6 * now[4]
		now = next
	}
	importance := tr.importance()
	for s := 1; s < 5; s++ {
		if !(math.Abs(importance[s]-all[s]) <= 1e-12) {
			t.Errorf("on patch %d hangs %g, want %g", s, importance[s], all[s])
		}
	}
	if importance[0] != 0 {
		t.Errorf("on what is black hangs %g", importance[0])
	}
}

// Patches get rays by what hangs on them, in powers of two near their share, up to a most; those that would get no more than they have
// get none.
func TestRaysGoWhereMuchHangs(t *testing.T) {
	tr := linkedCloth(t)
	tr.quality = Quality{Patch: 1, Links: 64, More: 60}
	tr.places = []place{{hits: []uint32{4 * 1, 4 * 1, 4 * 1, 4 * 2}}, {hits: []uint32{4 * 1}}}
	slots, want := tr.chooseForRays()
	all, sum := tr.importance(), 0.0
	for _, v := range all {
		sum += v
	}
	for s := 1; s < len(tr.patches); s++ {
		if got := tr.patches[s].importance; !(math.Abs(got-all[s]/sum) <= 1e-12) {
			t.Errorf("patch %d has %g of what hangs on all, want %g", s, got, all[s]/sum)
		}
		share, i := 64+120*all[s]/sum, slices.Index(slots, s)
		switch {
		case i < 0 && share > 4*64/3+2:
			t.Errorf("patch %d gets no rays, though its share are %g", s, share)
		case i >= 0 && (want[i]&(want[i]-1) != 0 || want[i] <= 64 || float64(want[i]) < 2*share/3-2 || float64(want[i]) > 4*share/3+2):
			t.Errorf("patch %d gets %d rays, its share are %g", s, want[i], share)
		}
	}
	if len(slots) == 0 || len(slots) == 4 {
		t.Errorf("patches %v get more rays", slots)
	}
	tr.quality.More = 1 << 20
	if _, want := tr.chooseForRays(); slices.Max(want) != mostLinks {
		t.Errorf("a patch gets %d rays, want %d at most", slices.Max(want), mostLinks)
	}
	tr.quality.More = 0
	if slots, _ := tr.chooseForRays(); slots != nil {
		t.Errorf("without more rays patches %v get some", slots)
	}
}

// What a patch gets beyond its own rays counts from those that its area gives it: one of 0.05 m² has 32, one of 0.07 m² 64, and 20 more are enough for
// the next power of two of the one alone.
func TestFurtherRaysBySize(t *testing.T) {
	for _, c := range []struct {
		wide, high float64
		want       []int
	}{{0.25, 0.2, []int{64}}, {0.2, 0.25, []int{64}}, {0.35, 0.2, nil}, {0.2, 0.35, nil}} {
		tr := handmade(1, boardFace(t, r3.Vec{}, r3.Vec{X: c.wide}, r3.Vec{Y: c.high}, 1, 1, 0.5))
		tr.sees(1, black)
		tr.quality = Quality{Patch: 0.5, Links: 64, More: 20}
		tr.places = []place{{hits: []uint32{4}}}
		if _, want := tr.chooseForRays(); !slices.Equal(want, c.want) {
			t.Errorf("%g by %g m gets %v rays, want %v", c.wide, c.high, want, c.want)
		}
	}
}

// A patch gets fewer rays where it is small: half for each quarter of the area of a whole one, down to sixteen.
func TestRaysOfSmallPatches(t *testing.T) {
	q := Quality{Patch: 0.5, Links: 64}
	for _, c := range []struct {
		area float64
		rays int
	}{{0.25, 64}, {0.0626, 64}, {0.0624, 32}, {0.0157, 32}, {0.0155, 16}, {1e-6, 16}} {
		if got := q.rays(c.area); got != c.rays {
			t.Errorf("%g m² get %d rays, want %d", c.area, got, c.rays)
		}
	}
}

// Closer has patches with 0.36 of the area, twice the rays of each, six times those for receptors, and four times the looks.
func TestCloser(t *testing.T) {
	q := Quality{Patch: 0.5, Links: 64, More: 1000, HotSamples: 4, Point: 7}
	for _, c := range []struct {
		share float64
		want  Quality
	}{
		{1, Quality{Patch: 0.3, Links: 128, More: 6000, HotSamples: 16, Point: 7}},
		{16.0 / 31, Quality{Patch: 0.5 * (1 - 0.4*16.0/31), Links: 128, More: 3580, HotSamples: 10, Point: 7}},
		{0.5, Quality{Patch: 0.4, Links: 64, More: 3500, HotSamples: 10, Point: 7}},
		{0.25, Quality{Patch: 0.45, Links: 64, More: 2250, HotSamples: 7, Point: 7}},
		{16.0 / 60, Quality{Patch: 0.5 * (1 - 0.4*16.0/60), Links: 64, More: 2333, HotSamples: 7, Point: 7}},
	} {
		got := q.Closer(c.share)
		if !(math.Abs(got.Patch-c.want.Patch) <= 1e-12) {
			t.Errorf("closer by %g has patches of %g m, want %g", c.share, got.Patch, c.want.Patch)
		}
		if got.Patch = c.want.Patch; got != c.want {
			t.Errorf("closer by %g is %+v, want %+v", c.share, got, c.want)
		}
	}
}

// A patch that lies in another solid has no place in the air: it is looked for among all places that there are, and no further, however many rays a
// patch has.
func TestAPatchWithoutAPlaceInTheAir(t *testing.T) {
	cube := func(id solid.ID, half, low, high float64) solid.Prism {
		base := []r2.Vec{{X: 2 - half, Y: 2 - half}, {X: 2 + half, Y: 2 - half}, {X: 2 + half, Y: 2 + half}, {X: 2 - half, Y: 2 + half}}
		return solid.Prism{ID: id, Base: base, Z0: low, Z1: high, Skin: solid.Skin{Reflect: colour.RGB{0.5, 0.5, 0.5}}}
	}
	s := boxOf(4, 4, 2.5, func(int) colour.RGB { return colour.RGB{0.5, 0.5, 0.5} })
	s.Prisms = append(s.Prisms, cube(20, 0.5, 0.5, 1.5), cube(21, 0.2, 0.8, 1.2))
	for _, links := range []int{48, 64, 100} {
		tr, _ := trace(t, s, Quality{Patch: 0.4, Links: links, More: 64, Point: 64, Near: 0.5, Cell: 16, HotSamples: 2, Edge: 3e-3, Matters: 0.02, Noise: 3e-3}, nil, nil)
		e, buried := newTracer(tr.mesh), 0
		for k := range tr.mesh.faces {
			if l := tr.linkOne(e, tr.mesh.faces[k].first); len(l.links) == 0 {
				buried++
			}
		}
		if buried < 6 {
			t.Errorf("%d links: %d faces have a patch without a place in the air, want the six of the inner box", links, buried)
		}
	}
}
