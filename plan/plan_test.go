package plan_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/term"
)

// closeTo says whether two points are one, but for rounding.
func closeTo(a, b r3.Vec) bool { return r3.Norm(r3.Sub(a, b)) < 1e-12 }

// box is a room by two corners of its clear inside, its walls named as the sheet lies.
func box(name string, x0, y0, x1, y1 float64) plan.Room {
	ring := []r2.Vec{{X: x0, Y: y0}, {X: x1, Y: y0}, {X: x1, Y: y1}, {X: x0, Y: y1}}
	room := plan.Room{Name: name, Inside: ring, Parts: [][]r2.Vec{ring}, Top: 2.5}
	for i, side := range []string{"bottom", "right", "top", "left"} {
		a, b := ring[i], ring[(i+1)%4]
		along := r2.Unit(r2.Sub(b, a))
		room.Walls = append(room.Walls, plan.Wall{Name: side, Left: b, Right: a, Outward: r2.Vec{X: along.Y, Y: -along.X}, Thickness: 0.15})
	}
	return room
}

// A bearing runs clockwise from the sheet's up; the right of an axis is 90° on from it, and roll turns that clockwise as
// seen from behind, upright axes as well.
func TestFramesPointAsBearingsSay(t *testing.T) {
	for _, c := range []struct{ pan, tilt, roll float64 }{{0, 0, 0}, {90, 0, 0}, {200, -30, 0}, {45, 90, 0}, {45, -90, 0}, {30, 20, 90}, {30, -90, 35}} {
		axis := plan.Pointing(c.pan, c.tilt)
		f := plan.FrameAlong(r3.Vec{X: 1, Y: 2, Z: 3}, axis, c.pan, c.roll)
		flat := plane.Direction(c.pan + 90)
		level := r3.Vec{X: flat.X, Y: flat.Y}
		sin, cos := plane.Sincos(c.roll)
		if want := r3.Sub(r3.Scale(cos, level), r3.Scale(sin, r3.Cross(level, axis))); !closeTo(f.Right, want) {
			t.Errorf("%+v: right is %v, want %v", c, f.Right, want)
		}
		if !closeTo(f.Local(f.Right), r3.Vec{X: 1}) || !closeTo(f.Local(f.Up()), r3.Vec{Y: 1}) || !closeTo(f.Local(axis), r3.Vec{Z: -1}) {
			t.Errorf("%+v: the frame's own axes are not right, up and back", c)
		}
		ahead := r3.Add(f.At, r3.Add(r3.Scale(0.2, f.Right), r3.Add(r3.Scale(0.3, f.Up()), r3.Scale(2, axis))))
		if got := f.Place(r3.Vec{X: 0.2, Y: 0.3, Z: 2}); !closeTo(got, ahead) {
			t.Errorf("%+v: the place is %v, want %v", c, got, ahead)
		}
	}
}

// Two walls stand back to back where they face away from each other over a stretch: across a gap, or in one plane, where
// rooms touch.
func TestWallsBackToBack(t *testing.T) {
	a := box("a", 0, 0, 4, 3)
	for _, c := range []struct {
		name  string
		other plan.Room
		want  plan.Stretch
		ok    bool
		touch bool
	}{
		{"touching along a part", box("b", 4, 1, 6, 5), plan.Stretch{From: 0, To: 2}, true, true},
		{"a wall between", box("b", 4.15, 1, 6, 2), plan.Stretch{Gap: 0.15, From: 1, To: 2}, true, false},
		{"a corner alone", box("b", 4, 3, 6, 5), plan.Stretch{From: 0, To: 0}, false, false},
		{"one within the other", box("b", 3, 1, 6, 2), plan.Stretch{Gap: -1, From: 1, To: 2}, false, false},
	} {
		got, ok := plan.BackToBack(&a.Walls[1], &c.other.Walls[3])
		if ok != c.ok || !(math.Abs(got.Gap-c.want.Gap) <= 1e-12) || !(math.Abs(got.From-c.want.From) <= 1e-12) || !(math.Abs(got.To-c.want.To) <= 1e-12) {
			t.Errorf("%s: %+v, %v; want %+v, %v", c.name, got, ok, c.want, c.ok)
		}
		if got := plan.RoomsTouch(&a, &c.other); got != c.touch {
			t.Errorf("%s: the rooms touch: %v, want %v", c.name, got, c.touch)
		}
	}
	if _, ok := plan.BackToBack(&a.Walls[1], &a.Walls[0]); ok {
		t.Error("two walls square to each other stand back to back")
	}
	above := box("b", 4, 1, 6, 5)
	above.Base, above.Top = 2.5, 5
	if plan.RoomsTouch(&a, &above) {
		t.Error("a room over another touches it")
	}
	if at, long := plan.LongestSharedFace(&a, &plan.Room{Walls: box("b", 4, 1, 6, 5).Walls}); long != 2 || at != (r2.Vec{X: 4, Y: 2}) {
		t.Errorf("the shared face is %g m about %v, want 2 m about (4, 2)", long, at)
	}
}

