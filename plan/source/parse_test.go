package source

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"
)

// TestParseFaults holds each fault to the text that its user sees.
func TestParseFaults(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"nothing", "", `
scene.yaml:1:1: error: the file is empty: it holds no scene [empty]
   fix: start with scrimshaw: 1
`},
		{"only a comment", "# c\n", `
scene.yaml:1:1: error: the file is empty but for comments: it holds no scene [empty]
 1 | # c
   | ^
   fix: start with scrimshaw: 1
`},
		{"a single value", "42", `
scene.yaml:1:1: error: a scene is a map of keys, not a value [not-a-map]
 1 | 42
   | ^^
   fix: start with scrimshaw: 1
`},
		{"a list", "- a\n- b\n", `
scene.yaml:1:1: error: a scene is a map of keys, not a list [not-a-map]
 1 | - a
   | ^^^
   fix: start with scrimshaw: 1
`},
		{"nothing but null", "~\n", `
scene.yaml:1:1: error: the file is empty: it holds no scene [empty]
 1 | ~
   | ^
   fix: start with scrimshaw: 1
`},
		{"a binary file", "\x00\x01\x02\x7fELF", `
scene.yaml:1:1: error: the file is not plain text: it holds the control character U+0000 [not-text]
 1 | \x00\x01\x02\x7fELF
   | ^^^^
   fix: remove it, or check that this is a scene and not a binary file
`},
		{"UTF-16", "\xff\xfea\x00", `
scene.yaml:1:1: error: the file is not UTF-8 text: it starts like UTF-16 [not-text]
 1 | \xff\xfea\x00
   | ^^^^^^^^
   fix: save it as UTF-8
`},
		{"bad UTF-8", "a: b\nc: d\xc3(\n", `
scene.yaml:2:5: error: the byte 0xC3 is not UTF-8 text [not-text]
 2 | c: d\xc3(
   |     ^^^^
   fix: save the file as UTF-8
`},
		{"a control character", "a: 1\n\x1b[31mred: 2\n", `
scene.yaml:2:1: error: the file is not plain text: it holds the control character U+001B [not-text]
 2 | \x1b[31mred: 2
   | ^^^^
   fix: remove it, or check that this is a scene and not a binary file
`},
		{"a line separator", "a: x\u2028y\n", `
scene.yaml:1:5: error: the file is not plain text: it holds the control character U+2028 [not-text]
 1 | a: x\u{2028}y
   |     ^^^^^^^^
   fix: remove it, or check that this is a scene and not a binary file
`},
		{"a tab", "scrimshaw: 1\n\trooms: {}\n", `
scene.yaml:2:1: error: a tab stands in the indentation of this line [tab]
 2 | →   rooms: {}
   | ^^^^
   fix: indent with spaces
`},
		{"a tab in an empty line", "a: 1\n\t\nb: 2\n", `
scene.yaml:2:1: error: a tab stands in the indentation of this line [tab]
 2 | →
   | ^^^^
   fix: indent with spaces
`},
		{"a tab behind spaces", "a:\n  \tb: 1\n", `
scene.yaml:2:3: error: a tab stands in the indentation of this line [tab]
 2 |   → b: 1
   |   ^^
   fix: indent with spaces
`},
		{"an alias of nothing", "a: *nope\n", `
scene.yaml:1:4: error: the alias *nope has no anchor before it [alias]
 1 | a: *nope
   |    ^^^^^
   fix: put it in quotes if it is meant as text
`},
		{"an alias in itself", "a: &a [*a]\n", `
scene.yaml:1:8: error: the alias *a stands inside the value it repeats [alias]
 1 | a: &a [*a]
   |        ^^
`},
		{"a merge key", "base: &b {x: 1}\nother: {<<: *b, y: 2}\n", `
scene.yaml:2:9: error: the merge key << is not part of the language [merge-key]
 2 | other: {<<: *b, y: 2}
   |         ^^
   fix: write its keys out
`},
		{"a second document", "a: 1\n---\nb: 2\n", `
scene.yaml:2:1: error: a second document starts here, and a file holds one scene [second-document]
 2 | ---
   | ^^^
   fix: put it into a file of its own
   scene.yaml:1:1: the first is here
 1 | a: 1
   | ^^^^
`},
		{"a second document behind dots", "a: 1\n...\n# c\nb: 2\n", `
scene.yaml:4:1: error: a second document starts here, and a file holds one scene [second-document]
 4 | b: 2
   | ^^^
   fix: put it into a file of its own
   scene.yaml:1:1: the first is here
 1 | a: 1
   | ^^^^
`},
		{"a key twice", "scrimshaw: 1\nrooms:\n  den: {size: [5, 4]}\nrooms:\n  den: {}\n", `
scene.yaml:4:1: error: the key "rooms" stands here twice [duplicate-key]
 4 | rooms:
   | ^^^^^
   fix: keep one of them
   scene.yaml:2:1: it is already written here
 2 | rooms:
   | ^^^^^
`},
		{"two keys twice", "a: {x: 1, x: 2}\na: {y: 1, y: 2}\n", `
scene.yaml:1:11: error: the key "x" stands here twice [duplicate-key]
 1 | a: {x: 1, x: 2}
   |           ^
   fix: keep one of them
   scene.yaml:1:5: it is already written here
 1 | a: {x: 1, x: 2}
   |     ^

scene.yaml:2:1: error: the key "a" stands here twice [duplicate-key]
 2 | a: {y: 1, y: 2}
   | ^
   fix: keep one of them
   scene.yaml:1:1: it is already written here
 1 | a: {x: 1, x: 2}
   | ^

scene.yaml:2:11: error: the key "y" stands here twice [duplicate-key]
 2 | a: {y: 1, y: 2}
   |           ^
   fix: keep one of them
   scene.yaml:2:5: it is already written here
 2 | a: {y: 1, y: 2}
   |     ^
`},
		{"a list as a key", "[a, b]: c\n", `
scene.yaml:1:1: error: a key is a single word here, not a list [bad-key]
 1 | [a, b]: c
   | ^^^^^^
   fix: write the key as a word
`},
		{"nothing as a key", "{~: 1, ? : 2}\n", `
scene.yaml:1:2: error: a key is a single word here, not nothing [bad-key]
 1 | {~: 1, ? : 2}
   |  ^
   fix: write the key as a word

scene.yaml:1:6: error: a key is a single word here, not nothing [bad-key]
 1 | {~: 1, ? : 2}
   |      ^
   fix: write the key as a word
`},
		{"tags", "a: !!str 5\nb: !foo {c: d}\n", `
scene.yaml:1:4: error: the tag !!str is not part of the language [tag]
 1 | a: !!str 5
   |    ^^^^^
   fix: remove it

scene.yaml:2:4: error: the tag !foo is not part of the language [tag]
 2 | b: !foo {c: d}
   |    ^^^^
   fix: remove it
`},
		{"a second colon", "title: one: two\n", `
scene.yaml:1:11: error: a second key stands in this line [syntax]
 1 | title: one: two
   |           ^
   fix: start a new line for it, or put the value in quotes if the colon belongs to it
`},
		{"a dedent that fits nothing", "rooms:\n  den:\n    size: [5, 4]\n   height: 2\n", `
scene.yaml:4:4: error: the indentation of this line fits nothing above it [syntax]
 4 |    height: 2
   |    ^^^^^^
   fix: line it up with the keys that it belongs to
`},
		{"a key under a value", "a: b\n  c: d\ne: f\n", `
scene.yaml:2:3: error: this key is indented as if it belonged to the value above it [syntax]
 2 |   c: d
   |   ^
   fix: line it up with the key above, or remove that key's value
`},
		{"an apostrophe in quotes", "a: 'don't'\nb: 2\n", `
scene.yaml:1:9: error: text stands behind a closing quote [syntax]
 1 | a: 'don't'
   |         ^^
   fix: inside '…' write '' for an apostrophe, or use "…"
`},
		{"a quote in quotes", "a: \"7'10\"\"\nb: 2\n", `
scene.yaml:1:10: error: text stands behind a closing quote [syntax]
 1 | a: "7'10""
   |          ^
   fix: inside "…" write \" for a quote
`},
		{"a quote that runs to the next", "scrimshaw: 1\nrooms:\n  den: {size: [5, 4]}\ntitle: \"foo\nunits: \"m\"\n", `
scene.yaml:4:8: error: this " is not closed on its line [syntax]
 4 | title: "foo
   |        ^
   fix: put the closing " at the end of the text
   scene.yaml:5:8: the next one stands here
 5 | units: "m"
   |        ^
`},
		{"a quote that runs to the end", "title: \"foo\nunits: m\nrooms: {}\n", `
scene.yaml:1:8: error: this " is never closed [syntax]
 1 | title: "foo
   |        ^
   fix: put the closing " at the end of the text
`},
		{"a brace that swallows the next line", "rooms: {kitchen: {size: [3.6, 3.1]}\nopenings: {street: 1}\nlights: {}\n", `
scene.yaml:1:8: error: this { is never closed [syntax]
 1 | rooms: {kitchen: {size: [3.6, 3.1]}
   |        ^
   fix: put the closing } where the map ends
   scene.yaml:2:1: this line looks as if it were outside
 2 | openings: {street: 1}
   | ^
`},
		{"a bracket that swallows a key", "rooms:\n  den: {size: [3.6, 3.1\n    height: 2\n  attic: {size: [3, 4]}\n", `
scene.yaml:2:15: error: this [ is never closed [syntax]
 2 |   den: {size: [3.6, 3.1
   |               ^
   fix: put the closing ] where the list ends
   scene.yaml:3:5: this line looks as if it were outside
 3 |     height: 2
   |     ^
`},
		{"a bracket open at the end", "a: [1, 2\n", `
scene.yaml:1:4: error: this [ is never closed [syntax]
 1 | a: [1, 2
   |    ^
   fix: put the closing ] where the list ends
`},
		{"a wrong closing bracket", "rooms:\n  den: {size: [3.6, 3.1}\n", `
scene.yaml:2:15: error: this [ is not closed by ] but by } [syntax]
 2 |   den: {size: [3.6, 3.1}
   |               ^
   fix: write ] before the }
   scene.yaml:2:24: here
 2 |   den: {size: [3.6, 3.1}
   |                        ^
`},
		{"one bracket too many", "a: {b: c}}\nd: e\n", `
scene.yaml:1:10: error: this } closes nothing [syntax]
 1 | a: {b: c}}
   |          ^
   fix: remove it, or open it before
`},
		{"a comma behind a map", "rooms: {kitchen: {size: [3.6, 3.1]}},\nopenings: {street: 1}\n", `
scene.yaml:1:37: error: this cannot stand behind a value [syntax]
 1 | rooms: {kitchen: {size: [3.6, 3.1]}},
   |                                     ^
   fix: start a new line, or put the value in quotes
`},
		{"a missing comma", "rooms:\n  den: {size: [3.6, 3.1] height: 2}\n", `
scene.yaml:2:26: error: a comma is missing before this, or a closing bracket [syntax]
 2 |   den: {size: [3.6, 3.1] height: 2}
   |                          ^^^^^^
   fix: write , between two values
`},
		{"a missing comma behind plain text", "rooms:\n  den: {height: 2 wall: 3}\n", `
scene.yaml:2:19: error: a comma is missing before this, or a closing bracket [syntax]
 2 |   den: {height: 2 wall: 3}
   |                   ^^^^
   fix: write , between two values
`},
		{"a missing comma at the end of a line", "a: {\n  b: 1\n  c: 2\n}\n", `
scene.yaml:3:3: error: a comma is missing at the end of the line above, or a closing bracket [syntax]
 3 |   c: 2
   |   ^
   fix: write , between two values
`},
		{"a comma too many", "a: [1,,2]\n", `
scene.yaml:1:7: error: a value is missing here [syntax]
 1 | a: [1,,2]
   |       ^
   fix: remove the comma, or write the value before it
`},
		{"a word alone", "a: 1\nlights\nb: 2\n", `
scene.yaml:2:1: error: a key is followed by a colon and its value [syntax]
 2 | lights
   | ^^^^^^
   fix: write lights: …
`},
		{"a missing space", "a: 1\nheight:2.5\nb: 2\n", `
scene.yaml:2:1: error: a space is missing behind this colon [syntax]
 2 | height:2.5
   | ^^^^^^^
   fix: write height: 2.5
`},
		{"a missing space in the first line", "scrimshaw:1\nrooms: {}\n", `
scene.yaml:1:1: error: a space is missing behind this colon [syntax]
 1 | scrimshaw:1
   | ^^^^^^^^^^
   fix: write scrimshaw: 1
`},
		{"a bad first character", "a: @foo\n", `
scene.yaml:1:4: error: a value cannot start with @ [syntax]
 1 | a: @foo
   |    ^^^^
   fix: put it in quotes
`},
		{"a directive", "%TAG\na: 1\n", `
scene.yaml:1:1: error: this line starts with %, as only YAML's own directives do [syntax]
 1 | %TAG
   | ^^^^
   fix: remove it
`},
		{"a list in the line of its key", "a: - b\n", `
scene.yaml:1:4: error: a list item cannot start in the line of its key [syntax]
 1 | a: - b
   |    ^
   fix: start it in the next line, or write [a, b]
`},
		{"a key in a list", "a:\n  - x\n  y: z\n", `
scene.yaml:3:3: error: a list stands here, and this line is no item of it [syntax]
 3 |   y: z
   |   ^
   fix: start it with -, or indent it as its key asks
`},
		{"a list item among keys", "a: x\n- b\n", `
scene.yaml:2:1: error: a list item stands where a key belongs [syntax]
 2 | - b
   | ^
   fix: indent it, or give the list a key
`},
		{"an escape that is none", "a: \"\\m\"\n", `
scene.yaml:1:5: error: a backslash in "…" starts an escape, and this is none [syntax]
 1 | a: "\m"
   |     ^^
   fix: write \\ for a backslash, or use '…'
`},
		{"text behind a bar", "a: |x\n  foo\n", `
scene.yaml:1:5: error: only an indentation figure and + or - may follow | and > [syntax]
 1 | a: |x
   |     ^
   fix: start the text in the next line
`},
		{"a tag that is none", "a: !<\n", `
scene.yaml:1:4: error: a tag is not part of the language [tag]
 1 | a: !<
   |    ^
   fix: remove it, or put the text in quotes
`},
		{"letters of many bytes", "ключ: [значение, 日本語\nб: \"x\n", `
scene.yaml:1:7: error: this [ is never closed [syntax]
 1 | ключ: [значение, 日本語
   |       ^
   fix: put the closing ] where the list ends
   scene.yaml:2:1: this line looks as if it were outside
 2 | б: "x
   | ^
`},
		{"a long line", strings.Repeat("x", 300) + ": y: z\n", `
scene.yaml:1:304: error: a second key stands in this line [syntax]
 1 | …xxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxx: y: z
   |                                          ^
   fix: start a new line for it, or put the value in quotes if the colon belongs to it
`},
	} {
		t.Run(c.name, func(t *testing.T) {
			var log Log
			Parse(&File{Name: "scene.yaml", Text: []byte(c.text)}, &log)
			var b strings.Builder
			if err := Human(&b, log.All(), false); err != nil {
				t.Fatal(err)
			}
			if got := "\n" + b.String(); got != c.want {
				t.Errorf("got%s\nwant%s", got, c.want)
			}
		})
	}
}

