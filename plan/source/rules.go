package source

import (
	"slices"
	"strings"
)

// Strike is the word that removes what it is the value of, in a change.
const Strike = "strike"

// Rules say how the change of a set-up differs from a plain merge patch. Their patterns are
// dotted paths from the root of the scene, in which * stands for any one key: "lights.*.gels".
type Rules struct {
	// Things are the named things of a scene: "lights.*". A change may strike them, by
	// `NAME: strike` or in the list `strike: [NAME, …]` at the top of the change.
	Things []string

	// Whole are values that are replaced, never merged: "lights.*.at".
	Whole []string

	// Partly are those of them that are maps with one of some keys, which say what they are: "lights.*.at". A patch with none of these keys
	// changes what stands there, key by key.
	Partly map[string][]string

	// Forms are maps of which one of some keys says what they are. A patch that gives another
	// form takes away the one that was there.
	Forms map[string][]string

	// Resets are keys whose new value makes others meaningless.
	Resets []Reset

	// Lists are lists that may also be changed by item: +KEY adds, -KEY takes away.
	Lists []string

	// Fixed are the top-level keys that a change may not alter.
	Fixed []string

	// Complete reports whether a thing that only the change has says enough by itself. Where it
	// does not, its name is probably misspelt. nil: always.
	Complete func(path []string, thing *Node) bool
}

// Reset drops keys of a map where a patch gives a new value to another of its keys.
type Reset struct {
	At    string   // pattern of the map: "lights.*"
	Key   string   // "unit"
	Drops []string // "modifier", "gels"
}

// Merge lays the change of the set-up named layer over base, by the rules. Neither is changed.
// What the change may not do is logged and left out.
func (r *Rules) Merge(base, change *Node, layer string, log *Log) *Node {
	m := &merger{layer: layer, rules: r, c: &Context{Log: log, Setup: layer}}
	if change.Kind != Map {
		if change.Kind != Null {
			m.c.Error(change, CodeWrongType, "write it like {lights: {NAME: {level: 40 %}}}", "a change is a map of keys, not %s", change.Kind)
		}
		return base
	}
	return m.value(base, change, nil)
}

// whole reports whether the value at path is replaced rather than merged. Nil rules merge all.
func (r *Rules) whole(path []string) bool { return r != nil && matchesAny(r.Whole, path) }

// part reports whether a patch of the value at path, which is replaced otherwise, changes a part of what stands; refused is one of
// something without parts, which is logged: it says too little for a new value.
func (m *merger) part(base, patch *Node, path []string) (part, refused bool) {
	if m.rules == nil || base == nil || patch.Kind != Map || len(patch.Keys) == 0 {
		return false, false
	}
	for at, forms := range m.rules.Partly {
		if !matches(at, path) || slices.ContainsFunc(forms, func(f string) bool { return patch.Key(f) != nil }) {
			continue
		}
		if base.Kind == Map {
			return true, false
		}
		name := path[len(path)-1]
		m.c.Log.Add(Diagnostic{Severity: Error, Code: CodeWrongType, Span: patch.Span, Path: strings.Join(path, "."), Setup: m.layer,
			Message: name + " without " + strings.Join(forms[:len(forms)-1], ", ") + " or " + forms[len(forms)-1] + " changes keys of what stands, and that has none",
			Hint:    "write all of " + name + ", with one of them", Related: []Related{{Span: base.Span, Message: "this stands before the change"}}})
		return false, true
	}
	return false, false
}

// matchesAny reports whether one of the patterns fits path.
func matchesAny(patterns []string, path []string) bool {
	return slices.ContainsFunc(patterns, func(p string) bool { return matches(p, path) })
}

// matches reports whether a pattern fits path, key by key.
func matches(pattern string, path []string) bool {
	for _, name := range path {
		word, rest, _ := strings.Cut(pattern, ".")
		if word == "" || word != "*" && word != name {
			return false
		}
		pattern = rest
	}
	return pattern == ""
}

