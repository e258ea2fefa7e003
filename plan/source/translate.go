package source

import (
	"bytes"
	"fmt"
	"regexp"
	"strings"
)

// translate puts the library's words for the fault at offset at into plain ones.
func translate(text []byte, at int, inFlow bool, problem string) syntaxFault {
	if f, ok := gluedColon(text, at); ok {
		return f
	}
	if bytes.HasPrefix(text[lineAt(text, at):], []byte("%")) {
		return fixed("this line starts with %, as only YAML's own directives do", "remove it")(text, at)
	}
	for _, t := range translations {
		if strings.Contains(problem, t.problem) {
			return t.say(text, at)
		}
	}
	if inFlow {
		return syntaxFault{message: "a comma or a closing bracket is missing before this", hint: "write , between two values"}
	}
	return syntaxFault{message: "this is not YAML: " + problem}
}

// translations lists the library's problems in the order in which they are looked for.
var translations = []struct {
	problem string
	say     func(text []byte, at int) syntaxFault
}{
	{"mapping values are not allowed", secondColon},
	{"did not find expected key", noKey},
	{"could not find expected ':'", noColon},
	{"did not find expected ',' or", noComma},
	{"cannot start any token", badStart},
	{"unknown anchor", noAnchor},
	{"expected '-' indicator", noDash},
	{"block sequence entries are not allowed", inlineDash},
	{"tab character", tabFault},
	{"max depth", func([]byte, int) syntaxFault {
		return syntaxFault{code: CodeTooDeep, message: fmt.Sprintf("nested too deep: a scene has at most %d levels", maxDepth)}
	}},
	{"expected node content", noValue},
	{"escape", badEscape},
	{"hexdecimal number", badEscape},
	{"<document start>", fixed("this does not belong to what stands above", "give it a key, or indent it")},
	{"tag", tagFault},
	{"expected '!'", tagFault},
	{"expected '>'", tagFault},
	{"alphabetic or numeric character", fixed("the name of an anchor or alias is missing here", "put the text in quotes")},
	{"document indicator", fixed("a line of --- or ... stands inside a value", "close the value before it")},
	{"indicator equal to 0", blockHeader},
	{"comment or line break", blockHeader},
}

// fixed says the same for every text.
func fixed(message, hint string) func([]byte, int) syntaxFault {
	return func([]byte, int) syntaxFault { return syntaxFault{message: message, hint: hint} }
}

// missingSpace is a key with its value glued to the colon.
var missingSpace = regexp.MustCompile(`^[ -]*([A-Za-z_][\w-]*):([^\s:/].*)$`)

// gluedColon finds a line like height:2.5, where the space behind the colon is missing.
func gluedColon(text []byte, at int) (syntaxFault, bool) {
	line := string(text[lineAt(text, at):lineEnd(text, at)])
	m := missingSpace.FindStringSubmatchIndex(line)
	if m == nil {
		return syntaxFault{}, false
	}
	start := lineAt(text, at) + m[2]
	return syntaxFault{start: start, end: start + m[3] - m[2] + 1, message: "a space is missing behind this colon",
		hint: "write " + line[m[2]:m[3]] + ": " + line[m[4]:m[5]]}, true
}

// secondColon is a colon where a value is already under way: in its line, or in the line above.
func secondColon(text []byte, at int) syntaxFault {
	if i := bytes.IndexByte(text[at:lineEnd(text, at)], ':'); i >= 0 {
		at += i
	}
	start := lineAt(text, at)
	if bytes.Contains(text[start:at], []byte(": ")) || start == 0 {
		return syntaxFault{start: at, end: at + 1, message: "a second key stands in this line",
			hint: "start a new line for it, or put the value in quotes if the colon belongs to it"}
	}
	above := lineAbove(text, start)
	if f, ok := gluedColon(text, above); ok {
		return f
	}
	if line := bytes.TrimSpace(text[above:start]); len(line) > 0 && line[0] != '#' && !bytes.Contains(line, []byte(":")) {
		return noColon(text, above+indentAt(text, above))
	}
	return syntaxFault{start: start + indentAt(text, at), end: at,
		message: "this key is indented as if it belonged to the value above it",
		hint:    "line it up with the key above, or remove that key's value"}
}

// lineAbove is the start of the line above the one that starts at start, whatever break ends it.
func lineAbove(text []byte, start int) int {
	if bytes.HasSuffix(text[:start], []byte("\r\n")) {
		start--
	}
	return lineAt(text, max(start-1, 0))
}

// noKey is a line that fits none of the maps that are open, or something behind a value.
func noKey(text []byte, at int) syntaxFault {
	if !startsLine(text, at) {
		return syntaxFault{message: "this cannot stand behind a value", hint: "start a new line, or put the value in quotes"}
	}
	if text[at] == '-' {
		return syntaxFault{message: "a list item stands where a key belongs", hint: "indent it, or give the list a key"}
	}
	return syntaxFault{message: "the indentation of this line fits nothing above it", hint: "line it up with the keys that it belongs to"}
}

// noColon is a word that stands alone where a key belongs.
func noColon(text []byte, at int) syntaxFault {
	word := string(bytes.TrimSpace(text[at:lineEnd(text, at)]))
	f := syntaxFault{start: at, end: at + len(word), message: "a key is followed by a colon and its value", hint: "write " + word + ": …"}
	key, value, assigned := strings.Cut(word, "=")
	switch {
	case strings.HasPrefix(word, "//"), strings.HasPrefix(word, "--"), strings.HasPrefix(word, ";"), strings.HasPrefix(word, "/*"):
		f.message, f.hint = "this is neither a key nor a comment", "start a comment with #"
	case strings.Contains(word, "\uff1a"):
		f.hint = "write a plain colon: " + strings.Replace(word, "\uff1a", ":", 1)
	case assigned:
		f.hint = "write " + strings.TrimSpace(key) + ": " + strings.TrimSpace(value)
	default:
		if m := spacedValue.FindStringSubmatch(word); m != nil {
			f.hint = "write " + m[1] + ": " + m[2]
		}
	}
	return f
}

