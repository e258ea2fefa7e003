package resolve

import (
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
)

// placeSpan is where a thing's place was written.
func (r *register) placeSpan(t thing) source.Span {
	switch t.kind {
	case furnitureKind:
		return r.s.Furniture[t.index].At.Span
	case personKind:
		return r.s.People[t.index].At.Span
	case cameraKind:
		return r.s.Cameras[t.index].At.Span
	case lightKind:
		return r.s.Lights[t.index].At.Span
	case gripKind:
		return r.s.Grip[t.index].At.Span
	}
	return t.span
}

// facingSpan is where a thing's facing was written.
func (r *register) facingSpan(t thing) source.Span {
	switch t.kind {
	case personKind:
		return r.s.People[t.index].Faces.Span
	case cameraKind:
		return r.s.Cameras[t.index].Looks.Span
	}
	return t.span
}

// nodeOf is what was written of a thing.
func (r *register) nodeOf(t thing) *source.Node {
	switch t.kind {
	case furnitureKind:
		return r.s.Furniture[t.index].Node
	case personKind:
		return r.s.People[t.index].Node
	case cameraKind:
		return r.s.Cameras[t.index].Node
	case lightKind:
		return r.s.Lights[t.index].Node
	case gripKind:
		return r.s.Grip[t.index].Node
	}
	return nil
}

// writtenHere reports whether the set-up at hand wrote a key of a thing.
func (r *register) writtenHere(n *source.Node, key string) bool {
	v := n.Get(key)
	return v != nil && v.Layer != "" && v.Layer == r.s.Setup
}

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
