package resolve

import (
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/plane"
)

func wallNamed(t *testing.T, room *plan.Room, name string) *plan.Wall {
	t.Helper()
	for i := range room.Walls {
		if room.Walls[i].Name == name {
			return &room.Walls[i]
		}
	}
	t.Fatalf("%s has no wall %s", room.Name, name)
	return nil
}

// The left end of each wall, as someone sees it who stands in the room and looks at the wall.
func TestLeftEndsOfASizeRoom(t *testing.T) {
	s := resolved(t, "rooms: {den: {at: [1, 2], size: [4, 3]}}")
	for _, c := range []struct {
		wall                 string
		left, right, outward r2.Vec
	}{
		{"top", r2.Vec{X: 1, Y: 5}, r2.Vec{X: 5, Y: 5}, r2.Vec{Y: 1}},
		{"right", r2.Vec{X: 5, Y: 5}, r2.Vec{X: 5, Y: 2}, r2.Vec{X: 1}},
		{"bottom", r2.Vec{X: 5, Y: 2}, r2.Vec{X: 1, Y: 2}, r2.Vec{Y: -1}},
		{"left", r2.Vec{X: 1, Y: 2}, r2.Vec{X: 1, Y: 5}, r2.Vec{X: -1}},
	} {
		w := wallNamed(t, &s.Rooms[0], c.wall)
		near2(t, c.wall+" left end", w.Left, c.left, 0)
		near2(t, c.wall+" right end", w.Right, c.right, 0)
		near2(t, c.wall+" outward", w.Outward, c.outward, 0)
	}
}

// A list of corners gives the same walls under the same names whichever way round it is walked.
func TestCornersBothWaysRound(t *testing.T) {
	left := resolved(t, "rooms: {den: {corners: [{a: [0, 0]}, {b: [4, 0]}, {c: [4, 3]}, {d: [0, 3]}]}}")
	right := resolved(t, "rooms: {den: {corners: [{a: [0, 0]}, {d: [0, 3]}, {c: [4, 3]}, {b: [4, 0]}]}}")
	for _, c := range []struct{ one, other string }{{"a-b", "b-a"}, {"b-c", "c-b"}, {"c-d", "d-c"}, {"d-a", "a-d"}} {
		w, v := wallNamed(t, &left.Rooms[0], c.one), wallNamed(t, &right.Rooms[0], c.other)
		near2(t, c.one+" left end", v.Left, w.Left, 0)
		near2(t, c.one+" right end", v.Right, w.Right, 0)
	}
	if got := plane.Area(right.Rooms[0].Inside); got != 12 {
		t.Errorf("area %v: the inside runs clockwise", got)
	}
}

func TestOutlineOfAnL(t *testing.T) {
	s := resolved(t, "rooms: {k: {at: [1, 1], outline: [right 4.4, up 2.6, left 1.2, up 1.4, left 3.2, down 4.0]}}")
	room := &s.Rooms[0]
	want := ringAt(1, 1, 5.4, 1, 5.4, 3.6, 4.2, 3.6, 4.2, 5, 1, 5)
	for i, p := range room.Inside {
		near2(t, "corner", p, want[i], 1e-12)
	}
	near2(t, "left end of w6", wallNamed(t, room, "w6").Left, r2.Vec{X: 1, Y: 1}, 1e-12)
	near2(t, "left end of w3", wallNamed(t, room, "w3").Left, r2.Vec{X: 4.2, Y: 3.6}, 1e-12)
}

// 12 mm missing along the sheet are shared among the sides that run along it, by their length.
func TestClosingErrorIsSharedOut(t *testing.T) {
	s := resolved(t, "rooms: {k: {outline: [right 4.0, up 3.0, left 1.006, up 1, left 3.006, down 4.0]}}")
	room := &s.Rooms[0]
	wide := 4 + 0.012*4/8.012
	near2(t, "second corner", room.Inside[1], r2.Vec{X: wide}, plane.Grain)
	near2(t, "fourth corner", room.Inside[3], r2.Vec{X: wide - 1.006 + 0.012*1.006/8.012, Y: 3}, plane.Grain)
	for i := range room.Walls {
		if o := room.Walls[i].Outward; o.X != 0 && o.Y != 0 {
			t.Errorf("wall %s is askew: %v", room.Walls[i].Name, o)
		}
	}
}

