package supply

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/power"
	"scrimshaw/plan/term"
)

// Run is the cable from an outlet to a light.
type Run struct {
	Path    []r2.Vec // in plan, m, from the outlet to where the light or its stand is
	Through []string // the openings that it leads through
	Length  float64  // of cable, m: the way, its slack, and up to the light
	Section float64  // of each core, mm²; 0: no cable of the kit carries as much
	Drop    float64  // share of the voltage that is lost in it with the light at full
}

// How a cable is laid: common practice.
const (
	cableSlack = 0.1  // of its way
	cableClear = 0.15 // from walls and furniture, m
	floorCable = 0.1  // how high a thing may begin over the floor and still be in the way of a cable, m
)

// layer lays the cables of a set-up.
type layer struct {
	setup *plan.Setup
	solid []solid // what no cable crosses: walls beside their openings, people, and what stands on the floor
}

// solid is a convex piece of what no cable crosses.
type solid struct {
	ring     []r2.Vec // m
	from, to float64  // z of the edges of a wall, m: a cable passes under what hangs over a gap and over what a floor ends at; else -Inf, +Inf
}

func newLayer(s *plan.Setup) *layer {
	y := &layer{setup: s}
	for i := range s.Walls {
		if w := &s.Walls[i]; w.Opening == "" {
			y.add(w.Outline, w.Z0, w.Z1)
		}
	}
	for i := range s.Furniture {
		y.addStanding(s.Furniture[i].Parts, s.Furniture[i].Base)
	}
	for i := range s.People {
		y.addStanding(s.People[i].Parts, s.People[i].Base)
	}
	return y
}

// addStanding adds what of a thing stands on the floor.
func (y *layer) addStanding(parts []plan.Part, base float64) {
	for i := range parts {
		if parts[i].Z0 <= base+floorCable {
			y.add(parts[i].Outline, math.Inf(-1), math.Inf(1))
		}
	}
}

func (y *layer) add(ring []r2.Vec, from, to float64) {
	for _, part := range plane.ConvexParts(plane.CounterClockwise(ring)) {
		y.solid = append(y.solid, solid{plane.CounterClockwise(part), from, to})
	}
}

// run is the cable from the outlet of a circuit to a light; nil where there is no way, or where nobody says where the outlet is.
func (y *layer) run(c *plan.Circuit, d *Draw) *Run {
	if c.Outlet == nil {
		return nil
	}
	to := plan.InPlan(d.Light.Frame.At)
	if d.Light.Mount.Kind == term.Stand || d.Light.Mount.Kind == term.Boom {
		to = d.Light.Mount.Base
	}
	path, ok := plane.ShortestPath(*c.Outlet, to, y.clearOf(y.higherFloor(*c.Outlet, d.Light.Base), *c.Outlet, to))
	if !ok {
		return nil
	}
	r := &Run{Path: path}
	for i := 1; i < len(path); i++ {
		r.Length += r2.Norm(r2.Sub(path[i], path[i-1]))
	}
	r.Length = (1+cableSlack)*r.Length + math.Max(0, d.Light.Frame.At.Z-d.Light.Base)
	r.Through = y.openingsOn(path)
	if r.Section = y.section(c.Breaker); r.Section > 0 && c.Volts > 0 {
		r.Drop = power.CableDrop(r.Length, r.Section, d.Full/float64(d.Light.Count)) / c.Volts
	}
	return r
}

// higherFloor is the higher of the floor at an outlet and that at a light, m.
func (y *layer) higherFloor(outlet r2.Vec, base float64) float64 {
	if room := y.setup.RoomUnder(outlet, ""); room != nil {
		return math.Max(room.Base, base)
	}
	return base
}

// clearOf are the solids that stand on a floor or go through it, grown by what a cable keeps from them; one that an end is closer to, by no
// more than that.
func (y *layer) clearOf(floor float64, ends ...r2.Vec) (all [][]r2.Vec) {
	for i := range y.solid {
		s := &y.solid[i]
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

// openingsOn are the openings that a way leads through, in its order.
func (y *layer) openingsOn(path []r2.Vec) (names []string) {
	for k := 1; k < len(path); k++ {
		for i := range y.setup.Openings {
			o := &y.setup.Openings[i]
			if plane.Enters(path[k-1], path[k], plane.CounterClockwise(o.Plan())) && !slices.Contains(names, o.Name) {
				names = append(names, o.Name)
			}
		}
	}
	return names
}

// section is the least section of a cable of the kit that carries what a breaker lets through, mm²; 0 where none does.
func (y *layer) section(breaker float64) (least float64) {
	if y.setup.Kit == nil {
		return 0
	}
	for _, item := range y.setup.Kit.Items {
		if item.Section > 0 && item.Amps >= breaker && (least == 0 || item.Section < least) {
			least = item.Section
		}
	}
	return least
}
