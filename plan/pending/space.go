package pending

import (
	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
)

// spaces are the parts of a set that light can go between: rooms joined by openings that pass it, or without a wall
// between them, with the open air as one more room. Light does not leave a space.
type spaces struct {
	setup *plan.Setup
	joint []int // of each room, then of the open air: another of its space, or itself
}

func spacesOf(s *plan.Setup) *spaces {
	sp := &spaces{setup: s, joint: make([]int, len(s.Rooms)+1)}
	for i := range sp.joint {
		sp.joint[i] = i
	}
	for i := range s.Openings {
		if o := &s.Openings[i]; transmits(o) {
			sp.join(sp.room(o.Room), sp.room(o.FarRoom))
		}
	}
	for i := range s.Rooms {
		for k := range i {
			if plan.RoomsTouch(&s.Rooms[i], &s.Rooms[k]) {
				sp.join(i, k)
			}
		}
	}
	return sp
}

// join makes one space of those of two rooms.
func (sp *spaces) join(a, b int) { sp.joint[sp.find(a)] = sp.find(b) }

// transmits says whether light goes through an opening: a shut door without glass stops it.
func transmits(o *plan.Opening) bool { return o.Transmittance > 0 || o.Ajar > 0 }

// outdoors is the number of the open air.
func (sp *spaces) outdoors() int { return len(sp.setup.Rooms) }

// room is the number of a room; of no room, that of the open air.
func (sp *spaces) room(name string) int {
	for i := range sp.setup.Rooms {
		if sp.setup.Rooms[i].Name == name {
			return i
		}
	}
	return sp.outdoors()
}

// find is the space of a room.
func (sp *spaces) find(room int) int {
	for sp.joint[room] != room {
		room = sp.joint[room]
	}
	return room
}

// at are the spaces of a point: one in a doorway is in those of both its rooms.
func (sp *spaces) at(p r3.Vec) []int {
	if room := sp.setup.RoomAt(p); room != nil {
		return []int{sp.find(sp.room(room.Name))}
	}
	for i := range sp.setup.Openings {
		if o := &sp.setup.Openings[i]; within(o, inPlan(p)) {
			return sp.sidesOf(o)
		}
	}
	return []int{sp.find(sp.outdoors())}
}

// sidesOf are the spaces on the two sides of an opening.
func (sp *spaces) sidesOf(o *plan.Opening) []int {
	return []int{sp.find(sp.room(o.Room)), sp.find(sp.room(o.FarRoom))}
}

// inPlan is a point in plan.
func inPlan(p r3.Vec) r2.Vec { return r2.Vec{X: p.X, Y: p.Y} }

// within says whether a point in plan is in the hole of an opening.
func within(o *plan.Opening, p r2.Vec) bool {
	const slack = 1e-3 // m: what stands on a face is in the hole
	from := r2.Sub(p, o.Left)
	along, out := r2.Dot(from, o.Rightward()), r2.Dot(from, o.Outward)
	return along > -slack && along < o.Width()+slack && out > -slack && out < o.Depth+slack
}

// intersect says whether two lists of spaces have one in common.
func intersect(a, b []int) bool {
	for _, x := range a {
		for _, y := range b {
			if x == y {
				return true
			}
		}
	}
	return false
}
