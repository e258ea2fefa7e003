package fit

// checkSheet refuses a map that cannot be drawn.
func (r *checker) checkSheet() {
	sheet := &r.out.Scene.Sheet
	defer r.About("sheet")()
	if sheet.Field.Value == "face" && (len(r.out.Scene.People) == 0 || len(r.out.Scene.Cameras) == 0) {
		r.Errorf(sheet.Field.Span, CodePlane, "field: floor", "the map of domes at face height needs a person and a camera, and the scene lacks one of them")
	}
	if !sheet.Plane.Set {
		return
	}
	if fault := r.out.PlaneFault(sheet.Plane.Value); fault != "" {
		r.Errorf(sheet.Plane.Span, CodePlane, "", "no plane can be mapped at %s: %s", r.Length(sheet.Plane.Value), fault)
	}
	if sheet.Field.Value == "face" {
		r.Errorf(sheet.Plane.Span, CodePlane, "leave out plane, or field: face", "a sheet has one map: the plane, or the domes at face height")
	}
}