func TestSlopedCeiling(t *testing.T) {
	s := resolved(t, "rooms: {attic: {at: [1, 1], size: [4, 3], base: 0.5, height: {low: 1.8, high: 3, toward: attic.right}}}")
	room := &s.Rooms[0]
	for _, c := range []struct{ x, z float64 }{{1, 2.3}, {3, 2.9}, {5, 3.5}} {
		near(t, "ceiling", room.CeilingAt(r2.Vec{X: c.x, Y: 2}), c.z, 1e-12)
	}
	near(t, "top", room.Top, 3.5, 1e-12)
	for _, w := range s.Walls {
		near(t, "foot of "+w.Wall, w.Z0, 0.5, 0)
		near(t, "top of "+w.Wall, w.Z1, map[string]float64{"left": 2.3, "right": 3.5, "top": 3.5, "bottom": 3.5}[w.Wall], 1e-12)
	}
	if s.RoomAt(r3.Vec{X: 1.1, Y: 2, Z: 2.5}) != nil {
		t.Error("over the low end is outside")
	}
	if got := s.RoomAt(r3.Vec{X: 4.9, Y: 2, Z: 2.5}); got == nil || got.Name != "attic" {
		t.Error("under the high end is inside")
	}
}

// Floors look up, ceilings down, and each covers the room's plan.
func TestFloorsAndCeilings(t *testing.T) {
	s := resolved(t, "rooms: {k: {outline: [right 4, up 2, left 2, up 2, left 2, down 4], height: {low: 2, high: 3, toward: w2}}}")
	areas := map[string]float64{}
	for _, h := range s.Set.Sheets {
		n := r3.Unit(r3.Cross(r3.Sub(h.Corners[1], h.Corners[0]), r3.Sub(h.Corners[2], h.Corners[0])))
		flat := make([]r2.Vec, len(h.Corners))
		for i, c := range h.Corners {
			flat[i] = plan.InPlan(c)
			if h.Name == "k.ceiling" {
				near(t, "ceiling", c.Z, s.Rooms[0].CeilingAt(flat[i]), 1e-12)
			}
		}
		areas[h.Name] += plane.Area(flat)
		if up := h.Name == "k.floor"; (n.Z > 0) != up {
			t.Errorf("%s faces %v", h.Name, n)
		}
		if s.Names[h.ID] != h.Name {
			t.Errorf("identity %d is %q, not %q", h.ID, s.Names[h.ID], h.Name)
		}
	}
	near(t, "floor", areas["k.floor"], 12, 1e-9)
	near(t, "ceiling", areas["k.ceiling"], -12, 1e-9)
}

func TestIdentitiesAreUniqueAndStable(t *testing.T) {
	text := `
rooms: {a: {size: [4, 3]}, b: {at: [4.2, 0], size: [3, 3]}}
openings: {w: {window: a.left, along: 1, width: 1}, d: {door: a.right, along: 1}}
furniture: {t: {table: [1, 1, 0.7], at: [2, 2]}}
people: {ada: {at: [1, 2]}}
`
	s, again := resolved(t, text), resolved(t, text)
	seen := map[int]string{}
	var order []string
	for _, p := range s.Set.Prisms {
		seen[int(p.ID)] = p.Name
		order = append(order, p.Name)
	}
	for _, h := range s.Set.Sheets {
		seen[int(h.ID)] = h.Name
	}
	if len(seen) != len(s.Set.Prisms)+len(s.Set.Sheets) || len(seen) != len(s.Names) {
		t.Errorf("%d identities for %d prisms and %d sheets, %d names", len(seen), len(s.Set.Prisms), len(s.Set.Sheets), len(s.Names))
	}
	var second []string
	for _, p := range again.Set.Prisms {
		second = append(second, p.Name)
	}
	if !slices.Equal(order, second) {
		t.Error("the second run gives another order")
	}
}
