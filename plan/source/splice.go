package source

import (
	"bytes"
	"strings"
)

// editor turns an edit into cuts of the text, in the style of what stands around it.
type editor struct {
	text  []byte
	value *Node
	step  int // spaces of one level of indentation
}

// splices are the cuts that set the value at a target.
func (w *editor) splices(t target) []cut {
	switch n := t.node; {
	case n.Kind == Null:
		return w.fill(t)
	case len(t.rest) == 0:
		return w.replace(t)
	case isBracketed(n):
		return w.insertFlow(n, t.rest)
	}
	return w.insertBlock(t.node, t.rest)
}

// fill writes a value where none stands.
func (w *editor) fill(t target) []cut {
	text := w.plain(t)
	if len(t.rest) > 0 {
		text = "{" + w.entry(t.rest) + "}"
	}
	start, end := t.node.Span.Start, t.node.Span.End
	if t.key != nil && !bytes.ContainsRune(w.text[t.key.Span.End:start], ':') {
		text = ":" + " " + text // {a} is a key without its colon
	} else if start > 0 && !isSpace(w.text[start-1]) {
		text = " " + text
	}
	return []cut{{start, end, text}}
}

// plain is the new value as it stands at the target.
func (w *editor) plain(t target) string {
	if t.flow {
		return inFlow(w.value)
	}
	return w.value.Span.Text()
}

// replace writes the value in the place of another. A map or list that stands in lines of its own
// gives way to a value in the line of its key; a comment in that line stays.
func (w *editor) replace(t target) []cut {
	span := t.node.Span
	own := t.key != nil && (t.node.Kind == Map || t.node.Kind == List) && !isBracketed(t.node) && !t.node.Alias
	if !own || !bytes.ContainsAny(w.text[t.key.Span.End:span.Start], "\r\n") {
		return []cut{{span.Start, span.End, w.plain(t)}}
	}
	colon := t.key.Span.End + bytes.IndexByte(w.text[t.key.Span.End:], ':') + 1
	start, end := lineAt(w.text, span.Start), span.End
	if eol := lineEnd(w.text, end); len(bytes.TrimSpace(w.text[end:eol])) == 0 {
		end = eol + len(breakAt(w.text, eol))
	}
	return []cut{{colon, colon, " " + w.plain(t)}, {start, end, ""}}
}

// insertFlow adds an entry to a map in braces, behind the last.
func (w *editor) insertFlow(n *Node, keys []string) []cut {
	if len(n.Keys) == 0 {
		at := n.Span.Start + 1
		return []cut{{at, at, w.entry(keys)}}
	}
	last := n.Keys[len(n.Keys)-1].Value
	at, comma := last.Span.End, ", "
	if last.Kind == Null && w.text[at-1] == ':' {
		comma = " , " // a colon and a comma that touch are one text to some parsers
	}
	return []cut{{at, at, comma + w.entry(keys)}}
}

// entry is an entry of a map in braces, with maps in braces for the keys below the first.
func (w *editor) entry(keys []string) string {
	if len(keys) == 1 {
		return Quote(keys[0]) + ": " + inFlow(w.value)
	}
	return Quote(keys[0]) + ": {" + w.entry(keys[1:]) + "}"
}

// insertBlock adds an entry to a map in lines of its own, in a line behind the last.
func (w *editor) insertBlock(n *Node, keys []string) []cut {
	if len(n.Keys) == 0 {
		return nil // all its entries were refused
	}
	last := lastValue(n)
	at := lineEnd(w.text, last.Span.End)
	newline := w.lineBreak(at)
	var b strings.Builder
	for i, line := range w.blockLines(keys) {
		b.WriteString(newline + strings.Repeat(" ", n.Keys[0].Span.Col-1+i*w.step) + line)
	}
	if !keepsBlank(last) {
		return []cut{{at, at, b.String()}}
	}
	at = w.blankEnd(at)
	return []cut{{at, at, strings.TrimPrefix(b.String(), newline) + newline}}
}

// lastValue is the value in n that ends last.
func lastValue(n *Node) *Node {
	switch {
	case n.Alias:
		return n
	case len(n.Keys) > 0:
		return lastValue(n.Keys[len(n.Keys)-1].Value)
	case len(n.Items) > 0:
		return lastValue(n.Items[len(n.Items)-1])
	}
	return n
}

// keepsBlank reports whether the empty lines behind a value belong to it: a block text with a +.
func keepsBlank(n *Node) bool {
	header, _, _ := strings.Cut(n.Span.Text(), "\n")
	return n.Quoted && (header[0] == '|' || header[0] == '>') && strings.ContainsRune(header, '+')
}

// blankEnd is the start of the first line behind the one that ends at i that is not blank.
func (w *editor) blankEnd(i int) int {
	i += len(breakAt(w.text, i))
	for i < len(w.text) {
		end := lineEnd(w.text, i)
		if len(bytes.TrimSpace(w.text[i:end])) > 0 {
			break
		}
		i = end + len(breakAt(w.text, end))
	}
	return i
}

// blockLines is a new entry line by line, each indented one step more: maps in lines of their own
// for all keys but the last two, which make a thing with its first key in braces.
func (w *editor) blockLines(keys []string) []string {
	switch len(keys) {
	case 1:
		return []string{Quote(keys[0]) + ": " + w.value.Span.Text()}
	case 2:
		return []string{w.entry(keys)}
	}
	return append([]string{Quote(keys[0]) + ":"}, w.blockLines(keys[1:])...)
}

// lineBreak is the line break at offset i, or else the file's first.
func (w *editor) lineBreak(i int) string {
	if b := breakAt(w.text, i); b != "" {
		return b
	}
	if first := lineEnd(w.text, 0); first < len(w.text) {
		return breakAt(w.text, first)
	}
	return "\n"
}

// breakAt is the line break that stands at offset i, or "".
func breakAt(text []byte, i int) string {
	switch {
	case bytes.HasPrefix(text[i:], []byte("\r\n")):
		return "\r\n"
	case i < len(text) && (text[i] == '\n' || text[i] == '\r'):
		return string(text[i : i+1])
	}
	return ""
}

// target is where an edit lands.
type target struct {
	node *Node    // the deepest value on the path that exists
	key  *Key     // the key node stands under; nil for an item of a list
	rest []string // the keys below node that do not exist
	flow bool     // node stands inside brackets
}

// isBracketed reports whether a value is a list or map in brackets.
func isBracketed(n *Node) bool {
	text := n.Span.Text()
	return n.Kind == List && text != "" && text[0] == '[' || n.Kind == Map && text != "" && text[0] == '{'
}

// cut replaces the bytes from start to end with text.
type cut struct {
	start, end int
	text       string
}

// splice carries out cuts, which are in order and apart.
func splice(text []byte, cuts []cut) []byte {
	var b bytes.Buffer
	at := 0
	for _, c := range cuts {
		b.Write(text[at:c.start])
		b.WriteString(c.text)
		at = c.end
	}
	b.Write(text[at:])
	return b.Bytes()
}
