package clash

import (
	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/body"
)

// What is looked for is bounded, so that no scene takes long: moves of so many things, and of each by so many legs.
const (
	mostSearches = 60
	mostLegs     = 2
)

// clearOf is how much farther than just out a thing is moved, m.
const clearOf = 1e-3

// freeing is the shortest move along the plan that takes a thing, turned as it is, out of all that it lies in and into nothing else,
// along one direction or two; nought where there is none.
func freeing(s *plan.Setup, t *thing, met []meeting, others []*thing) (best r3.Vec) {
	for _, way := range waysOut(met) {
		for _, far := range firstLegs(met, way) {
			by := r3.Scale(far+clearOf, way)
			for leg := 1; best == (r3.Vec{}) || r3.Norm(by) < r3.Norm(best); leg++ {
				left := t.moved(by).allMeetings(others)
				if left == nil && t.staysInRoom(s, by) {
					best = by
				}
				if left == nil || leg == mostLegs {
					break
				}
				by = r3.Add(by, nextLeg(left, way))
			}
		}
	}
	return best
}

// staysInRoom says whether a move leaves a thing in the room that it is in: nobody carries it through a wall.
func (t *thing) staysInRoom(s *plan.Setup, by r3.Vec) bool {
	from, to := s.RoomUnder(t.at, ""), s.RoomUnder(r2.Add(t.at, plan.InPlan(by)), "")
	return from == to
}

// nextLeg is the least move out of what is left that does not go back on the one before.
func nextLeg(left []meeting, before r3.Vec) (best r3.Vec) {
	for _, way := range waysOut(left) {
		if r3.Dot(way, before) < -1e-6 {
			continue
		}
		if by := r3.Scale(farOut(left, way)+clearOf, way); best == (r3.Vec{}) || r3.Norm(by) < r3.Norm(best) {
			best = by
		}
	}
	return best
}

// waysOut are the level directions in which pieces leave what they lie in soonest, and those along the sheet.
func waysOut(met []meeting) []r3.Vec {
	ways := []r3.Vec{{X: 1}, {X: -1}, {Y: 1}, {Y: -1}}
	for _, m := range met[:min(len(met), mostSearches)] {
		if flat := (r3.Vec{X: m.Away.X, Y: m.Away.Y}); r3.Norm(flat) > 1e-6 {
			ways = append(ways, r3.Unit(flat))
		}
	}
	return ways
}

// firstLegs are how far a thing may go along a direction first, m: until it is out of all that it is out of soon, as of one of the two walls of a
// corner, and until it is out of all.
func firstLegs(met []meeting, way r3.Vec) []float64 {
	const soon = 0.5 // m
	near, far := 0.0, 0.0
	for _, m := range met {
		out := m.a.Exit(m.b, way)
		far = max(far, out)
		if out <= soon {
			near = max(near, out)
		}
	}
	if near == 0 || near == far {
		return []float64{far}
	}
	return []float64{near, far}
}

// farOut is how far all pieces go along a direction until the last is out, m.
func farOut(met []meeting, way r3.Vec) (far float64) {
	for _, m := range met {
		far = max(far, m.a.Exit(m.b, way))
	}
	return far
}

// moved is a thing elsewhere.
func (t *thing) moved(by r3.Vec) *thing {
	out := *t
	out.box = r3.Box{Min: r3.Add(t.box.Min, by), Max: r3.Add(t.box.Max, by)}
	out.pieces = make([]body.Hull, len(t.pieces))
	for i := range t.pieces {
		out.pieces[i] = t.pieces[i].Moved(by)
	}
	return &out
}

// allMeetings are those with all others but what a thing may hang over.
func (t *thing) allMeetings(others []*thing) (met []meeting) {
	for _, o := range others {
		if o.Kind != Over {
			met = append(met, t.meets(o)...)
		}
	}
	return met
}
