package study

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/solid"
)

// area is where a field has data: the floors of rooms and the thresholds between them, less what
// the plane cuts; on open ground everything near what stands there.
type area struct {
	rings  [][]r2.Vec // convex
	solids [][]r2.Vec // convex, cut by the plane
	box    r2.Box
	open   bool
}

// newArea is the area at height z of the rooms whose floor is at base.
func newArea(s *plan.Setup, z, base float64) *area {
	a := &area{open: len(s.Rooms) == 0}
	if a.open {
		margin := r2.Vec{X: openGround, Y: openGround}
		a.box = r2.Box{Min: r2.Sub(s.Bounds.Min, margin), Max: r2.Add(s.Bounds.Max, margin)}
	} else {
		a.addRooms(s, base)
	}
	people := map[solid.ID]bool{}
	if z > base {
		for i := range s.People {
			for _, id := range s.People[i].Own {
				people[id] = true // a face is read where somebody sits
			}
		}
	}
	for i := range s.Set.Prisms {
		p := &s.Set.Prisms[i]
		if !people[p.ID] && p.Z0 <= z && z < p.Z1 {
			a.solids = append(a.solids, p.Base)
		}
	}
	return a
}

func (a *area) addRooms(s *plan.Setup, base float64) {
	a.box = r2.Box{Min: r2.Vec{X: math.Inf(1), Y: math.Inf(1)}, Max: r2.Vec{X: math.Inf(-1), Y: math.Inf(-1)}}
	level := map[string]bool{}
	for i := range s.Rooms {
		room := &s.Rooms[i]
		if math.Abs(room.Base-base) >= sameLevel {
			continue
		}
		level[room.Name] = true
		for _, part := range room.Parts {
			a.add(part)
		}
	}
	for i := range s.Openings {
		o := &s.Openings[i]
		if o.Kind != "window" && o.Other != "" && level[o.Room] && level[o.Other] {
			a.add(counterClockwise(o.Plan()))
		}
	}
}

func (a *area) add(ring []r2.Vec) {
	a.rings = append(a.rings, ring)
	for _, p := range ring {
		a.box.Min = r2.Vec{X: math.Min(a.box.Min.X, p.X), Y: math.Min(a.box.Min.Y, p.Y)}
		a.box.Max = r2.Vec{X: math.Max(a.box.Max.X, p.X), Y: math.Max(a.box.Max.Y, p.Y)}
	}
}

// holds says whether there is a floor at p with nothing standing on it.
func (a *area) holds(p r2.Vec) bool {
	if !a.open && !within(a.rings, p) {
		return false
	}
	return !within(a.solids, p)
}

func within(rings [][]r2.Vec, p r2.Vec) bool {
	for _, ring := range rings {
		if convexHolds(ring, p) {
			return true
		}
	}
	return false
}

// convexHolds says whether a counter-clockwise convex ring holds p.
func convexHolds(ring []r2.Vec, p r2.Vec) bool {
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		if r2.Cross(r2.Sub(b, a), r2.Sub(p, a)) < 0 {
			return false
		}
	}
	return len(ring) >= 3
}

// counterClockwise turns a ring round where it runs clockwise.
func counterClockwise(ring []r2.Vec) []r2.Vec {
	twice := 0.0
	for i, a := range ring {
		twice += r2.Cross(a, ring[(i+1)%len(ring)])
	}
	if twice >= 0 {
		return ring
	}
	turned := make([]r2.Vec, len(ring))
	for i, p := range ring {
		turned[len(ring)-1-i] = p
	}
	return turned
}
