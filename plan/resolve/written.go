package resolve

import "scrimshaw/plan/source"

// placeSpan is where a thing's place was written.
func (r *register) placeSpan(t thing) source.Span {
	switch t.kind {
	case aFurniture:
		return r.s.Furniture[t.index].At.Span
	case aPerson:
		return r.s.People[t.index].At.Span
	case aCamera:
		return r.s.Cameras[t.index].At.Span
	case aLight:
		return r.s.Lights[t.index].At.Span
	case aGrip:
		return r.s.Grip[t.index].At.Span
	}
	return t.span
}

// facingSpan is where a thing's facing was written.
func (r *register) facingSpan(t thing) source.Span {
	switch t.kind {
	case aPerson:
		return r.s.People[t.index].Faces.Span
	case aCamera:
		return r.s.Cameras[t.index].Looks.Span
	}
	return t.span
}

// nodeOf is what was written of a thing.
func (r *register) nodeOf(t thing) *source.Node {
	switch t.kind {
	case aFurniture:
		return r.s.Furniture[t.index].Node
	case aPerson:
		return r.s.People[t.index].Node
	case aCamera:
		return r.s.Cameras[t.index].Node
	case aLight:
		return r.s.Lights[t.index].Node
	case aGrip:
		return r.s.Grip[t.index].Node
	}
	return nil
}

// writtenHere reports whether the set-up at hand wrote a key of a thing.
func (r *register) writtenHere(n *source.Node, key string) bool {
	v := n.Get(key)
	return v != nil && v.Layer != "" && v.Layer == r.s.Setup
}
