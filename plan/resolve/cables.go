package resolve

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/term"
)

// How a cable is laid: common practice.
const (
	cableSlack = 0.1  // of its way
	cableClear = 0.15 // from walls and furniture, m
	floorCable = 0.1  // how high a thing may begin over the floor and still be in the way of a cable, m
)

// cablePass lays the cables, once all stands where it does.
type cablePass struct {
	*draft
	solid []floorSolid // what no cable crosses: walls beside their openings, people, and what stands on the floor
}

// lay finds the cable to every light and to every circuit whose feed has an outlet.
func (r *cablePass) lay() {
	for i := range r.out.Circuits {
		c := &r.out.Circuits[i]
		if c.Outlet == nil {
			continue
		}
		if r.solid == nil {
			r.findSolids()
		}
		for k := range r.out.Lights {
			if l := &r.out.Lights[k]; l.Circuit == c.Name {
				l.Cable = r.run(c, l)
			}
		}
		for k := range r.out.Circuits {
			if fed := &r.out.Circuits[k]; fed.From == c.Name && fed.Outlet != nil && !fed.InBox {
				fed.Feeder = r.lead(cableEnd{*c.Outlet, c.Floor}, cableEnd{*fed.Outlet, fed.Floor})
			}
		}
	}
}

// floorSolid is a convex piece of what no cable crosses.
type floorSolid struct {
	ring     []r2.Vec // m
	from, to float64  // z of the edges of a wall, m: a cable passes under what hangs over a gap and over what a floor ends at; else -Inf, +Inf
}

func (r *cablePass) findSolids() {
	s := r.out
	for i := range s.Walls {
		if w := &s.Walls[i]; w.Opening == "" {
			r.add(w.Outline, w.Z0, w.Z1)
		}
	}
	for i := range s.Furniture {
		r.addStanding(s.Furniture[i].Parts, s.Furniture[i].At, s.Furniture[i].Base)
	}
	for i := range s.People {
		r.addStanding(s.People[i].Parts, s.People[i].At, s.People[i].Base)
	}
	r.addSheets()
}

// addSheets adds the sheets of grip that reach down to the floor.
func (r *cablePass) addSheets() {
	for i := range r.out.Grip {
		g := &r.out.Grip[i]
		if low, _ := g.Reach(); low <= g.Base+floorCable {
			r.addOn(plan.InPlan(g.Frame.At), g.Base, g.Shadow())
		}
	}
}

// addStanding adds what of a thing stands on the floor.
func (r *cablePass) addStanding(parts []plan.Part, at r2.Vec, base float64) {
	for i := range parts {
		if parts[i].Z0 <= base+floorCable {
			r.addOn(at, base, parts[i].Outline)
		}
	}
}

// addOn adds what stands at a place. It is in the way on the storey of its room, and outdoors on all of them.
func (r *cablePass) addOn(at r2.Vec, base float64, ring []r2.Vec) {
	from, to := math.Inf(-1), math.Inf(1)
	if room := r.roomOn(at, base); room != nil {
		from, to = room.Base, room.Top
	}
	r.add(ring, from, to)
}

func (r *cablePass) add(ring []r2.Vec, from, to float64) {
	for _, part := range plane.ConvexParts(plane.CounterClockwise(ring)) {
		r.solid = append(r.solid, floorSolid{plane.CounterClockwise(part), from, to})
	}
}

// run is the cable from the outlet of a circuit to a light; nil where there is no way.
func (r *cablePass) run(c *plan.Circuit, l *plan.Light) *plan.Run {
	to := plan.InPlan(l.Frame.At)
	if l.Mount.Kind == term.Stand || l.Mount.Kind == term.Boom {
		to = l.Mount.Base
	}
	floor := r.floorAt(to, l.Base)
	run := r.lead(cableEnd{*c.Outlet, c.Floor}, cableEnd{to, floor})
	if run != nil {
		run.Length += math.Max(0, l.Frame.At.Z-floor)
	}
	return run
}

// way is a cable on one storey, by the higher of the floors at its ends; nil where there is no way.
func (r *cablePass) way(from, to cableEnd) *plan.Run {
	storey := math.Max(from.floor, to.floor)
	path, ok := plane.ShortestPath(from.at, to.at, r.clearOf(storey, from.at, to.at))
	if !ok {
		return nil
	}
	run := &plan.Run{Path: path, Through: r.openingsOn(path, storey), Length: (1 + cableSlack) * plane.PathLength(path)}
	r.overSills(run, storey)
	return run
}

// passage is where a leg of a cable leads through an opening, by its length.
type passage struct {
	opening  *plan.Opening
	from, to float64 // m along the leg
}

