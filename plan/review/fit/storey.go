package fit

import (
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/body"
	"scrimshaw/plan/internal/report"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/source"
)

// heightSpan is where the height of a thing was written, else its place, else its name.
func (r *contactFinder) heightSpan(name string, named source.Span) source.Span {
	w := r.things[name]
	switch {
	case w.height.Valid():
		return w.height
	case w.at.Valid():
		return w.at
	}
	return named
}

// inStorey refuses a thing over the ceiling of its room, or under its floor or the ground, whatever storey is there. words name the thing, and
// height is that of at as the scene counts it, m.
func (r *checker) inStorey(name, words string, at r3.Vec, height float64, named source.Span) bool {
	s := r.out.Spots[name]
	room := r.out.RoomHolding(plan.InPlan(at), s.Room)
	if room == nil && r.out.RoomAt(at) != nil {
		return true
	}
	if room != nil {
		if over := at.Z - room.CeilingAt(plan.InPlan(at)); over > plane.Grain {
			r.tell(name, body.Head, "")
			r.Errorf(r.heightSpan(name, named), CodeOverCeiling, "height may be at most "+r.Length(height-over),
				"%s is %s over the ceiling of %s", words, r.Length(over), room.Name)
			return false
		}
	}
	if below := min(s.Base, s.Floor) - at.Z; below > plane.Grain {
		r.tell(name, body.Head, "")
		r.Errorf(r.heightSpan(name, named), CodeBelowFloor, "measure height up from the floor",
			"%s is %s under %s", words, r.Length(below), report.Either(s.Room != "", "the floor of "+s.Room, "the ground"))
		return false
	}
	return true
}
