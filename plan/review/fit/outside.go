package fit

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/internal/report"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
)

// outdoors reports whether there are rooms, and a point of the plan lies in none and in no opening.
func (r *contactFinder) outdoors(p r2.Vec) bool {
	return len(r.out.Rooms) > 0 && r.out.RoomUnder(p, "") == nil
}

// nearestRoom says where the room nearest to a point lies, to compare a coordinate with.
func (r *contactFinder) nearestRoom(p r2.Vec) string {
	var best *plan.Room
	least := math.Inf(1)
	for i := range r.out.Rooms {
		room := &r.out.Rooms[i]
		if d := r2.Norm(r2.Sub(plane.Nearest(p, room.Inside), p)); d < least {
			best, least = room, d
		}
	}
	box := plane.Bounds(best.Inside)
	return best.Name + " lies from " + r.XY(box.Min) + " to " + r.XY(box.Max)
}

// checkInsideRooms notes a person or a camera outside all rooms: it may be meant, to look in through
// an opening.
func (r *checker) checkInsideRooms(name string, at r2.Vec, span source.Span) {
	if r.outdoors(at) {
		r.Infof(span, CodeOutside, r.nearestRoom(at), "%s stands outside every room", name)
	}
}

// checkMeterInside warns of a meter outside all rooms, under the floor or over the ceiling.
func (r *checker) checkMeterInside(m *plan.Meter) {
	at := plan.InPlan(m.At)
	if m.Kind == term.SpotMeter || r.out.RoomAt(m.At) != nil {
		return
	}
	room := r.out.RoomUnder(at, "")
	switch {
	case r.outdoors(at):
		r.Warnf(m.Span, CodeOutside, r.nearestRoom(at), "%s reads outside every room", m.Name)
	case room == nil && m.At.Z < r.out.Ground-plane.Grain:
		r.Warnf(m.Span, CodeOutside, "measure height up from the ground", "%s reads %s under the ground", m.Name, r.Length(r.out.Ground-m.At.Z))
	case room == nil:
	case m.At.Z < room.Base-plane.Grain:
		r.Warnf(m.Span, CodeOutside, "the floor is at "+r.Coordinate(room.Base), "%s reads %s under the floor of %s", m.Name, r.Length(room.Base-m.At.Z), room.Name)
	case m.At.Z > room.CeilingAt(at)+plane.Grain:
		r.Warnf(m.Span, CodeOutside, "the ceiling is at "+r.Coordinate(room.CeilingAt(at)), "%s reads %s over the ceiling of %s",
			m.Name, r.Length(m.At.Z-room.CeilingAt(at)), room.Name)
	}
}

// checkAnyLight warns of a set-up that has no light left: all that the file has are struck or off.
func (r *checker) checkAnyLight() {
	struck := 0
	if r.doc != nil && r.out.Scene.Setup != "" {
		struck = len(r.doc.Base(&source.Log{}).Lights)
	}
	lit := slices.ContainsFunc(r.out.Lights, func(l plan.Light) bool { return r.out.EverUp(&l) })
	if len(r.out.Lights) == 0 && (struck == 0 || len(r.out.Scene.Lights) > 0) || lit {
		return
	}
	span := source.Span{}
	if len(r.out.Scene.Lights) > 0 {
		l := &r.out.Scene.Lights[0]
		span = report.Either(l.Level.Set, l.Level.Span, l.Span)
	}
	for i := range r.out.Scene.Setups {
		if s := &r.out.Scene.Setups[i]; s.Name == r.out.Scene.Setup && len(r.out.Scene.Lights) == 0 {
			span = s.Span
		}
	}
	r.Warnf(span, CodeAllDark, "turn a light up, or keep one", "every light of this set-up is struck or off")
}
