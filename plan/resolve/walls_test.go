package resolve

import (
	"math"
	"math/rand/v2"
	"strconv"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/scene"
)

// ringArea is the area of a ring of mitred wall round a room: P t + t² times the sum of
// tan(turn/2) over the corners.
func ringArea(inside []r2.Vec, t float64) float64 {
	sum := plane.Perimeter(inside) * t
	for i := range inside {
		n := len(inside)
		in, out := r2.Sub(inside[i], inside[(i+n-1)%n]), r2.Sub(inside[(i+1)%n], inside[i])
		sum += t * t * math.Tan(math.Atan2(r2.Cross(in, out), r2.Dot(in, out))/2)
	}
	return sum
}

func pieceArea(s *plan.Setup) float64 {
	sum := 0.0
	for _, w := range s.Walls {
		sum += plane.Area(w.Outline)
	}
	return sum
}

func TestSquareRoomHasFourMitredWalls(t *testing.T) {
	s := resolved(t, "rooms: {den: {size: [4, 3], wall: 0.2}}")
	if len(s.Walls) != 4 {
		t.Fatalf("%d pieces", len(s.Walls))
	}
	want := map[string][]r2.Vec{
		"bottom": ringAt(4, 0, 0, 0, -0.2, -0.2, 4.2, -0.2),
		"right":  ringAt(4, 3, 4, 0, 4.2, -0.2, 4.2, 3.2),
		"top":    ringAt(0, 3, 4, 3, 4.2, 3.2, -0.2, 3.2),
		"left":   ringAt(0, 0, 0, 3, -0.2, 3.2, -0.2, -0.2),
	}
	for _, w := range s.Walls {
		near(t, w.Wall, plane.Area(plane.Intersection(w.Outline, want[w.Wall])), plane.Area(want[w.Wall]), 1e-9)
		near(t, w.Wall, plane.Area(w.Outline), plane.Area(want[w.Wall]), 1e-9)
		if w.Z0 != 0 || w.Z1 != 2.5 || w.Room != "den" || w.Opening != "" {
			t.Errorf("%+v", w)
		}
	}
}

func TestWallsTileTheRingOfRandomRooms(t *testing.T) {
	rnd := rand.New(rand.NewPCG(3, 3))
	tried := 0
	for i := range 400 {
		room := cornerRoom("den", star(rnd, 3+rnd.IntN(8), r2.Vec{}, 2.5, 4))
		s, log := roomsOnly(t, room)
		if log.Failed() {
			t.Fatalf("room %d: %s", i, told(log))
		}
		noOverlaps(t, s)
		if !easyCorners(s.Rooms[0].Inside) {
			continue // cut-off mitres and thin fins have no such simple area
		}
		tried++
		near(t, "area of the walls", pieceArea(s), ringArea(s.Rooms[0].Inside, scene.DefaultWallThickness), 1e-5)
	}
	if tried < 100 {
		t.Errorf("only %d rooms had plain corners", tried)
	}
}

// easyCorners reports a ring whose corners are neither very sharp nor close together.
func easyCorners(ring []r2.Vec) bool {
	for i := range ring {
		n := len(ring)
		in, out := r2.Sub(ring[i], ring[(i+n-1)%n]), r2.Sub(ring[(i+1)%n], ring[i])
		if r2.Cos(in, out) < -0.8 || r2.Norm(in) < 0.8 {
			return false
		}
	}
	return true
}

// noOverlaps checks that no two pieces share space and that none stands in a room.
func noOverlaps(t *testing.T, s *plan.Setup) {
	t.Helper()
	for i, a := range s.Walls {
		if !plane.IsConvex(a.Outline) || plane.Area(a.Outline) <= 0 {
			t.Errorf("piece %v is not a convex ring", a.Outline)
		}
		for _, b := range s.Walls[:i] {
			if !plane.Overlap(a.Z0, a.Z1, b.Z0, b.Z1) {
				continue
			}
			if c := plane.Intersection(a.Outline, b.Outline); c != nil && plane.Width(c) > 3*plane.Grain {
				t.Errorf("%s.%s and %s.%s share %v", a.Room, a.Wall, b.Room, b.Wall, c)
			}
		}
		for k := range s.Rooms {
			for _, part := range s.Rooms[k].Parts {
				if !plane.Overlap(a.Z0, a.Z1, s.Rooms[k].Base, s.Rooms[k].Top) {
					continue
				}
				if c := plane.Intersection(a.Outline, part); c != nil && plane.Width(c) > 3*plane.Grain {
					t.Errorf("%s.%s stands in %s: %v", a.Room, a.Wall, s.Rooms[k].Name, c)
				}
			}
		}
	}
}

// Between two rooms side by side the gap is wall, each half the room's that it faces.
func TestPartyWallIsTheGap(t *testing.T) {
	for _, gap := range []string{"0.1", "0.2", "0.3", "0.45", "0.6"} {
		s := resolved(t, "rooms: {a: {size: [4, 3]}, b: {at: ["+"4"+gap[1:]+", 0.5], size: [2, 2]}}")
		noOverlaps(t, s)
		g, err := strconv.ParseFloat(gap, 64)
		if err != nil {
			t.Fatal(err)
		}
		for x := 4 + g/200; x < 4+g; x += g / 100 {
			for y := 0.505; y < 2.5; y += 0.01 {
				p := r2.Vec{X: x, Y: y}
				owner := pieceAt(s, p, 1)
				want := "a.right"
				if x > 4+g/2 {
					want = "b.left"
				}
				if owner != want {
					t.Fatalf("gap %s: %v is %q, want %s", gap, p, owner, want)
				}
			}
		}
	}
}

