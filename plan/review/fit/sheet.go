package fit

// checkSheet refuses a map that cannot be drawn.
func (r *checker) checkSheet() {
	sheet := &r.out.Scene.Sheet
	defer r.About("sheet")()
	if sheet.Field.V == "face" && (len(r.out.Scene.People) == 0 || len(r.out.Scene.Cameras) == 0) {
		r.Errorf(sheet.Field.Span, CodePlane, "field: floor", "there is no person with a camera to take the dome at the face toward")
	}
	if !sheet.Plane.Set {
		return
	}
	if fault := r.out.PlaneFault(sheet.Plane.V); fault != "" {
		r.Errorf(sheet.Plane.Span, CodePlane, "", "there is no plane at %s: %s", r.Length(sheet.Plane.V), fault)
	}
	if sheet.Field.V == "face" {
		r.Errorf(sheet.Plane.Span, CodePlane, "leave out plane, or field: face", "a sheet has one map: the plane, or the dome at face height")
	}
}
