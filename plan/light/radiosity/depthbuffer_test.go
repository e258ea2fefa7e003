package radiosity

import (
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/light/receptor"
	"scrimshaw/plan/solid"
)

// A pane that slants through a wall is passed by the rays that meet it first, and by no others: the depths of both grow
// along the lattice, each its own way.
func TestRaysPassTheNearPartOfAPane(t *testing.T) {
	const size = 16
	v := &view{nu: size, nv: size}
	square := func(depth func(x, y float64) float64) []vertex {
		return []vertex{{-1, -1, depth(-1, -1)}, {size, -1, depth(size, -1)}, {size, size, depth(size, size)}, {-1, size, depth(-1, size)}}
	}
	wall := func(x, y float64) float64 { return 10 + 0.05*x - 0.1*y }
	for name, pane := range map[string]func(x, y float64) float64{
		"deeper to the right": func(x, y float64) float64 { return 6.2 + 0.7*x },
		"deeper upward":       func(x, y float64) float64 { return 5.1 + 0.5*y },
		"deeper downward":     func(x, y float64) float64 { return 13.3 - 0.6*y + 0.2*x },
	} {
		p := &depthBuffer{m: &mesh{}, panes: []int{0}, crossing: []solid.Pane{}}
		p.reset(v)
		p.corners = square(wall)
		p.drawFace(v, 3)
		p.corners = square(pane)
		any := p.drawPane(v)
		before := 0
		for n := range size * size {
			x, y := float64(n%size), float64(n/size)
			if p.seen[n] != 3 {
				t.Fatalf("%s: the ray at (%g, %g) misses the wall", name, x, y)
			}
			if want := pane(x, y) < wall(x, y); p.passed[n] != want {
				t.Errorf("%s: the ray at (%g, %g) passes the pane: %v, want %v", name, x, y, p.passed[n], want)
			} else if want {
				before++
			}
		}
		if !any || before < size || before > size*(size-1) {
			t.Errorf("%s: %d rays pass, which tells nothing", name, before)
		}
	}
}

// Faces that no point of a view can see are left out before any direction is drawn, and nothing that is seen changes by it.
func TestFacesOutOfViewAreLeftOut(t *testing.T) {
	s := boxOf(4, 3, 2.5, func(int) colour.RGB { return grey(0.5) })
	for i, x := range []float64{0.5, 1.6, 3} {
		z := 0.4 * float64(i)
		s.Prisms = append(s.Prisms, solid.Prism{ID: solid.ID(20 + i), Base: []r2.Vec{{X: x, Y: 1}, {X: x + 0.5, Y: 1.2}, {X: x + 0.3, Y: 1.7}}, Z0: z, Z1: z + 0.3, Skin: solid.Skin{Reflect: grey(0.3)}})
	}
	m := newMesh(s, solid.NewBVH(s), 0.3)
	p := newDepthBuffer(m, nil)
	v := view{origin: r3.Vec{X: 0.1, Y: 0.1, Z: 0.55}, u: r3.Vec{X: 0.1}, v: r3.Vec{Y: 0.1}, nu: 38, nv: 28}
	hits, want := make([]uint32, v.nu*v.nv), make([]uint32, v.nu*v.nv)
	frame := basisOf(r3.Vec{Z: 1})
	for name, ahead := range map[string]*r3.Vec{"ahead": &frame.n, "all round": nil} {
		for k := range 200 {
			d := oppositePair(k)
			if x, y := receptorSample(k); ahead != nil {
				d = frame.direction(receptor.Cosine, x, y)
			}
			p.inView = p.inView[:0]
			for i := range m.faces {
				p.inView = append(p.inView, facing{m.faces[i].n, m.faces[i].corners, int32(i), false})
			}
			p.render(&v, d, want)
			p.inView = facesInView(p.inView, m, p.faces, v.corners(), ahead)
			p.render(&v, d, hits)
			if !slices.Equal(hits, want) {
				t.Fatalf("%s: along %v other elements are seen", name, d)
			}
		}
		if left := len(m.faces) - len(p.inView); left < 5 || ahead == nil && left > 12 {
			t.Errorf("%s: %d faces of %d are left out", name, left, len(m.faces))
		}
	}
}

// A ray that was taken to pass a pane and meets none before what it sees is left as it is.
func TestRaysThatPassNoPane(t *testing.T) {
	v := &view{u: r3.Vec{X: 1}, v: r3.Vec{Y: 1}, nu: 2, nv: 1}
	pane := solid.Sheet{ID: 70, Corners: []r3.Vec{{X: 0.5, Y: -1, Z: 1}, {X: 2, Y: -1, Z: 1}, {X: 2, Y: 1, Z: 1}, {X: 0.5, Y: 1, Z: 1}}, Front: solid.Skin{Direct: grey(0.7)}, Back: solid.Skin{Direct: grey(0.7)}}
	behind := pane
	behind.ID, behind.Corners = 71, []r3.Vec{{X: -2, Y: -1, Z: 3}, {X: 2, Y: -1, Z: 3}, {X: 2, Y: 1, Z: 3}, {X: -2, Y: 1, Z: 3}}
	tr := handmade(1, boardFace(t, r3.Vec{X: -5, Y: -5, Z: 2}, r3.Vec{Y: 9}, r3.Vec{X: 9}, 1, 1, 0.5))
	m := tr.mesh
	m.bvh = solid.NewBVH(&solid.Set{Sheets: []solid.Sheet{pane, behind}})
	p := &depthBuffer{m: m, seen: []int32{0, 0}, depth: []float32{2, 2}, passed: []bool{true, true}}
	hits := []uint32{5, 6}
	p.filter(v, r3.Vec{Z: 1}, hits)
	if hits[0] != 5 || hits[1] == 6 || len(m.seen.list) != 1 || !slices.Equal(m.seen.list[0].via, []solid.ID{70}) {
		t.Errorf("the rays meet %v, what is seen through panes is %+v", hits, m.seen.list)
	}
}

// Rays of some numbers pass a cloth, and see what is behind it; those of the others end on it. What is no cloth they never pass.
func TestRaysPassClothByTheirNumbers(t *testing.T) {
	tr := handmade(1, boardFace(t, r3.Vec{X: -5, Y: -5, Z: 1}, r3.Vec{Y: 9}, r3.Vec{X: 9}, 1, 1, 0.5), boardFace(t, r3.Vec{X: -5, Y: -5, Z: 1}, r3.Vec{X: 9}, r3.Vec{Y: 9}, 1, 1, 0.5),
		boardFace(t, r3.Vec{X: -5, Y: -5, Z: 2}, r3.Vec{Y: 9}, r3.Vec{X: 9}, 1, 1, 0.5))
	tr.clothOf(0, 1, 0.5, 0.5)
	m := tr.mesh
	p := newDepthBuffer(m, nil)
	v := &view{u: r3.Vec{X: 1}, v: r3.Vec{Y: 1}, nu: 1, nv: 1}
	p.inView = facesInView(p.inView, m, p.faces, v.corners(), nil)
	passed := 0
	const rays = 1000
	for p.number = range rays {
		hits := make([]uint32, 1)
		p.render(v, r3.Vec{Z: 1}, hits)
		switch m.face(hits[0] / 4) {
		case 2:
			passed++
		case 1:
			t.Fatal("a ray ends on the side of a cloth that it does not come from")
		}
	}
	// 0.3 of the rays pass this cloth.
	if passed < 280 || passed > 320 {
		t.Errorf("%d of %d rays pass the cloth", passed, rays)
	}
}
