package resolve

import (
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/scene"
)

// markOf reads a name such as ruth.sit: a person at a mark.
func (r *register) markOf(ref scene.Ref) (*scene.Person, *scene.MarkPlace, bool) {
	name, part, dotted := strings.Cut(ref.Name, ".")
	t, known := r.things[name]
	if !dotted || !known || t.kind != aPerson {
		return nil, nil, false
	}
	person := &r.s.People[t.index]
	mark, ok := person.MarkPlaces[part]
	return person, &mark, ok
}

func (r *placer) markSpot(p *scene.Person, m *scene.MarkPlace) (plan.Spot, bool) {
	return r.placed(m.Span, m.At, nil)
}

// markFacing is the bearing of a person's nose at a mark: as elsewhere, where the mark says nothing.
func (r *placer) markFacing(p *scene.Person, m *scene.MarkPlace) (float64, bool) {
	if !m.Faces.Set {
		return r.facingOf(p.Name)
	}
	return r.bearing(p.Name, m.Faces, "", facesReader, func() (plan.Spot, bool) { return r.markSpot(p, m) })
}

func (r *aimer) markFace(p *scene.Person, m *scene.MarkPlace) (plan.Frame, bool) {
	s, ok := r.markSpot(p, m)
	bearing, known := r.markFacing(p, m)
	if !ok || !known {
		return plan.Frame{}, false
	}
	at := *p
	if m.Pose.Set {
		at.Pose, at.Eyes = m.Pose, m.Eyes
	}
	if m.Eyes.Set {
		at.Eyes = m.Eyes
	}
	return faceFrame(&at, s.At, r.resting(&at, s).eyes, bearing), true
}
