package source

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// Edit sets one value of a scene's text, or adds it.
type Edit struct {
	Layer string // the set-up whose change is edited; "" for the scene itself
	Path  string // keys with dots between, items of lists by number from 0: "lights.key.level"
	Text  string // the value as YAML in one line: `35 %`, `[1.2, 2]`; see Quote
}

// Apply carries out edits on the text that root was parsed from and returns the new text. All
// other bytes stay as they are: comments, order, line breaks, the style of maps; only a comment
// inside a value that is replaced goes with it. Maps that are missing on the way are made, a
// set-up's change too. The result is read back: where it would not
// be the same tree with just that value set, Apply returns an error and no text. That is so for
// values shared by an alias, which an edit would change in two places. An error names the path, and the place in
// the text that does not allow the edit.
func Apply(root *Node, edits []Edit) ([]byte, error) {
	if root == nil || !root.Span.Valid() || root.Alias || root.Layer != "" {
		return nil, fmt.Errorf("there is no parsed text to edit")
	}
	for _, e := range edits {
		next, err := apply(root, e)
		if err != nil {
			return nil, fmt.Errorf("cannot set %s: %w", e, err)
		}
		root = next
	}
	return slices.Clone(root.Span.File.Text), nil
}

// String names the place of an edit.
func (e Edit) String() string {
	if e.Layer == "" {
		return e.Path
	}
	return e.Path + " in set-up " + e.Layer
}

// keys is the path of the edit from the root of the file.
func (e Edit) keys(root *Node) ([]string, error) {
	keys := strings.Split(e.Path, ".")
	if slices.Contains(keys, "") {
		return nil, fmt.Errorf("the path has an empty key")
	}
	if e.Layer == "" {
		return keys, nil
	}
	if root.Get("setups").Get(e.Layer) == nil {
		return nil, errorAt(root, "the scene has no such set-up")
	}
	return append([]string{"setups", e.Layer, "change"}, keys...), nil
}

// apply carries out one edit and returns the tree of the new text.
func apply(root *Node, e Edit) (*Node, error) {
	path, err := e.keys(root)
	if err != nil {
		return nil, err
	}
	value, err := newValue(e.Text)
	if err != nil {
		return nil, err
	}
	t, err := findPath(root, path)
	if err != nil {
		return nil, err
	}
	file := root.Span.File
	w := &editor{text: file.Text, value: value, step: indentStep(root)}
	text := splice(file.Text, w.splices(t))
	got := Parse(&File{Name: file.Name, Text: text}, new(Log))
	if !Equal(got, withValue(root, path, value)) {
		return nil, errorAt(t.node, "the way it is written there does not allow it; edit it by hand")
	}
	return got, nil
}

// errorAt is an error with the place of the value that it is about.
func errorAt(n *Node, format string, args ...any) error {
	return fmt.Errorf("%s: "+format, append([]any{location(n.Span)}, args...)...)
}

// findPath walks down a path as far as it exists.
func findPath(root *Node, path []string) (target, error) {
	t := target{node: root}
	for i, name := range path {
		n := t.node
		switch {
		case n.Alias:
			return t, errorAt(n, "the value is shared by the alias %s; write it out first", n.Span.Text())
		case n.Kind == Scalar:
			return t, errorAt(n, "%s is a single value", strings.Join(path[:i], "."))
		case n.Kind == Null, n.Kind == Map && n.Key(name) == nil:
			t.rest = path[i:]
			return t, nil
		}
		t.flow = t.flow || isBracketed(n)
		if n.Kind == Map {
			t.key = n.Key(name)
			t.node = t.key.Value
			continue
		}
		index, err := strconv.Atoi(name)
		if err != nil || index < 0 || index >= len(n.Items) {
			return t, errorAt(n, "%s has %s, and no %s", strings.Join(path[:i], "."), plural(len(n.Items), "item"), name)
		}
		t.key, t.node = nil, n.Items[index]
	}
	return t, nil
}

// withValue is the tree n with the value at path set: what an edited text must read as.
func withValue(n *Node, path []string, value *Node) *Node {
	if len(path) == 0 {
		return value
	}
	out := &Node{Kind: Map}
	if n != nil && n.Kind != Null {
		out = &Node{Kind: n.Kind, Text: n.Text, Keys: slices.Clone(n.Keys), Items: slices.Clone(n.Items)}
	}
	if out.Kind == List {
		index, _ := strconv.Atoi(path[0])
		out.Items[index] = withValue(out.Items[index], path[1:], value)
		return out
	}
	if k := out.Key(path[0]); k != nil {
		k.Value = withValue(k.Value, path[1:], value)
		return out
	}
	out.Keys = append(out.Keys, Key{Name: path[0], Value: withValue(nil, path[1:], value)})
	return out
}

// indentStep is how much the file indents: as the first map in a map does, else 2.
func indentStep(root *Node) int {
	for _, k := range root.Keys {
		if n := k.Value; n.Kind == Map && !n.Alias && len(n.Keys) > 0 && n.Span.Line > k.Span.Line && !isBracketed(n) {
			return max(1, n.Span.Col-k.Span.Col)
		}
	}
	return 2
}