// TestParseHostile holds inputs that are made to hang or to fill the memory to a time and a cause.
func TestParseHostile(t *testing.T) {
	bomb := "a: &a [1, 1, 1, 1, 1, 1, 1, 1, 1]\n"
	chain := "a0: &a0 [x]\n"
	for i := 1; i < 200; i++ {
		chain += fmt.Sprintf("a%d: &a%d [*a%d]\n", i, i, i-1)
	}
	for c := 'b'; c < 'n'; c++ {
		bomb += fmt.Sprintf("%c: &%c [%s]\n", c, c, strings.Repeat(fmt.Sprintf("*%c,", c-1), 9))
	}
	for _, c := range []struct{ name, text, code, message string }{
		{"20,000 brackets", "a: " + strings.Repeat("[", 20_000), CodeTooDeep, "nested too deep: a scene has at most 100 levels"},
		{"20,000 braces", "a: " + strings.Repeat("{b: ", 20_000), CodeTooDeep, "nested too deep: a scene has at most 100 levels"},
		{"20,000 dashes", strings.Repeat("- ", 20_000), CodeTooDeep, "nested too deep: a scene has at most 100 levels"},
		{"400 lines, each deeper", ladder(400), CodeTooDeep, "nested too deep: a scene has at most 100 levels"},
		{"50 MB", strings.Repeat("lights: {}\n", 5_000_000), CodeTooLarge, "the file is too large: 52.5 MB, where a scene has at most 1 MB"},
		{"an alias bomb", bomb, CodeAlias, "the alias *e repeats too much: aliases may add 100000 values to a file"},
		{"a chain of aliases", chain, CodeTooDeep, "the alias *a98 nests too deep: a scene has at most 100 levels"},
		{"many keys twice", "{" + strings.Repeat("a: 1, ", 50_000) + "}", CodeDuplicateKey, `the key "a" stands here twice`},
		{"a fault behind 1 MB", strings.Repeat("a: {b: [1, 2], c: 'x'}\n", 40_000) + "b: [1\nc: 2\n", CodeSyntax, "this [ is never closed"},
		{"a fault behind one line of 1 MB", "a: [" + strings.Repeat("1, ", 300_000) + "1 2: 3]]\n", CodeSyntax, "somewhere from here on this is not YAML: did not find expected key"},
	} {
		t.Run(c.name, func(t *testing.T) {
			var log Log
			start := time.Now()
			Parse(&File{Name: "scene.yaml", Text: []byte(c.text)}, &log)
			took := time.Since(start)
			all := log.All()
			if all[0].Code != c.code || all[0].Message != c.message {
				t.Errorf("got %d findings, the first %s %q at %d:%d", len(all), all[0].Code, all[0].Message, all[0].Span.Line, all[0].Span.Col)
			}
			if took > 10*time.Second {
				t.Errorf("it took %v", took)
			}
			t.Log(took)
		})
	}
}