// spacedValue is a key with its value behind it and no colon between; a comment is left out.
var spacedValue = regexp.MustCompile(`^([A-Za-z_][\w-]*) +([^ #].*?)(?: +#.*)?$`)

// noComma is something in a flow collection that follows a value without a comma. The library
// takes the value and the key that follows for one text, and stumbles over the colon.
func noComma(text []byte, at int) syntaxFault {
	if f, ok := openedKey(text, at); ok {
		return f
	}
	f := syntaxFault{start: at, end: tokenEnd(text, at), hint: "write , between two values",
		message: "a comma is missing before this, or a closing bracket"}
	if at < len(text) && text[at] == ':' {
		f.start, f.end = keyBefore(text, at), at
	}
	if startsLine(text, f.start) {
		f.message = "a comma is missing at the end of the line above, or a closing bracket"
	}
	return f
}

// openedKey is a word in braces with a bracket behind it: at [1, 2] lacks its colon, and YAML takes
// at:[1, 2] for a word too, since the colon has no space behind it.
func openedKey(text []byte, at int) (syntaxFault, bool) {
	if at >= len(text) || text[at] != '[' && text[at] != '{' {
		return syntaxFault{}, false
	}
	end := len(bytes.TrimRight(text[:at], " "))
	start := keyBefore(text, end)
	word := string(text[start:end])
	before := bytes.TrimRight(text[:start], " \t\r\n")
	open := outlineOf(text[:start]).open // none where the brace before it is itself in a text
	if word == "" || len(open) == 0 || before[len(before)-1] != '{' && before[len(before)-1] != ',' || text[open[len(open)-1]] != '{' {
		return syntaxFault{}, false
	}
	f := syntaxFault{start: start, end: end, message: "a colon is missing behind this key"}
	if strings.HasSuffix(word, ":") {
		f.message = "a space is missing behind this colon"
	}
	f.hint = "write " + strings.TrimSuffix(word, ":") + ": " + bracketText(text, at)
	return f, true
}

// bracketText is what stands in the bracket at offset at, where that is short and in one line.
func bracketText(text []byte, at int) string {
	const longest = 40
	line := text[at:lineEnd(text, at)]
	if closer := bytes.IndexByte(line, text[at]+2); closer >= 0 && closer < longest && !bytes.ContainsAny(line[1:closer], "[{") {
		return string(line[:closer+1])
	}
	return string(text[at]) + "…" + string(text[at]+2)
}

// noValue is a comma or a bracket where a value belongs.
func noValue(text []byte, at int) syntaxFault {
	f := syntaxFault{message: "a value is missing here"}
	if at < len(text) && text[at] == ',' {
		f.hint = "remove the comma, or write the value before it"
	}
	return f
}

// badStart is a character with which no value can start.
func badStart(text []byte, at int) syntaxFault {
	if at < len(text) && text[at] == '\t' {
		return tabFault(text, at)
	}
	if at >= len(text) {
		return syntaxFault{message: "a value is missing here"}
	}
	return syntaxFault{message: fmt.Sprintf("a value cannot start with %c", text[at]), hint: "put it in quotes"}
}

// noAnchor is an alias of nothing.
func noAnchor(text []byte, at int) syntaxFault {
	return syntaxFault{code: CodeAlias, message: fmt.Sprintf("the alias %s has no anchor before it", text[at:tokenEnd(text, at)]),
		hint: "put it in quotes if it is meant as text"}
}

// noDash is a line in a list that is no item.
func noDash([]byte, int) syntaxFault {
	return syntaxFault{message: "this line stands inside a list and is not an item of it", hint: "start it with -, or indent it as its key asks"}
}

// inlineDash is a list that starts in the line of its key.
func inlineDash([]byte, int) syntaxFault {
	return syntaxFault{message: "a list item cannot start in the line of its key", hint: "start it in the next line, or write [a, b]"}
}

// tabFault is a tab in indentation.
func tabFault([]byte, int) syntaxFault {
	return syntaxFault{code: CodeTab, message: "a tab stands where only spaces may", hint: "indent with spaces"}
}

// tagFault is a tag that is not even well written.
func tagFault(text []byte, at int) syntaxFault {
	start := keyBefore(text, at)
	return syntaxFault{code: CodeTag, start: start, end: max(at, start+1), message: "a tag is not part of the language", hint: "remove it, or put the text in quotes"}
}

// blockHeader is something behind | or > that belongs into the next line.
func blockHeader([]byte, int) syntaxFault {
	return syntaxFault{message: "only an indentation figure and + or - may follow | and >", hint: "start the text in the next line"}
}

// badEscape is a backslash that starts no escape.
func badEscape(text []byte, at int) syntaxFault {
	if i := bytes.LastIndexByte(text[:min(at+1, len(text))], '\\'); i >= lineAt(text, at) {
		at = i
	}
	return syntaxFault{start: at, end: min(at+2, len(text)), message: `a backslash in "…" starts an escape, and YAML has no such escape`,
		hint: `write \\ for a backslash, or use '…'`}
}

// syntaxFault is a fault of the syntax in plain words, with offsets into the text.
type syntaxFault struct {
	code, message, hint string
	start, end          int
	related             string // what stands at relatedAt, "" for nothing
	relatedAt           int
}
