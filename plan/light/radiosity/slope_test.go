package radiosity

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/light/receptor"
	"scrimshaw/plan/solid"
)

// shed is a closed room of w by d under a ceiling that rises from low at x = 0 to high at x = w: the walls at its
// sides are prisms that stand up to the highest, beyond the ceiling.
func shed(w, d, low, high, rho float64) *solid.Set {
	p := func(x, y, z float64) r3.Vec { return r3.Vec{X: x, Y: y, Z: z} }
	skin := solid.Skin{Reflect: grey(rho)}
	s := &solid.Set{Sheets: []solid.Sheet{
		{ID: 1, Name: "floor", Corners: []r3.Vec{p(0, 0, 0), p(w, 0, 0), p(w, d, 0), p(0, d, 0)}, Front: skin},
		{ID: 2, Name: "ceiling", Corners: []r3.Vec{p(0, 0, low), p(0, d, low), p(w, d, high), p(w, 0, high)}, Front: skin},
	}}
	for i, b := range [][2]r2.Vec{{{X: 0, Y: -0.2}, {X: w, Y: 0}}, {{X: w, Y: 0}, {X: w + 0.2, Y: d}}, {{X: 0, Y: d}, {X: w, Y: d + 0.2}}, {{X: -0.2, Y: 0}, {X: 0, Y: d}}} {
		top := high
		if i == 3 {
			top = low
		}
		s.Prisms = append(s.Prisms, solid.Prism{ID: solid.ID(3 + i), Name: "wall", Skin: skin, Z1: top,
			Base: []r2.Vec{b[0], {X: b[1].X, Y: b[0].Y}, b[1], {X: b[0].X, Y: b[1].Y}}})
	}
	return s
}

// mean is the mean of what falls on a set's surfaces in the air: over the elements, by their areas.
func (s *Solution) mean() (e, area float64) {
	exitance := s.blocks[0].exitance
	for slot := 1; slot < len(s.t.patches); slot++ {
		p := &s.t.patches[slot]
		rho := s.t.mesh.faces[p.face].reflect[0]
		for k, a := range p.area {
			if rho > 0 {
				e += a * float64(exitance[4*slot+k][0]) / rho
				area += a
			}
		}
	}
	return e / area, area
}

// Under a sloping ceiling, too, the mean of all light on the surfaces of a closed room is Phi/(A (1 - rho)), though
// walls stand up beyond the ceiling.
func TestClosedShed(t *testing.T) {
	for _, c := range []struct{ w, d, low, high float64 }{{4, 3, 1.2, 3.4}, {2, 5, 0.5, 4.7}, {6, 4, 2.1, 2.9}} {
		for _, rho := range []float64{0.3, 0.7, 0.9} {
			s := shed(c.w, c.d, c.low, c.high, rho)
			slope := math.Hypot(c.w, c.high-c.low)
			area := c.w*c.d + c.w*(c.low+c.high) + c.d*(c.low+c.high) + slope*c.d
			reader := []receptor.Receptor{{At: r3.Vec{X: c.w / 2, Y: c.d / 2, Z: 0.3}, Axis: r3.Vec{Z: 1}, Response: receptor.Dome}}
			tr, bvh := trace(t, s, usual, reader, nil)
			solution := solve(t, tr, &bulb{bvh: bvh, at: r3.Vec{X: c.w * 0.6, Y: c.d * 0.4, Z: c.low * 0.8}, flux: grey(10000), cos: -1})
			got, followed := solution.mean()
			_, _, lost := solution.Balance(0)
			want := 10000 / (area * (1 - rho))
			if !(math.Abs(got/want-1) <= 1e-3) || !(math.Abs(followed/area-1) <= 1e-3) || lost[0] > 1e-9 {
				t.Errorf("%v, rho %g: a mean of %.2f lx on %.3f m² and %g lm lost, want %.2f on %.3f", c, rho, got, followed, lost[0], want, area)
			}
		}
	}
}

// A wall's side is split where a sheet runs across it, not where one only touches it or ends before its rim; the
// element under a place is that of the part that the place lies on.
func TestFacesArePartedBySheets(t *testing.T) {
	p := func(x, y, z float64) r3.Vec { return r3.Vec{X: x, Y: y, Z: z} }
	wall := []r3.Vec{p(0, 0, 0), p(4, 0, 0), p(4, 0, 3), p(0, 0, 3)}
	for _, c := range []struct {
		name  string
		sheet []r3.Vec
		parts int
	}{
		{"a slope", []r3.Vec{p(0, 0, 1), p(4, 0, 2), p(4, -5, 2), p(0, -5, 1)}, 2},
		{"a slope through it", []r3.Vec{p(-1, 2, 1), p(5, 2, 2), p(5, -5, 2), p(-1, -5, 1)}, 2},
		{"a ceiling on its rim", []r3.Vec{p(0, 0, 3), p(4, 0, 3), p(4, -5, 3), p(0, -5, 3)}, 1},
		{"a board against its middle", []r3.Vec{p(1, 0, 1), p(2, 0, 1), p(2, -1, 1), p(1, -1, 1)}, 1},
		{"a board before it", []r3.Vec{p(0, -0.1, 1), p(4, -0.1, 1), p(4, -1, 1), p(0, -1, 1)}, 1},
		{"a picture on it", []r3.Vec{p(1, 0, 1), p(2, 0, 1), p(2, 0, 2), p(1, 0, 2)}, 1},
	} {
		set := &solid.Set{Sheets: []solid.Sheet{{ID: 1, Corners: wall}, {ID: 2, Corners: c.sheet}}}
		m := newMesh(set, solid.NewBVH(set), 0.25)
		side := m.of[1]
		if n := int(side.to-side.from) / 2; n != c.parts {
			t.Errorf("%s: the side is in %d parts, want %d", c.name, n, c.parts)
			continue
		}
		for _, at := range []r3.Vec{p(0.5, 0, 0.2), p(3.7, 0, 1.7), p(0.2, 0, 2.8), p(3.9, 0, 2.2)} {
			e := m.element(&solid.Hit{ID: 1, Normal: p(0, -1, 0)}, at)
			if f := &m.faces[m.face(e/4)]; !f.liesUnder(at) || f.n.Y > 0 {
				t.Errorf("%s: at %v is an element of another part", c.name, at)
			}
		}
	}
}
