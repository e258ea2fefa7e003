package radiosity

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/solid"
)

// A ray goes on from the last mirror that it may meet and not from the one after, and from no mirror that leaves nothing.
func TestRaysGoOnFromMirrors(t *testing.T) {
	for _, c := range []struct {
		met    int // mirrors, before
		factor colour.RGB
		want   bool
	}{{0, grey(0.9), true}, {0, colour.RGB{0, 0, 0.1}, true}, {0, colour.RGB{}, false}, {mostMirrors - 1, grey(0.9), true}, {mostMirrors, grey(0.9), false}} {
		e := &tracer{mirrors: c.met}
		if got := e.goOn(7, c.factor); got != c.want || e.mirrors != c.met+1 {
			t.Errorf("after %d mirrors a ray goes on from one that leaves %v: %v", c.met, c.factor, got)
		}
		if p := e.panes; len(p) != 1 || p[0].ID != 7 || p[0].Factor() != c.factor {
			t.Errorf("what the mirror leaves is noted as %+v", p)
		}
	}
}

// A place is buried that lies in a solid and no farther out than those that are not there for the ray; on their very faces it is.
func TestPlacesUnderOnesFeet(t *testing.T) {
	ground := solid.Prism{ID: 1, Base: []r2.Vec{{X: -9, Y: -9}, {X: 9, Y: -9}, {X: 9, Y: 9}, {X: -9, Y: 9}}, Z0: -9, Z1: 9}
	e := newTracer(&mesh{bvh: solid.NewBVH(&solid.Set{Prisms: []solid.Prism{ground}})})
	e.own = box{r3.Vec{X: -1, Y: -2, Z: -3}, r3.Vec{X: 1, Y: 2, Z: 3}}
	for _, c := range []struct {
		at   r3.Vec
		want bool
	}{
		{r3.Vec{}, true}, {r3.Vec{X: -1}, true}, {r3.Vec{X: 1}, true}, {r3.Vec{Y: -2}, true}, {r3.Vec{Y: 2}, true}, {r3.Vec{Z: -3}, true}, {r3.Vec{Z: 3}, true},
		{r3.Vec{X: -1.1}, false}, {r3.Vec{X: 1.1}, false}, {r3.Vec{Y: -2.1}, false}, {r3.Vec{Y: 2.1}, false}, {r3.Vec{Z: -3.1}, false}, {r3.Vec{Z: 3.1}, false},
	} {
		if got := e.buried(c.at, r3.Vec{Z: 1}); got != c.want {
			t.Errorf("%v is buried: %v", c.at, got)
		}
	}
	e.m.bvh = solid.NewBVH(&solid.Set{})
	if e.buried(r3.Vec{}, r3.Vec{Z: 1}) {
		t.Error("a place in the air is buried")
	}
}

// A figure ends at the outline of its face: what reaches over it is cut off, but for less than a rounding, however long the side is.
func TestFiguresEndAtTheOutline(t *testing.T) {
	for _, side := range []float64{0.1, 1, 10} {
		f := boardFace(t, r3.Vec{}, r3.Vec{X: side}, r3.Vec{Y: side}, 1, 1, 0.5)
		f.outline = outlineOf(&f)
		for _, c := range []struct {
			from, to float64 // along x, and all of the side along y
			cut      bool
			area     float64
		}{
			{0, side, false, side * side}, {side / 4, side + 4e-12, false, 0.75 * side * side}, {side / 4, side + 1e-6, true, 0.75 * side * side},
			{-side, side / 2, true, side * side / 2}, {-2 * side, -side, true, 0}, {side - 4e-12, 2 * side, true, 0},
		} {
			on, cut := newTracer(&mesh{bvh: solid.NewBVH(&solid.Set{})}).onFace(&f, []r3.Vec{{X: c.from}, {X: c.to}, {X: c.to, Y: side}, {X: c.from, Y: side}})
			got := 0.0
			if on != nil {
				got = areaOf(on)
			}
			if cut != c.cut || got-c.area > 1e-9 || c.area-got > 1e-9 {
				t.Errorf("of a figure from %g to %g m of %g, %g m² are on the face, cut: %v", c.from, c.to, side, got, cut)
			}
		}
	}
}

// A corner that an outline has twice changes nothing: the sides after it cut as before.
func TestOutlinesWithACornerTwice(t *testing.T) {
	f := boardFace(t, r3.Vec{}, r3.Vec{X: 2}, r3.Vec{Y: 2}, 1, 1, 0.5)
	f.outline = []r2.Vec{{}, {}, {X: 1}, {X: 1, Y: 2}, {Y: 2}}
	f.corners = nil
	for _, p := range f.outline {
		f.corners = append(f.corners, r3.Vec{X: p.X, Y: p.Y})
	}
	on, cut := newTracer(&mesh{bvh: solid.NewBVH(&solid.Set{})}).onFace(&f, []r3.Vec{{X: 0.5, Y: 0.5}, {X: 2, Y: 0.5}, {X: 2, Y: 1.5}, {X: 0.5, Y: 1.5}})
	if !cut || on == nil || !(math.Abs(areaOf(on)-0.5) <= 1e-9) {
		t.Errorf("of 1.5 m² %v is on the face, cut: %v", on, cut)
	}
}

// A ray for which something is not there goes on to what it meets behind that, and ends in the dark only where that stood on it.
func TestRaysPastWhatIsNotThere(t *testing.T) {
	square := []r2.Vec{{X: -1, Y: -1}, {X: 1, Y: -1}, {X: 1, Y: 1}, {X: -1, Y: 1}}
	wide := []r2.Vec{{X: -9, Y: -9}, {X: 9, Y: -9}, {X: 9, Y: 9}, {X: -9, Y: 9}}
	skin := solid.Skin{Reflect: grey(0.5)}
	s := &solid.Set{Prisms: []solid.Prism{{ID: 1, Base: wide, Z0: -1, Skin: skin}, {ID: 2, Base: square, Z1: 1, Skin: skin}, {ID: 3, Base: square, Z0: 3, Z1: 4, Skin: skin}}}
	m := newMesh(s, solid.NewBVH(s), 1)
	m.seen = filteredElements{}
	up, down := r3.Vec{Z: 1}, r3.Vec{Z: -1}
	for _, c := range []struct {
		at, d r3.Vec
		skip  []solid.ID
		want  solid.ID // of what it ends on; 0 in the dark
	}{
		{r3.Vec{Z: 2}, up, nil, 3}, {r3.Vec{Z: 2}, down, nil, 2}, {r3.Vec{X: 5, Z: 2}, down, nil, 1},
		{r3.Vec{Z: 2}, up, []solid.ID{2}, 3}, {r3.Vec{X: 5, Z: 2}, down, []solid.ID{2}, 1}, {r3.Vec{Z: 2}, down, []solid.ID{2}, 0}, {r3.Vec{Z: 2}, down, []solid.ID{3}, 2},
	} {
		e := newTracer(m)
		e.own = m.boxOf(c.skip)
		element, ok := e.trace(c.at, c.d, c.skip)
		var got solid.ID
		if element != black {
			got = m.faceOf(element).id
		}
		if !ok || got != c.want {
			t.Errorf("from %v along %v without %v a ray ends on %d, want %d", c.at, c.d, c.skip, got, c.want)
		}
	}
}