// overSills finds the way of a cable in space: where an opening has a sill, it goes up the wall, over the sill and down again, and else up or down to
// the floor beyond.
func (r *cablePass) overSills(run *plan.Run, storey float64) {
	for k := 1; k < len(run.Path); k++ {
		a, b := run.Path[k-1], run.Path[k]
		length, along := r2.Norm(r2.Sub(b, a)), r2.Unit(r2.Sub(b, a))
		at := func(metres float64) r2.Vec { return r2.Add(a, r2.Scale(metres, along)) }
		start := 0.0
		for _, h := range r.passagesOn(run.Through, a, along, length) {
			before, after := r.floorAt(at((start+h.from)/2), storey), r.floorAt(at(h.to+plane.Grain), storey)
			run.Way = append(run.Way, plan.AtHeight(at(start), before), plan.AtHeight(at(h.from), before))
			if sill := h.opening.Sill; sill > math.Max(before, after)+floorCable {
				run.Way = append(run.Way, plan.AtHeight(at(h.from), sill), plan.AtHeight(at(h.to), sill))
				run.Over, run.Length = append(run.Over, h.opening.Name), run.Length+2*sill-before-after
			} else {
				run.Length += math.Abs(after - before)
			}
			start = h.to
		}
		floor := r.floorAt(at((start+length)/2), storey)
		run.Way = append(run.Way, plan.AtHeight(at(start), floor), plan.AtHeight(b, floor))
	}
}

// passagesOn are the openings that a leg leads through, one after the other.
func (r *cablePass) passagesOn(through []string, a, along r2.Vec, length float64) (all []passage) {
	for _, name := range through {
		o := r.out.OpeningNamed(name)
		from, to, ok := plane.Chord(a, along, plane.CounterClockwise(o.Plan()))
		if from, to = math.Max(0, from), math.Min(length, to); ok && from < to-plane.Grain {
			all = append(all, passage{o, from, to})
		}
	}
	slices.SortStableFunc(all, func(a, b passage) int { return cmp.Compare(a.from, b.from) })
	return all
}

// floorAt is the floor under a place of a cable on a storey, m: of the room there, or the ground.
func (r *cablePass) floorAt(p r2.Vec, storey float64) float64 {
	if room := r.roomOn(p, storey); room != nil {
		return room.Base
	}
	return r.out.Ground
}

// roomOn is the room at a place on a storey, the highest that is no higher than that; nil outdoors.
func (r *cablePass) roomOn(p r2.Vec, storey float64) (found *plan.Room) {
	for i := range r.out.Rooms {
		room := &r.out.Rooms[i]
		if r.onStorey(room, storey) && (room.Holds(p) || r.inOpeningOf(room, p)) && (found == nil || room.Base > found.Base) {
			found = room
		}
	}
	return found
}

// onStorey says whether who is on a floor can be in a room: it does not begin over them, nor end under them.
func (r *cablePass) onStorey(room *plan.Room, floor float64) bool {
	return room.Base <= floor+floorCable && room.Top > floor+plane.Grain
}

// inOpeningOf says whether a place lies in an opening of a room.
func (r *cablePass) inOpeningOf(room *plan.Room, p r2.Vec) bool {
	return slices.ContainsFunc(r.out.Openings, func(o plan.Opening) bool { return o.Room == room.Name && plane.Contains(p, o.Plan(), -plane.Grain) })
}

// clearOf are the solids that stand on a floor or go through it, grown by what a cable keeps from them; one that an end is closer to, by no
// more than that.
func (r *cablePass) clearOf(floor float64, ends ...r2.Vec) (all [][]r2.Vec) {
	for i := range r.solid {
		s := &r.solid[i]
		if s.from > floor+floorCable || s.to <= floor+plane.Grain {
			continue
		}
		ring := s.ring
		by := cableClear
		for _, p := range ends {
			if plane.Contains(p, ring, plane.Grain) {
				by = -1
				break
			}
			by = math.Min(by, r2.Norm(r2.Sub(plane.Nearest(p, ring), p))-plane.Grain)
		}
		switch {
		case by > plane.Grain:
			all = append(all, plane.Grown(ring, by))
		case by > -1:
			all = append(all, ring)
		}
	}
	return all
}

// openingsOn are the openings that a way on a storey leads through, in its order.
func (r *cablePass) openingsOn(path []r2.Vec, storey float64) (names []string) {
	for k := 1; k < len(path); k++ {
		for i := range r.out.Openings {
			o := &r.out.Openings[i]
			if room := r.out.RoomNamed(o.Room); room != nil && !r.onStorey(room, storey) {
				continue
			}
			if plane.Enters(path[k-1], path[k], plane.CounterClockwise(o.Plan())) && !slices.Contains(names, o.Name) {
				names = append(names, o.Name)
			}
		}
	}
	return names
}
