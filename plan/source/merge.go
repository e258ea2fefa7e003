package source

import "slices"

// merger lays a patch over a tree in the manner of RFC 7396 and makes a new one; neither is changed, though the
// result shares values with them. A map is merged key by key, anything else replaces, an empty value removes.
// Every value keeps the place where it was written; what comes from the patch carries layer, the name of the
// set-up that changes. Rules bend this for a set-up's change, and say what is wrong with it.
type merger struct {
	layer string
	rules *Rules
	c     *Context
}

// value merges a patch over base, which may be nil, at a path.
func (m *merger) value(base, patch *Node, path []string) *Node {
	part, refused := m.part(base, patch, path)
	if refused {
		return base
	}
	if patch.Kind != Map || m.rules.whole(path) && !part {
		return m.stamped(patch)
	}
	out := &Node{Kind: Map, Span: patch.Span, Layer: m.layer, Alias: patch.Alias}
	if base != nil && base.Kind == Map {
		copied := *base
		copied.Keys = slices.Clone(base.Keys)
		out = &copied
	}
	if part { // a value of its own, in part as before
		out.Layer = m.layer
	}
	if m.rules != nil {
		m.reset(out, patch, path)
	}
	for i := range patch.Keys {
		m.entry(out, patch, &patch.Keys[i], path)
	}
	return out
}

// entry merges one entry of a patch into the map out, which the merge owns.
func (m *merger) entry(out, patch *Node, k *Key, path []string) {
	if m.rules != nil && m.ruled(out, patch, k, path) {
		return
	}
	if k.Value.Kind == Null {
		remove(out, k.Name)
		return
	}
	at := append(path[:len(path):len(path)], k.Name)
	old := out.Get(k.Name)
	put(out, k, m.value(old, k.Value, at))
}

// put sets the value of a key. Where the value is replaced, its key too is the new one; where two
// maps are merged, the key stays where it was.
func put(out *Node, k *Key, value *Node) {
	old := out.Key(k.Name)
	switch {
	case old == nil:
		out.Keys = append(out.Keys, Key{k.Name, k.Span, value})
	case value.Span == old.Value.Span:
		old.Value = value
	default:
		*old = Key{k.Name, k.Span, value}
	}
}

// remove drops a key from a map that the merge owns, and reports whether it was there.
func remove(out *Node, name string) bool {
	before := len(out.Keys)
	out.Keys = slices.DeleteFunc(out.Keys, func(k Key) bool { return k.Name == name })
	return len(out.Keys) < before
}

// stamped copies a value with all that is in it, and marks it as written in the merge's layer.
func (m *merger) stamped(n *Node) *Node {
	out := *n
	out.Layer = m.layer
	out.Keys, out.Items = slices.Clone(n.Keys), slices.Clone(n.Items)
	for i := range out.Keys {
		out.Keys[i].Value = m.stamped(out.Keys[i].Value)
	}
	for i := range out.Items {
		out.Items[i] = m.stamped(out.Items[i])
	}
	return &out
}