// A ceiling that rises is as high over a point as its slope has it, and the air of the room ends there.
func TestAirUnderASlope(t *testing.T) {
	room := box("loft", 0, 0, 4, 3)
	room.Base, room.Top, room.CeilingLow, room.CeilingRise = 1, 4, 2, r2.Vec{X: 0.5}
	s := plan.Setup{Rooms: []plan.Room{room}}
	if got := room.CeilingAt(r2.Vec{X: 3, Y: 1}); got != 3.5 {
		t.Errorf("the ceiling is at %g m, want 3.5", got)
	}
	for at, in := range map[r3.Vec]bool{{X: 3, Y: 1, Z: 3.4}: true, {X: 1, Y: 1, Z: 3.4}: false, {X: 3, Y: 1, Z: 0.9}: false, {X: 5, Y: 1, Z: 2}: false} {
		if got := s.RoomAt(at) != nil; got != in {
			t.Errorf("the air of the room holds %v: %v, want %v", at, got, in)
		}
	}
}

// Things are found by their names, a wall with its room's before it, and a room by a point of the plan or of an opening
// in its wall.
func TestThingsAreFound(t *testing.T) {
	a, b := box("a", 0, 0, 4, 3), box("b", 4.15, 0, 6, 3)
	gap := plan.Opening{Name: "gap", Room: "a", Left: r2.Vec{X: 4, Y: 2}, Right: r2.Vec{X: 4, Y: 1}, Outward: r2.Vec{X: 1}, Depth: 0.15}
	s := plan.Setup{Rooms: []plan.Room{a, b}, Openings: []plan.Opening{gap}}
	for _, c := range []struct {
		p    r2.Vec
		near string
		want string
	}{{r2.Vec{X: 1, Y: 1}, "", "a"}, {r2.Vec{X: 5, Y: 1}, "a", "b"}, {r2.Vec{X: 4.1, Y: 1.5}, "", "a"}, {r2.Vec{X: 4.1, Y: 2.5}, "", ""}} {
		name := ""
		if room := s.RoomUnder(c.p, c.near); room != nil {
			name = room.Name
		}
		if name != c.want {
			t.Errorf("under %v is %q, want %q", c.p, name, c.want)
		}
	}
	if w := s.WallNamed("b.left"); w == nil || w.Left != b.Walls[3].Left {
		t.Error("b.left is not found")
	}
	if s.WallNamed("b.roof") != nil || s.WallNamed("left") != nil || s.RoomHolding(r2.Vec{X: 5, Y: 1}, "a") != nil || s.OpeningNamed("door") != nil {
		t.Error("something is found that the set-up lacks")
	}
	if s.OpeningNamed("gap") == nil || s.RoomHolding(r2.Vec{X: 5, Y: 1}, "b") == nil {
		t.Error("something that is there is not found")
	}
}

// A name that only says the number stands alone, any other behind it; what bears no number has its name.
func TestNumbersStandBeforeNames(t *testing.T) {
	s := plan.Setup{Lights: []plan.Light{{Name: "lamp", Tag: "3"}, {Name: "l4", Tag: "4"}, {Name: "5", Tag: "5"}, {Name: "day"}}, Grip: []plan.Grip{{Name: "flag", Tag: "G1"}}}
	for name, want := range map[string]string{"lamp": "3 lamp", "l4": "4", "5": "5", "day": "day", "flag": "G1 flag", "ines": "ines"} {
		if got := s.Numbered(name); got != want {
			t.Errorf("%s is called %q, want %q", name, got, want)
		}
	}
}

// A level plane lies from the floors up to below the highest ceiling.
func TestPlanesThatCanBeMapped(t *testing.T) {
	s := plan.Setup{Rooms: []plan.Room{box("a", 0, 0, 4, 3)}}
	for height, want := range map[float64]string{0: "", 2.49: "", 2.5: "no room is so high; the highest room has 2.50 m", -0.1: "write a height above the floor, 0 or more"} {
		if got := s.PlaneFault(height); got != want {
			t.Errorf("%g m: %q, want %q", height, got, want)
		}
	}
	if got := (&plan.Setup{}).PlaneFault(100); got != "" {
		t.Errorf("in the open: %q, want nothing", got)
	}
}

// Of keys that stand twice the first is kept.
func TestKeysThatNothingComputes(t *testing.T) {
	key := func(path, words string, changes scene.Change) plan.Uncomputed {
		u := plan.Uncomputed{Words: words}
		u.Path, u.Changes = path, changes
		return u
	}
	all := []plan.Uncomputed{key("a", "scrims of 1", scene.OwnLight), key("b", "plays of 2", scene.OwnLight), key("a", "again", scene.OwnLight)}
	if got := plan.ListUncomputed(plan.Unique(all)); got != "scrims of 1, plays of 2" {
		t.Errorf("the keys are %q", got)
	}
}

// 2.10 m over a floor that is 0.40 m over the ground is 2.50 m over the ground, to the bit or not: one height on paper has one number of bags.
func TestBagsFromAHeightUp(t *testing.T) {
	stand := plan.Mount{Kind: term.Stand}
	for height, want := range map[float64]int{2.49: 1, 2.1 + 0.4: 2, 2.5 - 1e-12: 2, 2.6: 2} {
		if got := stand.Bags(height); got != want {
			t.Errorf("%g m: %d bags, want %d", height, got, want)
		}
	}
}
