package source

import (
	"slices"
	"strconv"
	"strings"
)

// Reader reads one kind of value. Read returns false after it has logged a fault.
type Reader[V any] struct {
	What   string // with its article, as in messages: "a height"
	Like   string // an example, as a user would write it: "2.4"
	Schema func() map[string]any
	Read   func(n *Node, c *Context) (V, bool)
}

// Into makes the Read of a Field: what r reads goes where at points. After a fault dst is left
// as it was.
func Into[T, V any](r Reader[V], at func(dst *T) *V) func(dst *T, n *Node, c *Context) {
	return func(dst *T, n *Node, c *Context) {
		if v, ok := r.Read(n, c); ok {
			*at(dst) = v
		}
	}
}

// wrongType logs that n is not what r reads.
func (r *Reader[V]) wrongType(n *Node, c *Context) {
	hint := ""
	if r.Like != "" {
		hint = "write it like " + r.Like
	}
	c.Error(n, CodeWrongType, hint, "%s belongs here, not %s", r.What, n.Kind)
}

// scalar is a Reader of a single value whose text parse understands.
func scalar[V any](what, like string, schema map[string]any, parse func(n *Node) (V, *Diagnostic)) Reader[V] {
	r := Reader[V]{What: what, Like: like, Schema: func() map[string]any { return cloneSchema(schema) }}
	r.Read = func(n *Node, c *Context) (v V, ok bool) {
		if n.Kind != Scalar {
			r.wrongType(n, c)
			return v, false
		}
		v, wrong := parse(n)
		if wrong != nil {
			c.Refuse(n.Span, wrong)
		}
		return v, wrong == nil
	}
	return r
}

// Text reads any single value as it stands: 12 is the text "12".
func Text(what, like string) Reader[string] {
	return scalar(what, like, map[string]any{"type": []any{"string", "number"}},
		func(n *Node) (string, *Diagnostic) { return n.Text, nil })
}

// OneOf reads one of some words.
func OneOf(what string, words ...string) Reader[string] {
	return scalar(what, words[0], map[string]any{"enum": slices.Clone(words)},
		func(n *Node) (string, *Diagnostic) {
			if slices.Contains(words, n.Text) {
				return n.Text, nil
			}
			hint := DidYouMean(n.Text, words)
			if hint == "" {
				hint = "write one of these words"
			}
			return "", Errorf(CodeUnknownWord, hint,
				"%s is %s, not %q", what, quotedList(words, "or"), n.Text)
		})
}

// Bool reads true or false. The other spellings of YAML 1.1 (yes, on, y) are refused: to half of
// all programs they are text.
func Bool(what string) Reader[bool] {
	return scalar(what, "true", map[string]any{"type": "boolean"}, func(n *Node) (bool, *Diagnostic) {
		if !n.Quoted && (n.Text == "true" || n.Text == "false") {
			return n.Text == "true", nil
		}
		hint := "write true or false"
		switch strings.ToLower(n.Text) {
		case "yes", "on", "y", "true":
			hint = "write true"
		case "no", "off", "n", "false":
			hint = "write false"
		}
		return false, Errorf(CodeBadValue, hint, "%s is true or false, not %q", what, n.Text)
	})
}

// ListOf reads a list of least to most values. All items are read, so that all faults are reported.
func ListOf[V any](what, like string, item Reader[V], least, most int) Reader[[]V] {
	r := Reader[[]V]{What: what, Like: like, Schema: func() map[string]any {
		return map[string]any{"type": "array", "items": item.Schema(), "minItems": least, "maxItems": most}
	}}
	r.Read = func(n *Node, c *Context) ([]V, bool) {
		if n.Kind != List {
			r.wrongType(n, c)
			return nil, false
		}
		if count := len(n.Items); count < least || count > most {
			c.Error(n, CodeWrongType, countHint(n, like, least, most), "%s has %s, not %d", what, counted(least, most, "value"), count)
			return nil, false
		}
		all, ok := make([]V, len(n.Items)), true
		for i := range n.Items {
			v, fine := readItem(item, n.Items[i], i, c)
			all[i], ok = v, ok && fine
		}
		return all, ok
	}
	return r
}

