package study_test

import (
	"math"
	"testing"

	"scrimshaw/plan/study"
)

// The map at face height lies over the floor of the room that the first person is in, whatever they stand
// or lie on, and over the open ground where they are in none.
func TestFacesOffTheFloor(t *testing.T) {
	const room = `scrimshaw: 1
rooms: {den: {size: [4, 3], height: 3}}
openings: {out: {door: den.right, along: 1, width: 0.9, ajar: 90}}
furniture:
  stage: {deck: [1.5, 1.5, 0.3], at: [1, 1]}
  steps: {stairs: [1, 1.2, 0.6], at: [3, 2]}
  bed: {box: [1.2, 2, 0.5], at: [1, 1.5]}
cameras: {A: {at: [3.5, 0.5], height: 1.4, lens: 32 mm}}
lights: {a: {output: {lumens: 3000, shape: uniform}, at: [2.2, 1.2], height: 2.4, aim: down}}
`
	for name, c := range map[string]struct {
		more         string
		wide, atHead float64 // m; atHead is where the person's head is, along x
	}{
		"on a deck":       {"people: {ada: {at: {top: stage}}}\n", 4, 1},
		"on stairs":       {"people: {ada: {at: {top: steps}}}\n", 4, 3},
		"in bed":          {"people: {ada: {at: {top: bed}, pose: lying}}\n", 4, 1},
		"in a doorway":    {"people: {ada: {at: [4.07, 1.55]}}\n", 4, 2.2},
		"on lower ground": {"people: {ada: {at: [6, 1.5]}}\nsite: {ground: -0.6}\n", 12.3, 6},
	} {
		t.Run(name, func(t *testing.T) {
			s := laidOut(t, room+c.more)
			lit := run(t, s, study.Options{Step: 0.1})
			f := lit.Face()
			if f == nil {
				t.Fatal("there is no map at face height")
			}
			if got := float64(f.Lattice.NU) * f.Lattice.U.X; !(math.Abs(got-c.wide) <= 0.11) {
				t.Errorf("it is %.2f m wide, want %.2f", got, c.wide)
			}
			if !near(f, c.atHead, s.People[0].At.Y) {
				t.Error("it has no data at the person")
			}
			if lit.Floor() == nil {
				t.Error("there is no map of the floor")
			}
		})
	}
}

// near says whether a field has data within a step of a place.
func near(f *study.Field, x, y float64) bool {
	corner, step := f.Corner()
	i, j := int(math.Round((x-corner.X)/step)), int(math.Round((y-corner.Y)/step))
	return !f.Lattice.Masked(i, j)
}

// A room on another level than the open ground is no part of it.
func TestOpenGroundLeavesOutRooms(t *testing.T) {
	s := laidOut(t, `scrimshaw: 1
rooms: {den: {size: [4, 3], height: 3, base: 0.6}}
people: {ada: {at: [6, 1.5]}}
cameras: {A: {at: [8, 0.5], height: 1.4, lens: 32 mm}}
lights: {a: {output: {lumens: 3000, shape: uniform}, at: [6, 0], height: 2.4, aim: down}}
`)
	f := run(t, s, study.Options{Step: 0.1}).Face()
	if f == nil || near(f, 2, 1.5) || !near(f, 5, 1.5) {
		t.Errorf("the map of the ground covers %v", s.Rooms[0].Name)
	}
}