// ladder nests maps in lines, each indented one more.
func ladder(n int) string {
	var b strings.Builder
	for i := range n {
		b.WriteString(strings.Repeat(" ", i) + "a:\n")
	}
	return b.String()
}

func TestParseAtLimits(t *testing.T) {
	deep := "a: " + strings.Repeat("[", maxDepth-1) + strings.Repeat("]", maxDepth-1)
	for name, text := range map[string]string{
		"99 levels": deep,
		"1 MB":      "a: '" + strings.Repeat("x", MaxBytes-6) + "'\n",
		"aliases":   "a: &a [1, 2, 3]\nb: [" + strings.Repeat("*a, ", 1000) + "]\n",
	} {
		var log Log
		if Parse(&File{Name: "scene.yaml", Text: []byte(text)}, &log) == nil || log.Failed() {
			t.Errorf("%s: refused: %s", name, short(&log))
		}
	}
}

// TestSpans names the text and the place of every key and value in all styles.
func TestSpans(t *testing.T) {
	for _, c := range []struct {
		text string
		want []string
	}{
		{"a: b\n", []string{"a 1:1 a", "a 1:4 b"}},
		{"  a  :  b # c\n", []string{"a 1:3 a", "a 1:9 b"}},
		{"a: {b: [1, 'two'], c, d: }\n", []string{"a 1:1 a", "a 1:4 {b: [1, 'two'], c, d: }", "a.b 1:5 b", "a.b 1:8 [1, 'two']", "a.b.0 1:9 1",
			"a.b.1 1:12 'two'", "a.c 1:20 c", "a.c 1:21 ", "a.d 1:23 d", "a.d 1:25 "}},
		{"a:\n  b: 1 # x\n  c:\n  - 2\n  -\n", []string{"a 1:1 a", "a 2:3 b: 1 # x\n  c:\n  - 2\n  -", "a.b 2:3 b", "a.b 2:6 1", "a.c 3:3 c",
			"a.c 4:3 - 2\n  -", "a.c.0 4:5 2", "a.c.1 5:4 "}},
		{"é: \"ü\\\"\" # ñ\nb: 'it''s'\n", []string{"é 1:1 é", "é 1:4 \"ü\\\"\"", "b 2:1 b", "b 2:4 'it''s'"}},
		{"a: one\n  two\n\n  three # c\nb: x\n", []string{"a 1:1 a", "a 1:4 one\n  two\n\n  three", "b 5:1 b", "b 5:4 x"}},
		{"a: |2-  # c\n   one\n\n  two\n# c\nb: >\n  x\n  y\n", []string{"a 1:1 a", "a 1:4 |2-  # c\n   one\n\n  two", "b 6:1 b", "b 6:4 >\n  x\n  y"}},
		{"a: |\nb: ''\n", []string{"a 1:1 a", "a 1:4 |", "b 2:1 b", "b 2:4 ''"}},
		{"a: &x {b: 1}\nc: *x\n", []string{"a 1:1 a", "a 1:7 {b: 1}", "a.b 1:8 b", "a.b 1:11 1", "c 2:1 c", "c 2:4 *x", "c.b 1:8 b", "c.b 1:11 1"}},
		{"a: &x\nb: &y # c\n  z\n", []string{"a 1:1 a", "a 1:6 ", "b 2:1 b", "b 3:3 z"}},
		{"? a\n: b\n", []string{"a 1:3 a", "a 2:3 b"}},
		{"a: [x: y, {z: 1}, [2]]\n", []string{"a 1:1 a", "a 1:4 [x: y, {z: 1}, [2]]", "a.0 1:5 x: y", "a.0.x 1:5 x", "a.0.x 1:8 y",
			"a.1 1:11 {z: 1}", "a.1.z 1:12 z", "a.1.z 1:15 1", "a.2 1:19 [2]", "a.2.0 1:20 2"}},
		{"a: [ # one [\n  1, # two ]\n  2,\n]\n", []string{"a 1:1 a", "a 1:4 [ # one [\n  1, # two ]\n  2,\n]", "a.0 2:3 1", "a.1 3:3 2"}},
		{bom + "a: 1\r\nb: 2\r\n", []string{"a 1:1 a", "a 1:4 1", "b 2:1 b", "b 2:4 2"}},
		{"a: 1\rb: ~\r", []string{"a 1:1 a", "a 1:4 1", "b 2:1 b", "b 2:4 ~"}},
		{"---\na: 7'10\"\n...\n", []string{"a 2:1 a", "a 2:4 7'10\""}},
		{"-a: - b\n", nil},
	} {
		var log Log
		root := Parse(&File{Name: "scene.yaml", Text: []byte(c.text)}, &log)
		if c.want == nil {
			if !log.Failed() {
				t.Errorf("%q was not refused", c.text)
			}
			continue
		}
		if log.Failed() {
			t.Errorf("%q: %s", c.text, short(&log))
			continue
		}
		if got := spans(root, ""); !slices.Equal(got, c.want) {
			t.Errorf("%q:\ngot  %q\nwant %q", c.text, got, c.want)
		}
	}
}

