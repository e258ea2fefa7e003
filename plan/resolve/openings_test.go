package resolve

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/plane"
)

// An opening 1 m along each wall of a 4 by 3 room, 0.8 m wide: 1 m is counted from the end that is
// left for someone who looks at the wall from inside.
func TestAlongEachWall(t *testing.T) {
	for _, c := range []struct {
		wall        string
		left, right r2.Vec
	}{
		{"top", r2.Vec{X: 1, Y: 3}, r2.Vec{X: 1.8, Y: 3}},
		{"right", r2.Vec{X: 4, Y: 2}, r2.Vec{X: 4, Y: 1.2}},
		{"bottom", r2.Vec{X: 3}, r2.Vec{X: 2.2}},
		{"left", r2.Vec{Y: 1}, r2.Vec{Y: 1.8}},
	} {
		s := resolved(t, "rooms: {den: {size: [4, 3]}}\nopenings: {w: {window: den."+c.wall+", along: 1, width: 0.8}}")
		near2(t, c.wall+" left", s.Openings[0].Left, c.left, 1e-12)
		near2(t, c.wall+" right", s.Openings[0].Right, c.right, 1e-12)
	}
}

func TestDefaultsOfOpenings(t *testing.T) {
	s := resolved(t, `
rooms: {den: {size: [4, 3], base: 0.3}}
openings:
  win:  {window: den.top, width: 1}
  door: {door: den.left, along: 1}
  gap:  {gap: den.right, width: 1}
`)
	for i, want := range []plan.Opening{
		{Name: "win", Sill: 1.2, Head: 2.4, Transmittance: 0.9, Left: r2.Vec{X: 1.5, Y: 3}, Right: r2.Vec{X: 2.5, Y: 3}},
		{Name: "door", Sill: 0.3, Head: 2.3, Transmittance: 0, Left: r2.Vec{Y: 1}, Right: r2.Vec{Y: 1.8}},
		{Name: "gap", Sill: 0.3, Head: 2.3, Transmittance: 1, Left: r2.Vec{X: 4, Y: 2}, Right: r2.Vec{X: 4, Y: 1}},
	} {
		got := s.Openings[i]
		near(t, want.Name+" sill", got.Sill, want.Sill, 1e-12)
		near(t, want.Name+" head", got.Head, want.Head, 1e-12)
		near(t, want.Name+" transmittance", got.Transmittance, want.Transmittance, 1e-12)
		near(t, want.Name+" depth", got.Depth, 0.15, 1e-9)
		near2(t, want.Name+" left", got.Left, want.Left, 1e-12)
		near2(t, want.Name+" right", got.Right, want.Right, 1e-12)
	}
}

// A window takes its hole out of the wall and nothing else: what is left below and above is marked
// by its name, and the volumes add up.
func TestHolesAreCut(t *testing.T) {
	s := resolved(t, `
rooms: {den: {size: [4, 3], wall: 0.2}}
openings:
  low:  {window: den.top, along: 1, width: 1, sill: 0.4, head: 1.1}
  high: {window: den.top, along: 1, width: 1, sill: 1.5, head: 2.2}
  door: {door: den.top, along: 3, width: 0.9}
`)
	noOverlaps(t, s)
	volume, marked := 0.0, map[string]int{}
	for _, w := range s.Walls {
		volume += plane.Area(w.Outline) * (w.Z1 - w.Z0)
		marked[w.Opening]++
	}
	solid := ringArea(s.Rooms[0].Inside, 0.2) * 2.5
	near(t, "volume", volume, solid-0.2*(0.7+0.7+0.9*2.0), 1e-9)
	if marked["low"] != 1 || marked["high"] != 2 || marked["door"] != 1 {
		t.Errorf("pieces by opening: %v", marked)
	}
}

// An opening goes through the party wall, however thick, and cuts both rooms' halves.
func TestOpeningInAPartyWall(t *testing.T) {
	for _, gap := range []float64{0.08, 0.15, 0.3, 0.5} {
		s := resolved(t, fmt.Sprintf(`
rooms:
  a: {size: [4, 3]}
  b: {at: [%g, 0], size: [4, 3]}
openings: {arch: {gap: a.right, along: 1, width: 1, head: 2}}
`, 4+gap))
		o := s.Openings[0]
		near(t, "depth", o.Depth, gap, 1e-5)
		if o.FarRoom != "b" {
			t.Errorf("gap %g leads to %q", gap, o.FarRoom)
		}
		for x := 4.001; x < 4+gap; x += 0.01 {
			for _, c := range []struct {
				y, z float64
				wall bool
			}{{1.5, 1, false}, {1.01, 1, false}, {1.99, 1, false}, {1.5, 2.1, true}, {0.99, 1, true}, {2.01, 1, true}} {
				if got := pieceAt(s, r2.Vec{X: x, Y: c.y}, c.z) != ""; got != c.wall {
					t.Fatalf("gap %g: wall at [%.3f, %g, %g] is %v", gap, x, c.y, c.z, got)
				}
			}
		}
	}
}

