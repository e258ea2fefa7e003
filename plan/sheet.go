package plan

import "scrimshaw/plan/unit"

// PlaneFault says why no level plane can be mapped at a height above the floors, m; "" where one can.
func (s *Setup) PlaneFault(height float64) string {
	if height < 0 {
		return "a plane lies above the floor"
	}
	most := 0.0
	for i := range s.Rooms {
		most = max(most, s.Rooms[i].Top-s.Rooms[i].Base)
	}
	if most > 0 && height >= most {
		return "no room is so high; the highest has " + unit.FormatLength(most, s.Feet)
	}
	return ""
}

// checkSheet refuses a map that cannot be drawn.
func (r *resolver) checkSheet() {
	sheet := &r.s.Sheet
	defer r.about("sheet")()
	if sheet.Field.V == "face" && (len(r.s.People) == 0 || len(r.s.Cameras) == 0) {
		r.errorf(sheet.Field.Span, CodePlane, "field: floor", "there is no person with a camera to take the dome at the face toward")
	}
	if !sheet.Plane.Set {
		return
	}
	if fault := r.out.PlaneFault(sheet.Plane.V); fault != "" {
		r.errorf(sheet.Plane.Span, CodePlane, "", "there is no plane at %s: %s", r.length(sheet.Plane.V), fault)
	}
	if sheet.Field.V == "face" {
		r.errorf(sheet.Plane.Span, CodePlane, "leave out plane, or field: face", "a sheet has one map: the plane, or the dome at face height")
	}
}
