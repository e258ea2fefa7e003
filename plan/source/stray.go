package source

import (
	"bytes"
	"regexp"
	"strings"
)

// A key that the language does not have is often no key at all: the rest of a number that was
// written with a comma, the second of two values that lack their brackets, or a line that lacks
// its indentation. What stands before it tells.

// digits is a whole number, with what may follow it in a value: 5, 25 m.
var digits = regexp.MustCompile(`^[0-9]+( ?[A-Za-z%"']+)?$`)

// strayHint says what an unknown key of n was meant to be, by the key before it; "" where that
// does not tell.
func strayHint(n *Node, i int) string {
	if i == 0 {
		return ""
	}
	before, key := &n.Keys[i-1], &n.Keys[i]
	value := before.Value
	switch {
	case !cutByComma(n, i):
		return ""
	case !value.Quoted && key.Span.Start == value.Span.End+1 && digits.MatchString(key.Name) && endsInWholeNumber(value.Text):
		return "use a point: " + before.Name + ": " + value.Text + "." + key.Name
	}
	return "put several values in brackets: " + before.Name + ": [" + strings.TrimLeft(value.Text, "( ") + ", " + strings.TrimRight(key.Name, ") ") + "]"
}

// quotedHint puts the text of the key before an unknown one together again, with the comma that is part of it.
func quotedHint(n *Node, i int) string {
	before := &n.Keys[i-1]
	return "put words with a comma in quotes: " + before.Name + `: "` + before.Value.Text + ", " + n.Keys[i].Name + `"`
}

// cutByComma reports whether the key of n at index i, which is unknown, was meant to belong to the value of the key
// before it, from which a comma parts it.
func cutByComma(n *Node, i int) bool {
	if i == 0 || n.Keys[i-1].Value.Kind != Scalar {
		return false
	}
	key := &n.Keys[i]
	text := key.Span.File.Text[key.Span.End:]
	return key.Value.Kind == Null && !strings.ContainsAny(key.Name, `:"`) && !bytes.HasPrefix(bytes.TrimLeft(text, " "), []byte(":"))
}

// keyGluedToValue reports that n, which should be a map, is one key with its value stuck to the colon, as in
// at:[2, 1.5]: alone in its map, YAML takes it for a text. known tells the keys that the map may have.
func keyGluedToValue(n *Node, c *Context, known func(key string) bool) bool {
	if n.Kind != Scalar || n.Quoted {
		return false
	}
	m := missingSpace.FindStringSubmatch(n.Text)
	if m == nil || !known(m[1]) {
		return false
	}
	at := n.Span
	at.End = at.Start + len(m[1]) + 1
	c.ErrorAt(at, CodeSyntax, "write "+m[1]+": "+m[2], "a space is missing behind this colon")
	return true
}

// endsInWholeNumber reports whether a text ends in a whole number: 1, T2, but not 2.5.
func endsInWholeNumber(text string) bool {
	rest := strings.TrimRight(text, "0123456789")
	return rest != text && !strings.HasSuffix(rest, ".")
}

// isBelow reports whether key stands in a line below the key before it, and no deeper.
func isBelow(before, key *Key) bool {
	return key.Span.Line > before.Span.Line && key.Span.Col <= before.Span.Col
}

// emptyHint says what to do about the key of n at index i, which has no value. known reports
// whether a key could stand beside it.
func emptyHint(n *Node, i int, otherwise string, known func(*Key) bool) string {
	if i+1 < len(n.Keys) && isBelow(&n.Keys[i], &n.Keys[i+1]) && !known(&n.Keys[i+1]) {
		return "indent the lines below that belong to it"
	}
	return otherwise
}