// spans lists path, place and text of every key and value below n.
func spans(n *Node, at string) []string {
	var all []string
	say := func(path string, s Span) {
		all = append(all, fmt.Sprintf("%s %d:%d %s", path, s.Line, s.Col, s.Text()))
	}
	for _, k := range n.Keys {
		path := strings.TrimPrefix(at+"."+k.Name, ".")
		say(path, k.Span)
		say(path, k.Value.Span)
		all = append(all, spans(k.Value, path)...)
	}
	for i, item := range n.Items {
		path := fmt.Sprintf("%s.%d", at, i)
		say(path, item.Span)
		all = append(all, spans(item, path)...)
	}
	return all
}

func TestScalars(t *testing.T) {
	for text, want := range map[string]Node{
		"yes":          {Kind: Scalar, Text: "yes"},
		"010":          {Kind: Scalar, Text: "010"},
		".nan":         {Kind: Scalar, Text: ".nan"},
		"2001-01-01":   {Kind: Scalar, Text: "2001-01-01"},
		"null":         {Kind: Null},
		"~":            {Kind: Null},
		"":             {Kind: Null},
		"''":           {Kind: Scalar, Quoted: true},
		"'null'":       {Kind: Scalar, Text: "null", Quoted: true},
		`"a\tb\u00e9"`: {Kind: Scalar, Text: "a\tbé", Quoted: true},
		"|\n  x\n  y":  {Kind: Scalar, Text: "x\ny", Quoted: true},
		"x\n  y":       {Kind: Scalar, Text: "x y"},
		"a#b":          {Kind: Scalar, Text: "a#b"},
		"80 %":         {Kind: Scalar, Text: "80 %"},
	} {
		got := value(t, text)
		if got.Kind != want.Kind || got.Text != want.Text || got.Quoted != want.Quoted {
			t.Errorf("%q is %+v, want %+v", text, *got, want)
		}
	}
}