// Rooms drawn from a tape are never quite parallel; the wall between them is one all the same.
func TestOpeningBetweenRoomsNotQuiteParallel(t *testing.T) {
	for _, gap := range []float64{0.1, 0.3, 0.5} {
		s := resolved(t, fmt.Sprintf(`
rooms:
  a: {size: [4, 3]}
  b: {corners: [{a: [%.4f, 0]}, {b: [8, 0]}, {c: [8, 3]}, {d: [%.4f, 3]}]}
openings: {arch: {gap: a.right, along: 1, width: 1, head: 2}}
`, 4+gap, 4.002+gap))
		noOverlaps(t, s)
		if o := s.Openings[0]; o.FarRoom != "b" || o.Depth < gap-0.01 || o.Depth > gap+0.01 {
			t.Errorf("gap %g: depth %v to %q", gap, o.Depth, o.FarRoom)
		}
		for x := 4.001; x < 4+gap; x += 0.01 {
			if w := pieceAt(s, r2.Vec{X: x, Y: 1.5}, 1); w != "" {
				t.Errorf("gap %g: %s stands in the hole at x = %.3f", gap, w, x)
			}
		}
	}
}

func TestOpeningToTheOutsideBesideANeighbour(t *testing.T) {
	// Two rooms 3 m apart: between them is a yard, and the window looks into it.
	s := resolved(t, "rooms: {a: {size: [4, 3]}, b: {at: [7, 0], size: [4, 3]}}\nopenings: {w: {window: a.right, width: 1}}")
	if o := s.Openings[0]; o.FarRoom != "" || o.Depth < 0.149 || o.Depth > 0.151 {
		t.Errorf("%+v", o)
	}
}

// A door ajar turns about its hinge: the four ways a door can hang, each opened by 90 degrees.
func TestDoorLeaves(t *testing.T) {
	for _, c := range []struct {
		hinge, swing string
		tip          r2.Vec // the free corner of the face that it opens to
	}{
		// A door from x = 1 to x = 1.8 in the top wall, y = 3 to y = 3.2; left is x = 1.
		{"left", "in", r2.Vec{X: 1, Y: 2.2}},
		{"right", "in", r2.Vec{X: 1.8, Y: 2.2}},
		{"left", "out", r2.Vec{X: 1, Y: 4}},
		{"right", "out", r2.Vec{X: 1.8, Y: 4}},
	} {
		s := resolved(t, fmt.Sprintf("rooms: {den: {size: [4, 3], wall: 0.2}}\nopenings: {d: {door: den.top, along: 1, hinge: %s, swing: %s, ajar: 90}}", c.hinge, c.swing))
		var leaf []r2.Vec
		for _, p := range s.Set.Prisms {
			if p.Name == "d" {
				leaf = p.Base
				near(t, "top of the leaf", p.Z1, 2, 1e-12)
			}
		}
		near(t, "area of the leaf", plane.Area(leaf), 0.8*leafThickness, 1e-12)
		found := false
		for _, p := range leaf {
			found = found || r2.Norm(r2.Sub(p, c.tip)) < 1e-9
		}
		if !found {
			t.Errorf("hinge %s, swing %s: %v has no corner at %v", c.hinge, c.swing, leaf, c.tip)
		}
	}
}

// Shut, the leaf fills its hole and stands within the wall.
func TestShutDoorClosesItsHole(t *testing.T) {
	for _, swing := range []string{"in", "out"} {
		s := resolved(t, "rooms: {den: {size: [4, 3], wall: 0.2}}\nopenings: {d: {door: den.top, along: 1, swing: "+swing+"}}")
		for _, p := range s.Set.Prisms {
			if p.Name == "d" {
				near(t, "within the hole", plane.Area(plane.Intersection(p.Base, s.Openings[0].Plan())), 0.8*leafThickness, 1e-9)
			}
		}
	}
}

func TestRandomHolesAreAir(t *testing.T) {
	rnd := rand.New(rand.NewPCG(5, 5))
	for range 60 {
		turn := 360 * rnd.Float64()
		ring := ringAt(0, 0, 5, 0, 5, 4, 0, 4)
		for k := range ring {
			ring[k] = plane.Clockwise(ring[k], turn)
		}
		text := "rooms: {den: {corners: ["
		for k, p := range ring {
			text += fmt.Sprintf("{p%d: [%.6f, %.6f]}, ", k, p.X, p.Y)
		}
		along, width, sill := 3*rnd.Float64(), 0.2+rnd.Float64(), 1.2*rnd.Float64()
		text += fmt.Sprintf("]}}\nopenings: {w: {window: den.p%d-p%d, along: %.4f, width: %.4f, sill: %.4f}}",
			1, 2, min(along, 4-width-0.001), width, sill)
		s := resolved(t, text)
		noOverlaps(t, s)
		o := &s.Openings[0]
		for range 50 {
			p := r2.Add(o.Left, r2.Add(r2.Scale(0.001+rnd.Float64()*(width-0.002), o.Rightward()), r2.Scale(rnd.Float64()*o.Depth, o.Outward)))
			if w := pieceAt(s, p, o.Sill+0.001+rnd.Float64()*(o.Head-o.Sill-0.002)); w != "" {
				t.Fatalf("%v in the hole is %s\n%s", p, w, text)
			}
			if pieceAt(s, p, o.Head+0.01) == "" {
				t.Fatalf("%v over the hole is air\n%s", p, text)
			}
		}
	}
}
