package scene

import (
	"slices"

	"scrimshaw/plan/source"
)

// entry is one key of a table: the field that package source reads, and what this package adds.
type entry[T any] struct {
	source.Field[T]
	lack func(dst *T, span source.Span) // notes where a value that was left out is missing
}

// table is a Shape with its defaults' places and the keys that go with some forms only.
type table[T any] struct {
	source.Shape[T]
	entries []entry[T]
}

// tableOf lists the keys of one kind of map. forms are the keys of which exactly one must stand
// in it; nil where there are no alternatives.
func tableOf[T any](name, doc string, forms []string, entries ...entry[T]) *table[T] {
	t := &table[T]{Shape: source.Shape[T]{Name: name, Doc: doc, Forms: forms}, entries: entries}
	for _, e := range entries {
		if l := laterNamed(name, e.Key); l != nil {
			e.Later, e.Until = l.Waits, l.until()
			e.Lacks, e.Otherwise = l.Beside, l.otherwise()
		}
		t.Fields = append(t.Fields, e.Field)
	}
	return t
}

// elsewhere lets a table say where a key belongs that it does not have.
func (t *table[T]) elsewhere(hint func(key string, c *source.Context) string) *table[T] {
	t.Elsewhere = hint
	return t
}

// whole lets a table show a map of its keys where a required one lacks.
func (t *table[T]) whole(example string) *table[T] {
	t.Whole = example
	return t
}

// value is a key that fills a Given.
func value[T, V any](key string, r source.Reader[V], at func(*T) *Given[V], doc, example, def string) entry[T] {
	e := into(key, r, func(dst *T, v V, n *source.Node) {
		*at(dst) = Given[V]{Value: v, Set: true, Span: n.Span}
	}, doc, example, def)
	e.lack = func(dst *T, span source.Span) { at(dst).Span = span }
	return e
}

// into is a key whose value goes where put puts it.
func into[T, V any](key string, r source.Reader[V], put func(dst *T, v V, n *source.Node), doc, example, def string) entry[T] {
	return entry[T]{Field: source.Field[T]{
		Key: key, Doc: doc, Example: example, Default: def, Schema: r.Schema,
		Read: func(dst *T, n *source.Node, c *source.Context) {
			if v, ok := r.Read(n, c); ok {
				put(dst, v, n)
			}
		},
	}}
}

// raw is a key that is checked as r reads it and kept as it was written.
func raw[T, V any](key string, r source.Reader[V], at func(*T) **source.Node, doc, example, def string) entry[T] {
	return into(key, r, func(dst *T, _ V, n *source.Node) { *at(dst) = n }, doc, example, def)
}

// needed makes a key required.
func (e entry[T]) needed() entry[T] {
	e.Required = true
	return e
}

// neededWithout makes a key required where another is not there.
func (e entry[T]) neededWithout(other string) entry[T] {
	e.Required, e.Instead = true, other
	return e
}

// of limits a key to some forms of its map.
func (e entry[T]) of(forms ...string) entry[T] {
	e.With = forms
	e.Doc += " Goes with " + orList(forms) + "."
	return e
}

// embedEntries makes the keys of a part keys of the whole.
func embedEntries[W, P any](part []entry[P], at func(*W) *P) []entry[W] {
	all := make([]entry[W], len(part))
	for i, e := range part {
		f := e.Field
		all[i] = entry[W]{Field: source.Field[W]{
			With: e.With,
			Key:  f.Key, Doc: f.Doc, Example: f.Example, Default: f.Default, Required: f.Required, Instead: f.Instead, Schema: f.Schema,
			Read: func(dst *W, n *source.Node, c *source.Context) { f.Read(at(dst), n, c) },
		}}
		if e.lack != nil {
			all[i].lack = func(dst *W, span source.Span) { e.lack(at(dst), span) }
		}
	}
	return all
}

// read reads the map n into dst and reports whether it had no fault. span is the place of the
// thing, for values that it lacks.
func (t *table[T]) read(dst *T, n *source.Node, c *source.Context, span source.Span) bool {
	for _, e := range t.entries {
		if e.lack != nil {
			e.lack(dst, span)
		}
	}
	return readsWithoutFault(c, func() {
		t.Shape.Read(dst, n, c)
		t.checkForms(n, c)
	})
}

// readsWithoutFault reports whether read logged no error.
func readsWithoutFault(c *source.Context, read func()) bool {
	outer, inner := c.Log, &source.Log{}
	c.Log = inner
	read()
	c.Log = outer
	for _, d := range inner.All() {
		outer.Add(d)
	}
	return !inner.Failed()
}

// checkForms refuses keys that do not go with the form that n has.
func (t *table[T]) checkForms(n *source.Node, c *source.Context) {
	form := t.form(n)
	if form == "" {
		return
	}
	for _, e := range t.entries {
		key := n.Key(e.Key)
		if key == nil || len(e.With) == 0 || slices.Contains(e.With, form) {
			continue
		}
		c.ErrorAt(key.Span, CodeWrongKey, "remove it, or write "+orList(e.With)+" in place of "+form, "%s goes with %s, not with %s", e.Key, orList(e.With), form)
	}
}

// form is the one key of n that says which form it has, or "".
func (t *table[T]) form(n *source.Node) string {
	form := ""
	for _, f := range t.Forms {
		if n.Get(f) == nil {
			continue
		}
		if form != "" {
			return ""
		}
		form = f
	}
	return form
}

// mapOf reads a map with the keys of a table.
func mapOf[T any](what, like string, t *table[T]) source.Reader[T] {
	r := source.Reader[T]{What: what, Like: like, Schema: t.Schema}
	r.Read = func(n *source.Node, c *source.Context) (v T, ok bool) {
		if n.Kind != source.Map {
			if t.KeyGluedToValue(n, c) {
				return v, false
			}
			return wrongType(&r, n, c)
		}
		ok = t.read(&v, n, c, n.Span)
		return v, ok
	}
	return r
}

// Schema is the schema of the table's map: each form with the keys that go with it.
func (t *table[T]) Schema() map[string]any {
	object := t.Shape.Schema()
	if len(t.Forms) == 0 {
		return object
	}
	forms := make([]any, len(t.Forms))
	for i, form := range t.Forms {
		forms[i] = map[string]any{"required": []any{form}}
		none := map[string]any{}
		for _, key := range t.forbiddenKeys(form) {
			none[key] = false
		}
		if len(none) > 0 {
			forms[i] = map[string]any{"required": []any{form}, "properties": none}
		}
	}
	object["oneOf"] = forms
	return object
}

// forbiddenKeys are the keys that do not go with a form.
func (t *table[T]) forbiddenKeys(form string) []string {
	var keys []string
	for _, e := range t.entries {
		if len(e.With) > 0 && !slices.Contains(e.With, form) {
			keys = append(keys, e.Key)
		}
	}
	return keys
}

// defined is the schema of a value that is described once, under $defs.
func defined(name string) func() map[string]any {
	return func() map[string]any { return map[string]any{"$ref": "#/$defs/" + name} }
}
