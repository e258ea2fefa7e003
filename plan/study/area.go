package study

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/solid"
	"scrimshaw/plan/term"
)

// ground is what a field lies over: the floors of the rooms at one height, or the open ground.
type ground struct {
	base float64 // z
	open bool
}

// level says whether two grounds are on one level.
func (g ground) level(h ground) bool { return math.Abs(g.base-h.base) < sameLevel }

// groundUnder is the floor of the room that holds someone, or the open ground outside. Who stands on a
// deck or lies on a bed is in the room that these are in.
func groundUnder(s *plan.Setup, p *plan.Person) ground {
	if room := s.RoomAt(r3.Vec{X: p.At.X, Y: p.At.Y, Z: p.Eyes}); room != nil {
		return ground{base: room.Base}
	}
	for i := range s.Openings {
		o := &s.Openings[i]
		if room := s.RoomNamed(o.Room); room != nil && plane.Contains(p.At, plane.CounterClockwise(o.Plan()), 0) {
			return ground{base: room.Base}
		}
	}
	return ground{base: s.Ground, open: true}
}

// area is where a field has data: the floors of rooms and the thresholds between them, less what
// the plane cuts; on open ground everything near what stands there, but for rooms on another level.
type area struct {
	rings []ring
	holes [][]r2.Vec // convex: rooms on another level, and solids cut by the plane
	box   r2.Box
	open  bool
	z     float64

	ringsNear, holesNear *bins
}

// ring is a convex part of a floor, and the room whose ceiling is over it; nil in a threshold.
type ring struct {
	corners []r2.Vec
	room    *plan.Room
}

// newArea is the area at height z over a ground.
func newArea(s *plan.Setup, z float64, g ground) *area {
	a := &area{open: g.open, z: z}
	a.addRooms(s, g)
	if a.open {
		a.leaveRooms(s, z, g)
		margin := r2.Vec{X: openGround, Y: openGround}
		a.box = r2.Box{Min: r2.Sub(s.Bounds.Min, margin), Max: r2.Add(s.Bounds.Max, margin)}
	}
	people := map[solid.ID]bool{}
	if z > g.base {
		for i := range s.People {
			for _, id := range s.People[i].Own {
				people[id] = true // a face is read where somebody sits
			}
		}
	}
	for i := range s.Set.Prisms {
		p := &s.Set.Prisms[i]
		if !people[p.ID] && p.Z0 <= z && z < p.Z1 {
			a.holes = append(a.holes, p.Base)
		}
	}
	a.sort()
	return a
}

// sort makes rings and holes ready to be asked for many points.
func (a *area) sort() {
	corners := make([][]r2.Vec, len(a.rings))
	for i := range a.rings {
		corners[i] = a.rings[i].corners
	}
	a.ringsNear, a.holesNear = newBins(a.box, corners), newBins(a.box, a.holes)
}

// leaveRooms leaves out of the open ground the rooms on another level that the plane cuts.
func (a *area) leaveRooms(s *plan.Setup, z float64, g ground) {
	for i := range s.Rooms {
		room := &s.Rooms[i]
		if !g.level(ground{base: room.Base}) && room.Base <= z && z < room.Top {
			a.holes = append(a.holes, room.Parts...)
		}
	}
}

// addRooms takes the floors of the rooms on the level of the ground, but for rooms that are lower than the plane.
func (a *area) addRooms(s *plan.Setup, g ground) {
	a.box = plane.Bounds(nil)
	level := map[string]bool{}
	for i := range s.Rooms {
		room := &s.Rooms[i]
		if !g.level(ground{base: room.Base}) || room.Top <= a.z {
			continue
		}
		level[room.Name] = true
		for _, part := range room.Parts {
			a.add(ring{part, room})
		}
	}
	for i := range s.Openings {
		o := &s.Openings[i]
		if o.Kind != term.Window && o.FarRoom != "" && level[o.Room] && level[o.FarRoom] {
			a.add(ring{corners: plane.CounterClockwise(o.Plan())})
		}
	}
}

func (a *area) add(r ring) {
	a.rings = append(a.rings, r)
	for _, p := range r.corners {
		a.box = plane.Include(a.box, p)
	}
}

// holds says whether there is a floor at p, with a ceiling over the plane and nothing in the way.
func (a *area) holds(p r2.Vec) bool {
	if !a.open && !slices.ContainsFunc(a.ringsNear.near(p), func(n int32) bool { return a.rings[n].holds(p, a.z) }) {
		return false
	}
	return !slices.ContainsFunc(a.holesNear.near(p), func(n int32) bool { return plane.Contains(p, a.holes[n], 0) })
}

// holds says whether a place of the plan at height z is over a part of a floor and under its ceiling.
func (r *ring) holds(p r2.Vec, z float64) bool {
	return plane.Contains(p, r.corners, 0) && (r.room == nil || z < r.room.CeilingAt(p))
}
