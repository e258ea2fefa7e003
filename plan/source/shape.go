package source

// Field describes one key of a Shape: all that the loader, the schema, the reference and
// completion know of it.
type Field[T any] struct {
	Key     string
	Doc     string // one sentence for the reference
	Example string // the value as a user would write it
	Default string // in words, "" where there is none
	Later   string // the capability that computes it, where it is not computed yet; the loader says so
	Until   string // of such a key: what to do until it is computed

	// Otherwise is what to do instead of Until where a map has no key Lacks.
	Lacks, Otherwise string

	Required bool
	Instead  string   // the key that stands in for a required one; "" none
	With     []string // the forms that the key goes with; none: all of them
	Schema   func() map[string]any
	Read     func(dst *T, n *Node, c *Context)
}

// Shape is the table of keys of one kind of map. Where Forms is not empty, exactly one of its
// keys must be present (window, door or gap); the others are then unknown to that form.
type Shape[T any] struct {
	Name   string // as in messages: "room", "light"
	Doc    string
	Fields []Field[T]
	Forms  []string

	// Whole is a map of its keys as one would write it, behind the key that takes it, for where a required key lacks. It may be "".
	Whole string
	// Meant are keys by other words that people write for them, in small letters. It may be nil.
	Meant map[string]string
	// Alone is the key that a value was meant for which stands in place of the map, or "". It may be nil.
	Alone func(text string) string
	// Elsewhere says where a key belongs that this map does not have, or "". It may be nil.
	Elsewhere func(key string, c *Context) string
}

// isText says whether a key takes words as they come: of nothing else a schema limits the length.
func (f *Field[T]) isText() bool { return f.Schema != nil && f.Schema()["maxLength"] != nil }

// LackedBy says whether a map lacks a key that is required, and what stands in for it.
func (f *Field[T]) LackedBy(n *Node) bool {
	return f.Required && n.Key(f.Key) == nil && (f.Instead == "" || n.Key(f.Instead) == nil)
}

// Field returns the field of a key, or nil.
func (s *Shape[T]) Field(key string) *Field[T] {
	for i := range s.Fields {
		if s.Fields[i].Key == key {
			return &s.Fields[i]
		}
	}
	return nil
}

// Keys returns the keys of the shape in the order of its table.
func (s *Shape[T]) Keys() []string {
	keys := make([]string, len(s.Fields))
	for i := range s.Fields {
		keys[i] = s.Fields[i].Key
	}
	return keys
}
