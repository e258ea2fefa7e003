package source

// Context is what a Field reader may ask while it reads: where faults go, and which files
// write bare lengths in feet. Nothing else reaches a reader.
type Context struct {
	Log   *Log
	Setup string                // the set-up being read, put on every fault
	Feet  func(file *File) bool // whether bare lengths in this file are feet
	Path  []string              // the keys walked so far; Shape.Read pushes and pops
}

// Field describes one key of a Shape: all that the loader, the schema, the reference and
// completion know of it.
type Field[T any] struct {
	Key      string
	Doc      string // one sentence for the reference
	Example  string // the value as a user would write it
	Default  string // in words, "" where there is none
	Later    string // the capability that computes it, where it is not computed yet; the loader says so
	Required bool
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
}
