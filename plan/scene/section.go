package scene

import (
	"scrimshaw/plan/source"
)

// maxThings is how many things of one kind a scene may hold: far more than a crew could place.
const maxThings = 500

// namedThing is a pointer to what embeds a Thing, and so bears a name.
type namedThing[T any] interface {
	*T
	self() *Thing
}

// section is a map of named things: `rooms`, `lights`. at finds their list in what owns them;
// check looks at what the keys of one thing say together, those without a fault of their own, and
// may be nil.
type section[O, T any, P namedThing[T]] struct {
	key, doc, example string
	table             *table[T]
	at                func(*O) *[]T
	check             func(v *T, n *source.Node, c *source.Context)
	plain             bool // its names may be numbers: nothing aims at them
}

// entry makes the section a key of the scene.
func (s section[O, T, P]) entry() entry[O] {
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

func (s section[O, T, P]) schema() map[string]any {
	return map[string]any{
		"type": "object", "additionalProperties": s.table.Schema(),
		"propertyNames": map[string]any{"pattern": namePattern}, "maxProperties": maxThings,
	}
}

// read reads the things in the order of the file.
func (s section[O, T, P]) read(n *source.Node, c *source.Context) []T {
	var all []T
	if len(n.Keys) > maxThings {
		c.ErrorAt(n.Keys[maxThings].Span, CodeTooMany, "leave out what the shot does not need",
			"%s holds at most %d, and here are %d", s.key, maxThings, len(n.Keys))
		return nil
	}
	source.Each(n, s.table.Name, c, func(k *source.Key) {
		var v T
		*P(&v).self() = Thing{Name: k.Name, Path: s.key + "." + k.Name, Span: k.Span, Node: k.Value}
		s.readThing(&v, k, c)
		all = append(all, v)
	})
	return all
}

// readThing reads one thing.
func (s section[O, T, P]) readThing(v *T, k *source.Key, c *source.Context) {
	named := checkThingName
	if s.plain {
		named = checkName
	}
	if err := named(k.Name); err != nil {
		c.Refuse(k.Span, err)
	}
	P(v).self().Faulty = !s.table.read(v, k.Value, c, k.Span)
	if s.check != nil && k.Value.Kind == source.Map {
		s.check(v, k.Value, c)
	}
}
