package source

import (
	"fmt"
	"regexp"
	"strings"
)

// bare is text that every context of YAML reads back as it stands.
var bare = regexp.MustCompile(`^[\pL\pN_]([\pL\pN_ .%/+-]*[\pL\pN_.%/+-])?$`)

// Quote writes text as a YAML value: as it stands where that is safe in every context, else in
// double quotes.
func Quote(text string) string {
	if bare.MatchString(text) && !isNull(text) {
		return text
	}
	var b strings.Builder
	b.WriteByte('"')
	for _, r := range text {
		switch {
		case r == '"', r == '\\':
			b.WriteByte('\\')
			b.WriteRune(r)
		case r == '\n':
			b.WriteString(`\n`)
		case r == '\t':
			b.WriteString(`\t`)
		case r == '\r', isControl(r):
			b.WriteString(codePoint(r))
		default:
			b.WriteRune(r)
		}
	}
	b.WriteByte('"')
	return b.String()
}

// codePoint is the escape of YAML's double quotes for any character.
func codePoint(r rune) string {
	if r < 0x10000 {
		return fmt.Sprintf(`\u%04x`, r)
	}
	return fmt.Sprintf(`\U%08x`, r)
}

// newValue reads the text of an edit: one value in one line, without comment, anchor or tag.
func newValue(text string) (*Node, error) {
	text = strings.TrimSpace(text)
	var log Log
	root := Parse(&File{Name: "edit", Text: []byte("v: " + text)}, &log)
	n := root.Get("v")
	switch {
	case strings.ContainsAny(text, "\r\n"):
		return nil, fmt.Errorf("the new value has more than one line")
	case log.Failed() || len(root.Keys) != 1 || n.Span.Text() != text:
		return nil, fmt.Errorf("%q is not one value; text with marks of YAML in it needs quotes", text)
	case n.Kind == Null:
		return nil, fmt.Errorf("the new value is empty")
	}
	return n, nil
}

// inFlow is the text of a new value inside brackets, where more marks need quotes.
func inFlow(n *Node) string {
	text := n.Span.Text()
	if n.Kind != Scalar || n.Quoted {
		return text
	}
	var log Log
	root := Parse(&File{Name: "edit", Text: []byte("v: [" + text + "]")}, &log)
	if list := root.Get("v"); !log.Failed() && len(list.Items) == 1 && Equal(list.Items[0], n) {
		return text
	}
	return Quote(n.Text)
}
