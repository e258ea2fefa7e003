// Package source holds the text of a scene: bytes, places in them, the tree a YAML file
// describes, and the faults found on the way. It is the one importer of the YAML library,
// and knows nothing of rooms or lights.
package source

// File is one text that was read.
type File struct {
	Name string // as the user would name it: a path, "-" for standard input, or "kit:lamps.yaml"
	Text []byte
}

// Span is a range of bytes in a File with the line and column of its start.
type Span struct {
	File       *File
	Start, End int // byte offsets, End exclusive
	Line, Col  int // from 1; Col counts runes
}

// Valid reports whether the span points into a file.
func (s Span) Valid() bool { return s.File != nil && s.Line > 0 }

// Text returns the bytes of the span.
func (s Span) Text() string {
	if s.File == nil || s.Start < 0 || s.End > len(s.File.Text) || s.Start > s.End {
		return ""
	}
	return string(s.File.Text[s.Start:s.End])
}

// Kind is the kind of a Node.
type Kind uint8

// The kinds of a Node. Null is an empty value, `~` or `null`.
const (
	Null Kind = iota
	Scalar
	List
	Map
)

// String names the kind in the words used in messages.
func (k Kind) String() string {
	switch k {
	case Scalar:
		return "a value"
	case List:
		return "a list"
	case Map:
		return "a map"
	}
	return "nothing"
}

// Key is one entry of a map. Keys keep the order of the document.
type Key struct {
	Name  string
	Span  Span // of the key's own text
	Value *Node
}

// Node is one value of the tree.
type Node struct {
	Kind   Kind
	Text   string // of a scalar, unescaped
	Quoted bool   // the scalar stood in quotes or was a block
	Keys   []Key
	Items  []*Node
	Span   Span
	Layer  string // the set-up whose change wrote it; "" for the scene itself
	Alias  bool   // shared through an anchor: an edit lands at the alias
}

// Get returns the value under name, or nil.
func (n *Node) Get(name string) *Node {
	if n == nil {
		return nil
	}
	for i := range n.Keys {
		if n.Keys[i].Name == name {
			return n.Keys[i].Value
		}
	}
	return nil
}

// Key returns the entry under name, or nil.
func (n *Node) Key(name string) *Key {
	if n == nil {
		return nil
	}
	for i := range n.Keys {
		if n.Keys[i].Name == name {
			return &n.Keys[i]
		}
	}
	return nil
}

// Limits of a file. A long scene has some hundred lines of 50 bytes, nested six deep.
const (
	MaxBytes   = 1 << 20 // bytes of a file
	maxDepth   = 100     // maps and lists inside each other
	maxAliased = 100_000 // values that aliases may add
)
