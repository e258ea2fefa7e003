package source

import (
	"strings"
	"testing"
)

// TestParseFaults holds each fault to the text that its user sees.
func TestParseFaults(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"nothing", "", `
scene.yaml:1:1: error: the file is empty: it holds no scene [empty]
   fix: start with scrimshaw: 1
`},
		{"only a comment", "# c\n", `
scene.yaml:1:1: error: the file has only comments: it holds no scene [empty]
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
   fix: write the values out in place of the alias
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
		{"nothing as a key", "{~: 1, b: 2}\n", `
scene.yaml:1:2: error: a key is a single word here, not nothing [bad-key]
 1 | {~: 1, b: 2}
   |  ^
   fix: write the key as a word
`},
		{"a marked key", "{a: why?, ? b : 2}\n", `
scene.yaml:1:11: error: a ? marks a key here, which is not part of the language [bad-key]
 1 | {a: why?, ? b : 2}
   |           ^
   fix: write key: value, or put the text in quotes
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
scene.yaml:3:3: error: this line stands inside a list and is not an item of it [syntax]
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
		{"an unknown escape", "a: \"\\m\"\n", `
scene.yaml:1:5: error: a backslash in "…" starts an escape, and YAML has no such escape [syntax]
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
		{"an incomplete tag", "a: !<\n", `
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
		{"a colour without quotes in braces", "materials: {w: {reflectance: 0.2, colour: #aabbcc}}\n", `
scene.yaml:1:16: error: this { is never closed [syntax]
 1 | materials: {w: {reflectance: 0.2, colour: #aabbcc}}
   |                ^
   fix: a # starts a comment: put the value in quotes, "#aabbcc"
`},
		{"a key without its colon, with keys under it", "rooms:\n  den\n    size: [5, 4]\n", `
scene.yaml:2:3: error: a key is followed by a colon and its value [syntax]
 2 |   den
   |   ^^^
   fix: write den: …
`},
		{"an equals sign", "scrimshaw = 1\nrooms:\n  den: {size: [5, 4]}\n", `
scene.yaml:1:1: error: a key is followed by a colon and its value [syntax]
 1 | scrimshaw = 1
   | ^^^^^^^^^^^^^
   fix: write scrimshaw: 1
`},
		{"a comment of another language", "scrimshaw: 1\n// the kitchen\nrooms: {}\n", `
scene.yaml:2:1: error: this is neither a key nor a comment [syntax]
 2 | // the kitchen
   | ^^^^^^^^^^^^^^
   fix: start a comment with #
`},
		{"a key and its value without a colon", "scrimshaw: 1\ntitle Test # of the day\nrooms: {}\n", `
scene.yaml:2:1: error: a key is followed by a colon and its value [syntax]
 2 | title Test # of the day
   | ^^^^^^^^^^^^^^^^^^^^^^^
   fix: write title: Test
`},
		{"a key without a colon in braces", "people: {ruth: {pose: seated, at [1, 2]}}\n", `
scene.yaml:1:31: error: a colon is missing behind this key [syntax]
 1 | people: {ruth: {pose: seated, at [1, 2]}}
   |                               ^^
   fix: write at: [1, 2]
`},
		{"a name without a colon in braces", "people: {ruth {pose: seated, at: [1, 2]}}\n", `
scene.yaml:1:10: error: a colon is missing behind this key [syntax]
 1 | people: {ruth {pose: seated, at: [1, 2]}}
   |          ^^^^
   fix: write ruth: {…}
`},
		{"a colon without a space in braces", "people: {ruth: {at:[1, 2], pose: seated}}\n", `
scene.yaml:1:17: error: a space is missing behind this colon [syntax]
 1 | people: {ruth: {at:[1, 2], pose: seated}}
   |                 ^^^
   fix: write at: [1, 2]
`},
		{"a missing comma in a list", "a: [b [1, 2]]\n", `
scene.yaml:1:7: error: a comma is missing before this, or a closing bracket [syntax]
 1 | a: [b [1, 2]]
   |       ^
   fix: write , between two values
`},
		{"a missing space in the only line", "scrimshaw:1\n", `
scene.yaml:1:1: error: a space is missing behind this colon [syntax]
 1 | scrimshaw:1
   | ^^^^^^^^^^
   fix: write scrimshaw: 1
`},
		{"a wide colon", "scrimshaw: 1\npeople：\n  ada: {at: [1, 2]}\n", `
scene.yaml:2:1: error: a key is followed by a colon and its value [syntax]
 2 | people：
   | ^^^^^^^^
   fix: write a plain colon: people:
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
			for _, d := range log.All() {
				if d.Hint == "" {
					t.Errorf("%q comes without a fix", d.Message)
				}
			}
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
