package scene

import (
	"scrimshaw/plan/source"
)

// mostThings is how many things of one kind a scene may hold: far more than a crew could place.
const mostThings = 500

// section is a map of named things: `rooms`, `lights`. at finds the list in the scene, thing the
// name in one of its items; check looks at what the keys of one thing say together, those without
// a fault of their own; it may be nil.
type section[O, T any] struct {
	key, doc, example string
	table             *table[T]
	at                func(*O) *[]T
	thing             func(*T) *Thing
	check             func(v *T, n *source.Node, c *source.Context)
}

// entry makes the section a key of the scene.
func (s section[O, T]) entry() entry[O] {
	return entry[O]{Field: source.Field[O]{
		Key: s.key, Doc: s.doc, Example: s.example, Default: "none", Schema: s.schema,
		Read: func(dst *O, n *source.Node, c *source.Context) { *s.at(dst) = s.read(n, c) },
	}}
}

func (s section[O, T]) schema() map[string]any {
	return map[string]any{
		"type": "object", "additionalProperties": s.table.Schema(),
		"propertyNames": map[string]any{"pattern": namePattern}, "maxProperties": mostThings,
	}
}

// read reads the things in the order of the file.
func (s section[O, T]) read(n *source.Node, c *source.Context) []T {
	var all []T
	if len(n.Keys) > mostThings {
		c.ErrorAt(n.Keys[mostThings].Span, CodeTooMany, "", "%s holds at most %d, and here are %d", s.key, mostThings, len(n.Keys))
		return nil
	}
	source.Each(n, s.table.Name, c, func(k *source.Key) {
		var v T
		*s.thing(&v) = Thing{Name: k.Name, Path: s.key + "." + k.Name, Span: k.Span, Node: k.Value}
		if s.readThing(&v, k, n, c) {
			all = append(all, v)
		}
	})
	return all
}

// readThing reads one thing, and reports whether it is one at all: a slip in a name that a change
// means is not.
func (s section[O, T]) readThing(v *T, k *source.Key, n *source.Node, c *source.Context) bool {
	if err := checkName(k.Name); err != nil {
		refuseAt(c, k.Span, err)
	}
	if s.isSlip(k, n, c) {
		return false
	}
	s.table.read(v, k.Value, c, k.Span)
	if s.check != nil && k.Value.Kind == source.Map {
		s.check(v, k.Value, c)
	}
	return true
}

// isSlip reports a thing that a change brings without what a new thing needs, while a thing of
// the scene has nearly its name.
func (s section[O, T]) isSlip(k *source.Key, n *source.Node, c *source.Context) bool {
	if k.Value.Layer == "" || k.Value.Kind != source.Map {
		return false
	}
	missing := s.table.missing(k.Value)
	if missing == "" {
		return false
	}
	hint := source.DidYouMean(k.Name, namesBut(n, k.Name))
	if hint == "" {
		return false
	}
	c.ErrorAt(k.Span, source.CodeUnknownName, hint, "the scene has no %s %q, and a new one needs %s", s.table.Name, k.Name, missing)
	return true
}

// namesBut lists the names of a map without one of them.
func namesBut(n *source.Node, but string) []string {
	var names []string
	for _, k := range n.Keys {
		if k.Name != but {
			names = append(names, k.Name)
		}
	}
	return names
}
