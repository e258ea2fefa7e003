package source

import (
	"slices"
	"strings"
)

// Read fills dst from the map n, key by key in the order of the file. Every fault is logged: a
// value that is no map, a key the shape does not have, a missing key, none or two of the forms, an
// empty value, and whatever the readers of the fields find. What was read in spite of faults stays
// in dst.
func (s *Shape[T]) Read(dst *T, n *Node, c *Context) {
	if s.KeyGluedToValue(n, c) {
		return
	}
	if n.Kind != Map {
		hint := s.example()
		if s.Alone != nil && n.Kind == Scalar && s.Alone(n.Text) != "" {
			hint = "write it like {" + s.Alone(n.Text) + ": " + n.Text + "}"
		}
		c.Error(n, CodeWrongType, hint, "%s is a map of keys, not %s", article(s.Name), n.Kind)
		return
	}
	m := s.findMistakes(n, c)
	for i := range n.Keys {
		key := &n.Keys[i]
		c.Enter(key)
		s.readKey(dst, n, i, m, c)
		c.Leave()
	}
	s.checkMissing(n, m, c)
	s.checkForms(n, m, c)
}

// KeyGluedToValue reports, and logs, that n is no map only because its one key has no space behind its colon.
func (s *Shape[T]) KeyGluedToValue(n *Node, c *Context) bool {
	return keyGluedToValue(n, c, func(key string) bool { return s.Field(key) != nil })
}

// readKey reads the value of the key of n at index i.
func (s *Shape[T]) readKey(dst *T, n *Node, i int, m likelyMistakes, c *Context) {
	key := &n.Keys[i]
	f := s.Field(key.Name)
	switch {
	case m.handled[i]:
	case f == nil:
		hint := m.hints[i]
		if hint == "" {
			hint = s.unknownHint(n, i, c)
		}
		c.ErrorAt(key.Span, CodeUnknownKey, hint, "%s has no key %q", article(s.Name), key.Name)
		if f = s.Field(m.reads[i]); f != nil && f.Read != nil {
			f.Read(dst, key.Value, c)
		}
	case key.Value.Kind == Null:
		hint := emptyHint(n, i, "remove the key or give it a value", func(next *Key) bool { return s.Field(next.Name) != nil })
		c.ErrorAt(key.Span, CodeEmptyValue, hint, "%q has no value", key.Name)
	default:
		if f.Later != "" {
			until, lacks := f.Until, ""
			if f.Lacks != "" && n.Key(f.Lacks) == nil {
				until, lacks = f.Otherwise, ", and there is no "+f.Lacks
			}
			c.WarnAt(key.Span, CodeLater, until, "%q is read but not computed yet: %s%s", key.Name, f.Later, lacks)
			c.later(s.Name, key)
		}
		if f.Read != nil {
			f.Read(dst, key.Value, c)
		}
	}
}

// checkMissing reports the required keys that n does not have.
func (s *Shape[T]) checkMissing(n *Node, m likelyMistakes, c *Context) {
	for i := range s.Fields {
		if f := &s.Fields[i]; f.LackedBy(n) && !m.has(f.Key) {
			hint := ""
			if f.Example != "" {
				hint = "add " + f.Key + ": " + f.Example
			}
			if hint != "" && s.Whole != "" {
				hint += ", as in " + s.Whole
			}
			c.ErrorAt(c.Here(n), CodeMissingKey, hint, "%s needs %q", article(s.Name), f.Key)
		}
	}
}

// checkForms reports that n has none of the forms, or more than one.
func (s *Shape[T]) checkForms(n *Node, m likelyMistakes, c *Context) {
	if len(s.Forms) == 0 {
		return
	}
	var first *Key
	for i := range n.Keys {
		switch key := &n.Keys[i]; {
		case !slices.Contains(s.Forms, key.Name):
		case first == nil:
			first = key
		default:
			c.report(Error, key.Span, CodeTwoForms, "keep one of them",
				article(s.Name)+" takes "+quotedList(s.Forms, "or")+", and this has both "+`"`+first.Name+`" and "`+key.Name+`"`,
				Related{first.Span, "the other is here"})
		}
	}
	if first == nil && !m.has(s.Forms...) {
		c.ErrorAt(c.Here(n), CodeNoForm, s.formHint(n), "%s needs one of %s", article(s.Name), quotedList(s.Forms, "or"))
	}
}

// formHint shows the first form that has an example, of those that the keys of n go with.
func (s *Shape[T]) formHint(n *Node) string {
	forms := s.Forms
	for i := range n.Keys {
		if f := s.Field(n.Keys[i].Name); f != nil && len(f.With) > 0 {
			forms = f.With
			break
		}
	}
	for _, form := range forms {
		if f := s.Field(form); f != nil && f.Example != "" {
			return "for example " + form + ": " + f.Example
		}
	}
	return ""
}

// example shows how a map of the shape starts.
func (s *Shape[T]) example() string {
	for i := range s.Fields {
		if f := &s.Fields[i]; f.Example != "" && (f.Required || slices.Contains(s.Forms, f.Key)) {
			return "write it like {" + f.Key + ": " + f.Example + "}"
		}
	}
	return ""
}

// unknownHint offers what the key of n at index i was meant to be: the nearest key, what its
// neighbour tells, or all keys where they are few. In braces, YAML takes height:2 for a key.
func (s *Shape[T]) unknownHint(n *Node, i int, c *Context) string {
	key, keys := n.Keys[i].Name, s.Keys()
	switch name, value, mark := s.withoutMark(&n.Keys[i]); mark {
	case ':':
		return "write a space behind the colon: " + name + ": " + value
	case ' ':
		return "write a colon behind the key: " + name + ": " + value
	}
	if near := DidYouMean(key, keys); near != "" {
		return near
	}
	if stray := strayHint(n, i); stray != "" {
		if f := s.Field(n.Keys[max(i, 1)-1].Name); f != nil && f.isText() {
			return quotedHint(n, i)
		}
		return stray
	}
	if own := s.Meant[strings.ToLower(key)]; own != "" {
		return `did you mean "` + own + `"?`
	}
	if s.Elsewhere != nil {
		if hint := s.Elsewhere(key, c); hint != "" {
			return hint
		}
	}
	if len(keys) > maxListed {
		return "`scrimshaw schema --text` lists the keys of " + article(s.Name)
	}
	return "its keys are " + strings.Join(keys, ", ")
}

// maxListed is how many words a hint lists.
const maxListed = 12
