package resolve

import (
	"scrimshaw/plan"
	"scrimshaw/plan/scene"
)

// marksOf are the marks of somebody. A mark that has a fault of its own is left out.
func (r *peoplePass) marksOf(written *scene.Person, p *plan.Person) (marks []plan.Mark) {
	for _, part := range written.MarkNames() {
		name := markName(written, part)
		s, ok := r.spotOf(name)
		bearing, known := r.facingOf(name)
		if !ok || !known {
			continue
		}
		m := written.MarkPlaces[part]
		as := atMark(written, &m)
		at := r.standingAt(as, s, bearing)
		if eyesAssumed(as) && at.Pose != p.Pose {
			r.assume(written.Path, "eyes at "+part, r.Length(at.Eyes-at.Base))
		}
		marks = append(marks, plan.Mark{Name: name, At: at.At, Base: at.Base, Pose: at.Pose, Crown: at.Crown, Eyes: at.Eyes,
			Faces: at.Faces, Face: at.Face, Parts: at.Parts, Span: m.Span})
	}
	return marks
}
