package source

import (
	"slices"
	"strings"
)

// byItem adds items to a list or takes them away, where the key is +KEY or -KEY of a list that
// the rules allow it for.
func (m *merger) byItem(out, patch *Node, k *Key, path []string) bool {
	name := strings.TrimLeft(k.Name, "+-")
	if len(name) != len(k.Name)-1 || !matchesAny(m.rules.Lists, append(slices.Clone(path), name)) {
		return false
	}
	switch whole := patch.Key(name); {
	case k.Value.Kind == Map:
		m.c.Error(k.Value, CodeWrongType, "write it like [a, b]", "a list belongs here, not %s", k.Value.Kind)
		return true
	case whole != nil:
		m.c.report(Error, k.Span, CodeBadChange, "keep one of them", `"`+name+`" is both replaced and changed item by item`,
			Related{whole.Span, "it is replaced here"})
		return true
	}
	list := m.owned(out, name, k)
	if k.Name[0] == '+' {
		list.Items = append(list.Items, itemsOf(m.stamped(k.Value))...)
		return true
	}
	for _, item := range itemsOf(k.Value) {
		m.take(list, item, name)
	}
	return true
}

// owned is the list under a name, copied so that it may be changed; a new one where there is
// none.
func (m *merger) owned(out *Node, name string, k *Key) *Node {
	list := &Node{Kind: List, Span: k.Value.Span, Layer: m.layer}
	if old := out.Key(name); old != nil {
		list.Span, list.Layer = old.Value.Span, old.Value.Layer
		list.Items = slices.Clone(itemsOf(old.Value))
		old.Value = list
		return list
	}
	out.Keys = append(out.Keys, Key{name, k.Span, list})
	return list
}

// itemsOf is the items of a list, or a single value as the only one.
func itemsOf(n *Node) []*Node {
	if n.Kind == List {
		return n.Items
	}
	return []*Node{n}
}

// take removes one item from a list, the last where it stands there more than once.
func (m *merger) take(list, item *Node, name string) {
	for i := len(list.Items) - 1; i >= 0; i-- {
		if Equal(list.Items[i], item) {
			list.Items = slices.Delete(list.Items, i, i+1)
			return
		}
	}
	var words []string
	for _, have := range list.Items {
		words = append(words, have.Text)
	}
	m.c.Error(item, CodeUnknownName, Offer(item.Text, words), "%q is not one of the %s here, so it cannot be taken away", item.Text, name)
}

// Equal reports whether two trees hold the same: kinds, texts, items and keys in their order,
// wherever they were written.
func Equal(a, b *Node) bool {
	if a == nil || b == nil {
		return a == b
	}
	return a.Kind == b.Kind && a.Text == b.Text &&
		slices.EqualFunc(a.Items, b.Items, Equal) &&
		slices.EqualFunc(a.Keys, b.Keys, func(x, y Key) bool { return x.Name == y.Name && Equal(x.Value, y.Value) })
}
