package resolve

import (
	"scrimshaw/plan"
	"scrimshaw/plan/scene"
)

// atMark is somebody as the scene writes them at a mark: what the mark does not say is their own.
func atMark(p *scene.Person, m *scene.MarkPlace) *scene.Person {
	at := *p
	at.At = m.At
	if m.Pose.Set {
		at.Pose, at.Eyes = m.Pose, m.Eyes
	}
	if m.Eyes.Set {
		at.Eyes = m.Eyes
	}
	if m.Faces.Set {
		at.Faces = m.Faces
	}
	return &at
}

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

// markFace is the face of somebody at a mark.
func (r *aimer) markFace(name string) (plan.Frame, bool) {
	p, m, _ := r.markOf(scene.Ref{Name: name})
	s, ok := r.spotOf(name)
	bearing, known := r.facingOf(name)
	if !ok || !known {
		return plan.Frame{}, false
	}
	at := atMark(p, m)
	return faceFrame(at, s.At, r.bodyHeightsOf(at, s).eyes, bearing), true
}
