package source

import (
	"io"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"
)

// seeds hold every construct of YAML that the parser has to find the end of.
var seeds = []string{
	"",
	"scrimshaw: 1\nrooms:    {kitchen: {size: [3.6, 3.1]}}\n",
	"a:\n  - x\n  - {y: 'it''s', z: \"q\\\"\"}\n  -\n  - - 1\n    - 2\nb: |2-\n    text\n\n   more\n# end\nc: >+\n  folded\n  text\n\n",
	"\xef\xbb\xbfa: 1 # c\r\nb:\r\n  c: plain over\r\n    two lines # end\r\n",
	"a: &x {k: [1, 2, ], ? l : m, n}\nb: *x\nc: [p: q, \"r\":s, ~]\n",
	"? a\n: b\n? c\nd:\n- e\n- f\n",
	"ключ: [значение, 日本語, \"é\U0001f600\"]\n",
	"a: [1, 2\nb: 'x\nc: \"y\n",
	"a: &a [*a]\n", "a: b: c\n", "a: !!str 5\n", "<<: {}\n", "a: 1\n---\nb: 2\n", "---\na: 7'10\"\n...\n",
	"a: 1\rb: 2\r", "lights:\n  key: {at: {opening: street, out: 2.4}}\n   bad: 1\n",
}

// FuzzParse holds the parser to its promises on any bytes: no panic, a tree or an error, and
// places that are those of the text.
func FuzzParse(f *testing.F) {
	for _, s := range seeds {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		var log Log
		file := &File{Name: "fuzz.yaml", Text: slices.Clone(text)}
		root := Parse(file, &log)
		if root == nil && !log.Failed() {
			t.Fatal("neither a tree nor an error")
		}
		if root != nil {
			if root.Kind != Map {
				t.Fatalf("the root is %s", root.Kind)
			}
			checkTree(t, root, log.Failed())
		}
		for _, d := range log.All() {
			checkSpan(t, d.Span)
			for _, r := range d.Related {
				checkSpan(t, r.Span)
			}
		}
		if err := Human(io.Discard, log.All(), true); err != nil {
			t.Fatal(err)
		}
	})
}

// checkSpan holds line and column of a span to its offset, by counting from the start.
func checkSpan(t *testing.T, s Span) {
	t.Helper()
	if s.File == nil || s.Start < 0 || s.Start > s.End || s.End > len(s.File.Text) {
		t.Fatalf("span %d-%d of %d bytes", s.Start, s.End, len(s.File.Text))
	}
	before := string(s.File.Text[min(bodyStart(s.File), s.Start):s.Start])
	breaks := strings.NewReplacer("\r\n", "\n", "\r", "\n")
	if strings.HasSuffix(before, "\r") && s.Start < len(s.File.Text) && s.File.Text[s.Start] == '\n' {
		before = before[:len(before)-1] // between CR and LF is still in the line
	}
	before = breaks.Replace(before)
	line := strings.Count(before, "\n") + 1
	col := utf8.RuneCountInString(before[strings.LastIndex(before, "\n")+1:]) + 1
	if line != s.Line || col != s.Col {
		t.Fatalf("offset %d is at %d:%d, not %d:%d", s.Start, line, col, s.Line, s.Col)
	}
}

// checkTree holds every span of a tree to its text: parts lie in their whole and in order, and
// the text under a span is the value. What stands under an alias lies elsewhere. A partial tree
// lacks the entries that were refused.
func checkTree(t *testing.T, n *Node, partial bool) {
	t.Helper()
	checkSpan(t, n.Span)
	if n.Alias {
		if n.Span.Text()[0] != '*' {
			t.Fatalf("the alias is %q", n.Span.Text())
		}
		return
	}
	at := n.Span.Start
	part := func(s Span) {
		t.Helper()
		checkSpan(t, s)
		if s.Start < at || s.End > n.Span.End {
			t.Fatalf("part %d-%d (%q) is not in what is left of %d-%d: from %d", s.Start, s.End, s.Text(), n.Span.Start, n.Span.End, at)
		}
		at = s.End
	}
	names := map[string]bool{}
	for _, k := range n.Keys {
		if names[k.Name] {
			t.Fatalf("key %q twice", k.Name)
		}
		names[k.Name] = true
		part(k.Span)
		if !sameWords(k.Span.Text(), k.Name) {
			t.Fatalf("key %q stands as %q", k.Name, k.Span.Text())
		}
		part(k.Value.Span)
		checkTree(t, k.Value, partial)
	}
	for _, item := range n.Items {
		part(item.Span)
		checkTree(t, item, partial)
	}
	if !partial {
		checkValue(t, n)
	}
}

// checkValue holds the text under a span to the value.
func checkValue(t *testing.T, n *Node) {
	t.Helper()
	text := n.Span.Text()
	switch {
	case n.Kind == Null && text != "" && !isNull(text),
		n.Kind == Scalar && !sameWords(text, n.Text),
		n.Kind == List && text[0] != '[' && text[0] != '-',
		n.Kind == List && text[0] == '[' && text[len(text)-1] != ']',
		n.Kind == Map && text[0] == '{' && text[len(text)-1] != '}' && n.Keys[0].Span.Start > n.Span.Start:
		t.Fatalf("%s %q stands as %q", n.Kind, n.Text, text)
	}
}

// sameWords reports whether text, as it stands in a file, can be value: of plain text all words
// are equal, quotes and block texts start and end as they must.
func sameWords(text, value string) bool {
	if text == "" {
		return value == ""
	}
	last := text[len(text)-1]
	switch text[0] {
	case '"', '\'':
		return len(text) > 1 && last == text[0]
	case '|', '>':
		header, body, _ := strings.Cut(strings.NewReplacer("\r\n", "\n", "\r", "\n").Replace(text), "\n")
		return len(header) > 0 && slices.Equal(strings.Fields(body), strings.Fields(value))
	}
	return slices.Equal(strings.Fields(text), strings.Fields(value))
}