// reset drops from out, a map at path that the merge owns, the keys that the patch makes
// meaningless.
func (m *merger) reset(out, patch *Node, path []string) {
	for _, r := range m.rules.Resets {
		if matches(r.At, path) && changesKey(out, patch, r.Key) {
			for _, name := range r.Drops {
				remove(out, name)
			}
		}
	}
	for at, forms := range m.rules.Forms {
		if !matches(at, path) || !slices.ContainsFunc(forms, func(f string) bool { return setsKey(patch, f) }) {
			continue
		}
		for _, form := range forms {
			if !setsKey(patch, form) {
				remove(out, form)
			}
		}
	}
}

// setsKey reports whether a patch sets a key.
func setsKey(patch *Node, key string) bool {
	n := patch.Get(key)
	return n != nil && n.Kind != Null && !isStrike(n)
}

// changesKey reports whether a patch gives a key another value than it had.
func changesKey(old, patch *Node, key string) bool {
	if !setsKey(patch, key) {
		return false
	}
	was, is := old.Get(key), patch.Get(key)
	return was == nil || was.Kind != Scalar || is.Kind != Scalar || was.Text != is.Text
}

func isStrike(n *Node) bool { return n.Kind == Scalar && !n.Quoted && n.Text == Strike }

// ruled deals with an entry that is no plain patch, and reports whether it was one.
func (m *merger) ruled(out, patch *Node, k *Key, path []string) bool {
	m.c.Path = append(slices.Clone(path), k.Name)
	at := m.c.Path
	switch {
	case len(path) == 0 && slices.Contains(m.rules.Fixed, k.Name):
		m.c.ErrorAt(k.Span, CodeFixed, "set it in the scene", "a change may not alter %q", k.Name)
	case len(path) == 0 && k.Name == Strike:
		m.strikeNames(out, k)
	case k.Value.Kind == Null:
		m.c.ErrorAt(k.Span, CodeEmptyValue, "write "+k.Name+": strike to remove it, or give it a value", "%q has no value", k.Name)
	case isStrike(k.Value) && len(at) > 1:
		if !remove(out, k.Name) {
			m.c.ErrorAt(k.Span, CodeUnknownName, Offer(k.Name, names(out)), "there is no %q to strike", k.Name)
		}
	case m.byItem(out, patch, k, path):
	case m.rules.Complete != nil && out.Key(k.Name) == nil && matchesAny(m.rules.Things, at):
		return m.incomplete(out, k, at)
	default:
		return false
	}
	return true
}

// incomplete reports, and logs, that the change names a thing that is neither in the scene nor
// complete by itself.
func (m *merger) incomplete(out *Node, k *Key, at []string) bool {
	if m.rules.Complete(at, k.Value) {
		return false
	}
	m.c.ErrorAt(k.Span, CodeUnknownName, Offer(k.Name, names(out)),
		"nothing is called %q before this change, and what is written here is too little for a new thing", k.Name)
	return true
}

// names lists the keys of a map.
func names(n *Node) []string {
	all := make([]string, len(n.Keys))
	for i := range n.Keys {
		all[i] = n.Keys[i].Name
	}
	return all
}

// strikeNames removes the things that the list at the top of a change names.
func (m *merger) strikeNames(out *Node, k *Key) {
	items := k.Value.Items
	if k.Value.Kind == Scalar {
		items = []*Node{k.Value}
	}
	if len(items) == 0 {
		m.c.Error(k.Value, CodeWrongType, "write it like [NAME, NAME]", "a list of names belongs here, not %s", k.Value.Kind)
	}
	for _, item := range items {
		if !m.strikeName(out, item.Text) {
			m.c.Error(item, CodeUnknownName, Offer(item.Text, m.things(out)), "there is no %q to strike", item.Text)
		}
	}
}

// strikeName removes the thing of a name from the section it is in.
func (m *merger) strikeName(out *Node, name string) bool {
	for i := range out.Keys {
		section := &out.Keys[i]
		if section.Value.Key(name) == nil || !matchesAny(m.rules.Things, []string{section.Name, name}) {
			continue
		}
		owned := *section.Value
		owned.Keys = slices.Clone(owned.Keys)
		remove(&owned, name)
		section.Value = &owned
		return true
	}
	return false
}

// things lists the names of all things.
func (m *merger) things(out *Node) []string {
	var all []string
	for i := range out.Keys {
		for _, name := range names(out.Keys[i].Value) {
			if matchesAny(m.rules.Things, []string{out.Keys[i].Name, name}) {
				all = append(all, name)
			}
		}
	}
	return all
}
