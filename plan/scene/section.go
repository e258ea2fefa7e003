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

// part is a section of the scene, whatever its things are.
type part interface {
	entry() entry[Scene]
	rule(r *source.Rules)
	name() string
	complete(n *source.Node) bool
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
		c.ErrorAt(n.Keys[mostThings].Span, CodeTooMany, "",
			"%s holds at most %d, and here are %d", s.key, mostThings, len(n.Keys))
		return nil
	}
	source.Each(n, s.table.Name, c, func(k *source.Key) {
		var v T
		*s.thing(&v) = Thing{Name: k.Name, Path: s.key + "." + k.Name, Span: k.Span, Node: k.Value}
		s.readThing(&v, k, c)
		all = append(all, v)
	})
	return all
}

// readThing reads one thing.
func (s section[O, T]) readThing(v *T, k *source.Key, c *source.Context) {
	if err := checkName(k.Name); err != nil {
		refuseAt(c, k.Span, err)
	}
	s.table.read(v, k.Value, c, k.Span)
	if s.check != nil && k.Value.Kind == source.Map {
		s.check(v, k.Value, c)
	}
}