// pieceAt is the wall whose piece holds a point, "" none.
func pieceAt(s *plan.Setup, p r2.Vec, z float64) string {
	for _, w := range s.Walls {
		if z > w.Z0 && z < w.Z1 && plane.Contains(p, w.Outline, -plane.Grain) {
			return w.Room + "." + w.Wall
		}
	}
	return ""
}

// Every point outside all rooms that lies square before a wall, nearer than its thickness, is
// wall: whatever stands beside whatever, there are no slits.
func TestRandomFlatsHaveNoSlits(t *testing.T) {
	rnd := rand.New(rand.NewPCG(4, 4))
	for i := range 150 {
		s, log := roomsOnly(t, randomFlat(rnd)...)
		if log.Failed() {
			t.Fatalf("flat %d: %s", i, told(log))
		}
		noOverlaps(t, s)
		for k := range s.Rooms {
			for j := range s.Rooms[k].Walls {
				solidBehind(t, rnd, s, &s.Rooms[k], &s.Rooms[k].Walls[j])
			}
		}
		if t.Failed() {
			t.Fatalf("flat %d", i)
		}
	}
}

// solidBehind looks for air behind a wall, within its thickness and, before a party wall, within
// half the gap.
func solidBehind(t *testing.T, rnd *rand.Rand, s *plan.Setup, room *plan.Room, w *plan.Wall) {
	t.Helper()
	for range 40 {
		p := r2.Add(w.On(rnd.Float64()*w.Length()), r2.Scale(rnd.Float64()*w.Thickness, w.Outward))
		z := room.Base + 0.01 + rnd.Float64()*(room.Top-room.Base-0.02)
		if inARoom(s, p, z) || pieceAt(s, p, z) != "" {
			continue
		}
		t.Errorf("%v at %.3f behind %s.%s is air", p, z, room.Name, w.Name)
	}
}

func inARoom(s *plan.Setup, p r2.Vec, z float64) bool {
	for i := range s.Rooms {
		if room := &s.Rooms[i]; z > room.Base && z < room.Top && room.Holds(p) {
			return true
		}
	}
	return false
}

// randomFlat is a row of rooms with gaps of all widths, on different levels, turned all together.
func randomFlat(rnd *rand.Rand) []scene.Room {
	var rooms []scene.Room
	x, turn := 0.0, 360*rnd.Float64()
	if rnd.IntN(2) == 0 {
		turn = 90 * float64(rnd.IntN(4))
	}
	for i := range 2 + rnd.IntN(4) {
		w, y, h := 1+3*rnd.Float64(), rnd.Float64(), 1+3*rnd.Float64()
		ring := ringAt(x, y, x+w, y, x+w, y+h, x, y+h)
		if rnd.IntN(2) == 0 { // an L
			ring = ringAt(x, y, x+w, y, x+w, y+h/2, x+w/2, y+h/2, x+w/2, y+h, x, y+h)
		}
		for k := range ring {
			ring[k] = plane.Clockwise(ring[k], turn)
		}
		room := cornerRoom("r"+strconv.Itoa(i), ring)
		room.Base = scene.Given[float64]{Value: 0.2 * float64(rnd.IntN(4)), Set: true}
		room.Wall = scene.Given[float64]{Value: 0.05 + 0.3*rnd.Float64(), Set: true}
		rooms = append(rooms, room)
		x += w + 0.02 + 0.7*rnd.Float64()
	}
	return rooms
}

func TestThinFinWithinOneRoom(t *testing.T) {
	// Two arms of one room with 0.1 m of wall between them, thinner than the wall's thickness.
	s, log := roomsOnly(t, cornerRoom("u", ringAt(0, 0, 4.1, 0, 4.1, 3, 2.1, 3, 2.1, 1, 2, 1, 2, 3, 0, 3)))
	if log.Failed() {
		t.Fatal(told(log))
	}
	noOverlaps(t, s)
	for y := 1.01; y < 3; y += 0.05 {
		for x := 2.005; x < 2.1; x += 0.01 {
			if pieceAt(s, r2.Vec{X: x, Y: y}, 1) == "" {
				t.Fatalf("[%.3f, %.3f] is air", x, y)
			}
		}
	}
}

func TestStoreysMayLieOverEachOther(t *testing.T) {
	s := resolved(t, "rooms: {shop: {size: [4, 3]}, flat: {size: [4, 3], base: 2.8}}")
	noOverlaps(t, s)
	if len(s.Walls) != 8 {
		t.Errorf("%d pieces, want 8", len(s.Walls))
	}
}

func TestSharpCornerIsCutOff(t *testing.T) {
	s, log := roomsOnly(t, cornerRoom("wedge", ringAt(0, 0, 6, 0, 6, 0.4)))
	if log.Failed() {
		t.Fatal(told(log))
	}
	for _, w := range s.Walls {
		for _, p := range w.Outline {
			if p.X < 0 && r2.Norm(p) > 1.05*maxMitre*scene.DefaultWallThickness {
				t.Errorf("%s.%s reaches out to %v", w.Room, w.Wall, p)
			}
		}
	}
	noOverlaps(t, s)
}
