package fit

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/solid"
	"scrimshaw/plan/term"
)

// solidAt is the name of the solid that holds a point with some of it all around; "" in the air.
// Solids of the thing itself are left out.
func (r *contactFinder) solidAt(p r3.Vec, own ...solid.ID) string {
	return r.solidAlong(plan.InPlan(p), p.Z, p.Z, own)
}

// solidAlong is the name of the first solid that an upright line meets, but for those in own.
func (r *contactFinder) solidAlong(p r2.Vec, z0, z1 float64, own []solid.ID) string {
	const skin = 1e-4 // m: on a face is not inside
	for i := range r.out.Set.Prisms {
		s := &r.out.Set.Prisms[i]
		if z1 > s.Z0+skin && z0 < s.Z1-skin && plane.Contains(p, s.Base, skin) && !slices.Contains(own, s.ID) {
			return s.Name
		}
	}
	return ""
}

// checkFurnitureHeight warns of furniture that is higher than its room, but for stairs to a floor over it.
func (r *checker) checkFurnitureHeight(f *plan.Furniture) bool {
	room := r.out.RoomHolding(f.At, r.out.Spots[f.Name].Room)
	leadsTo := func(o plan.Room) bool { return o.Base > f.Z0 && plan.SameFloor(f.Z1, o.Base) }
	if room == nil || f.Kind == term.Stairs && slices.ContainsFunc(r.out.Rooms, leadsTo) {
		return true
	}
	ceiling := room.CeilingAt(f.At)
	if over := f.Z1 - ceiling; over > plane.Grain {
		r.Warnf(f.Span, CodeOverCeiling, "its top may be at most "+r.Length(ceiling-room.Base)+" over the floor", "%s is %s too tall for the room %s", f.Name, r.Length(over), room.Name)
	}
	return true
}

// fitsBetweenWalls warns of furniture that stands in a wall by more than a centimetre.
func (r *checker) fitsBetweenWalls(f *plan.Furniture) bool {
	const slack = 0.01
	var all []r2.Vec
	for _, p := range f.Parts {
		all = append(all, p.Outline...)
	}
	for i := range r.out.Walls {
		w := &r.out.Walls[i]
		if !plane.BoxesOverlap(all, w.Outline) {
			continue
		}
		for _, p := range f.Parts {
			if shared := plane.Intersection(p.Outline, w.Outline); shared != nil && plane.Overlap(p.Z0, p.Z1, w.Z0, w.Z1) && plane.Width(shared) > slack {
				r.Warnf(f.Span, CodeInSolid, "move it "+r.Length(plane.Width(shared))+" away from the wall", "%s stands %s deep in %s.%s", f.Name, r.Length(plane.Width(shared)), w.Room, w.Wall)
				return true
			}
		}
	}
	return true
}

// personFree refuses a face inside a solid, and warns of a body in one.
func (r *checker) personFree(p *plan.Person) bool {
	span := r.things[p.Name].at
	r.checkInsideRooms(p.Name, p.At, span)
	if name := r.solidAt(p.Face.At, p.Own...); name != "" {
		r.Errorf(span, CodeInSolid, "move "+p.Name+" clear of "+name, "the face of %s is inside %s", p.Name, name)
	} else if name := r.bodyIn(p); name != "" {
		r.Warnf(span, CodeInSolid, "move "+p.Name+" clear of "+name, "%s stands in %s", p.Name, name)
	} else if found, mend := r.reachInto(r.reachOfPerson(p)); found != "" {
		r.Warnf(span, CodeInSolid, mend, "%s", found)
	}
	return true
}

// bodyIn is what the middle of a person's body stands in, "" nothing: from the seat up for someone
// who sits, from knee height for someone who stands.
func (r *checker) bodyIn(p *plan.Person) string {
	low := 0.3
	if p.Pose != term.Standing && p.Pose != term.Crouching {
		low = scene.SeatHeight + 0.15
	}
	return r.solidAlong(p.At, min(p.Base+low, p.Crown), p.Crown, p.Own)
}

// meterFree warns of a meter inside a solid, where it is dark, or where no light can come.
func (r *checker) meterFree(m *plan.Meter) bool {
	if name := r.solidAt(m.At); name != "" && m.Kind != term.SpotMeter {
		r.Warnf(m.Span, CodeInSolid, "move it out of "+name, "%s reads inside %s", m.Name, name)
	} else {
		r.checkMeterInside(m)
	}
	return true
}

// checkSheet refuses a map that cannot be drawn.
func (r *checker) checkSheet() {
	sheet := &r.out.Scene.Sheet
	defer r.About("sheet")()
	if sheet.Field.Value == term.FaceMap && (len(r.out.Scene.People) == 0 || len(r.out.Scene.Cameras) == 0) {
		r.Errorf(sheet.Field.Span, CodePlane, "field: "+string(term.FloorMap), "the map of domes at face height needs a person and a camera, and the scene lacks one of them")
	}
	if !sheet.Plane.Set {
		return
	}
	if fault := r.out.PlaneFault(sheet.Plane.Value); fault != "" {
		r.Errorf(sheet.Plane.Span, CodePlane, "", "no plane can be mapped at %s: %s", r.Length(sheet.Plane.Value), fault)
	}
	if sheet.Field.Value == term.FaceMap {
		r.Errorf(sheet.Plane.Span, CodePlane, "leave out plane, or field: face", "a sheet has one map: the plane, or the domes at face height")
	}
}