// PairOf reads a list of two values, each by a reader of its own.
func PairOf[A, B, V any](what, like string, first Reader[A], second Reader[B], of func(A, B) V) Reader[V] {
	r := Reader[V]{What: what, Like: like, Schema: func() map[string]any {
		return map[string]any{"type": "array", "prefixItems": []any{first.Schema(), second.Schema()}, "items": false, "minItems": 2, "maxItems": 2}
	}}
	r.Read = func(n *Node, c *Context) (v V, ok bool) {
		if n.Kind != List {
			r.wrongType(n, c)
			return v, false
		}
		if count := len(n.Items); count != 2 {
			c.Error(n, CodeWrongType, countHint(n, like, 2, 2), "%s has %s, not %d", what, counted(2, 2, "value"), count)
			return v, false
		}
		a, fine := readItem(first, n.Items[0], 0, c)
		b, fineToo := readItem(second, n.Items[1], 1, c)
		if !fine || !fineToo {
			return v, false
		}
		return of(a, b), true
	}
	return r
}

// countHint says how to write a list that has too many values or too few: twice as many whole
// numbers as there should be are numbers with decimal commas.
func countHint(n *Node, like string, least, most int) string {
	whole := func(n *Node) bool { return n.Kind == Scalar && digits.MatchString(n.Text) }
	if count := len(n.Items); count%2 == 1 || count/2 < least || count/2 > most || count <= most ||
		slices.ContainsFunc(n.Items, func(item *Node) bool { return !whole(item) }) {
		return "write it like " + like
	}
	var numbers []string
	for i := 0; i < len(n.Items); i += 2 {
		numbers = append(numbers, n.Items[i].Text+"."+n.Items[i+1].Text)
	}
	return "did you mean [" + strings.Join(numbers, ", ") + "]? Decimals have a point"
}

// readItem reads the item of a list at index i, which is its name in a path.
func readItem[V any](r Reader[V], n *Node, i int, c *Context) (v V, ok bool) {
	c.Enter(&Key{Name: strconv.Itoa(i), Span: n.Span})
	defer c.Leave()
	if n.Kind == Null {
		c.Error(n, CodeEmptyValue, "remove the item or give it a value", "this item of the list has no value")
		return v, false
	}
	return r.Read(n, c)
}

// Converted reads what r reads and makes another type of it.
func Converted[A, B any](r Reader[A], to func(A) B) Reader[B] {
	return Reader[B]{What: r.What, Like: r.Like, Schema: r.Schema, Read: func(n *Node, c *Context) (b B, ok bool) {
		a, ok := r.Read(n, c)
		if !ok {
			return b, false
		}
		return to(a), true
	}}
}

// Vocabulary reads one of the words of a vocabulary.
func Vocabulary[V ~string](what string, terms []V) Reader[V] {
	words := make([]string, len(terms))
	for i, t := range terms {
		words[i] = string(t)
	}
	return Converted(OneOf(what, words...), func(word string) V { return V(word) })
}

// Each calls read for every entry of a map of named things, in the order of the file, with the
// entry's name entered in the path. What is no map and what has no value is logged. kind is the
// noun of one thing: "room".
func Each(n *Node, kind string, c *Context, read func(k *Key)) {
	if keyGluedToValue(n, c, func(string) bool { return true }) {
		return
	}
	if n.Kind != Map {
		c.Error(n, CodeWrongType, "write each as NAME: {…}", "a map of names belongs here, each with its %s, not %s", kind, n.Kind)
		return
	}
	empty := false // what is no map here was meant to stand under an empty name above, which tells it
	for i := range n.Keys {
		k := &n.Keys[i]
		empty = i > 0 && k.Value.Kind != Map && isBelow(&n.Keys[i-1], k) && (empty || n.Keys[i-1].Value.Kind == Null)
		if empty {
			continue
		}
		c.Enter(k)
		if k.Value.Kind == Null {
			hint := emptyHint(n, i, "remove the name or give it keys", func(next *Key) bool { return next.Value.Kind == Map })
			c.ErrorAt(k.Span, CodeEmptyValue, hint, "the %s %q is empty", kind, k.Name)
		} else {
			read(k)
		}
		c.Leave()
	}
}
