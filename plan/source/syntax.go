package source

import (
	"bytes"
	"fmt"
	"regexp"
)

// reportSyntax says what err means and where its cause stands.
func reportSyntax(l *lines, err error, log *Log) {
	base := bodyStart(l.file)
	text := l.file.Text[base:]
	at, sure := locate(text)
	f := syntaxFault{code: CodeSyntax, start: at, end: at, message: "somewhere from here on this is not YAML: " + problem(err)}
	if sure {
		f = explain(text, at, problem(err))
	}
	d := Diagnostic{Severity: Error, Code: f.code, Span: l.span(base+f.start, base+f.end), Message: f.message, Hint: f.hint}
	if f.related != "" {
		d.Related = []Related{{l.span(base+f.relatedAt, base+f.relatedAt+1), f.related}}
	}
	log.Add(d)
}

// explain puts the fault at offset at of text into words. A bracket or quote that was never
// closed is blamed where it was opened, for what follows it is innocent.
func explain(text []byte, at int, problem string) syntaxFault {
	before := outlineOf(text[:at])
	if f, ok := unclosed(text, at, before); ok {
		return f
	}
	if f, ok := mismatched(text, at, before); ok {
		return f
	}
	if f, ok := afterQuote(text, at, before); ok {
		return f
	}
	f := translate(text, at, len(before.open) > 0, problem)
	if f.code == "" {
		f.code = CodeSyntax
	}
	if f.end == 0 {
		f.start, f.end = at, tokenEnd(text, at)
	}
	return f
}

// unclosed blames the bracket or quote that is open where the text ends, or where a line starts
// that stands no deeper than the line of the outermost bracket: it was meant to be outside.
func unclosed(text []byte, at int, before *outline) (syntaxFault, bool) {
	whole := outlineOf(text)
	switch {
	case at == len(text) && whole.quote >= 0:
		return openFault(text, whole.quote), true
	case len(before.open) == 0:
		return syntaxFault{}, false
	case at == len(text):
		return openFault(text, before.open[len(before.open)-1]), true
	case leavesBracket(text, at, before.open):
		f := openFault(text, before.open[len(before.open)-1])
		f.related, f.relatedAt = "this line looks as if it were outside", lineAt(text, at)+indentAt(text, at)
		return f, true
	}
	return syntaxFault{}, false
}

// leavesBracket reports whether the line of the fault was meant to be outside of the open
// brackets: it is indented no more than the line where the outermost stands, or it starts with a
// key where the innermost is a list.
func leavesBracket(text []byte, at int, open []int) bool {
	outer, inner := open[0], open[len(open)-1]
	line := lineAt(text, at)
	if isCloser(text[at]) || line <= inner {
		return false
	}
	key := text[at] == ':' && startsLine(text, keyBefore(text, at))
	return indentAt(text, at) <= indentAt(text, outer) || text[inner] == '[' && key
}

// hashValue is a value that was meant to start with #, as colours do.
var hashValue = regexp.MustCompile(`: +(#[0-9A-Za-z]+)`)

// openFault says that the bracket or quote at offset i is never closed.
func openFault(text []byte, i int) syntaxFault {
	hint := ""
	switch text[i] {
	case '"', '\'':
		hint = "put the closing " + string(text[i]) + " at the end of the text"
	default:
		hint = "put the closing " + string(text[i]+2) + " where the " + bracketed(text[i]) + " ends"
		if m := hashValue.FindSubmatch(text[i:lineEnd(text, i)]); m != nil {
			hint = "a # starts a comment: put the value in quotes, \"" + string(m[1]) + "\""
		}
	}
	return syntaxFault{code: CodeSyntax, start: i, end: i + 1, hint: hint, message: fmt.Sprintf("this %c is never closed", text[i])}
}

// bracketed is what an opening bracket opens.
func bracketed(b byte) string {
	if b == '[' {
		return "list"
	}
	return "map"
}

func isCloser(b byte) bool { return b == ']' || b == '}' }

// mismatched blames a bracket that is closed by the wrong one.
func mismatched(text []byte, at int, before *outline) (syntaxFault, bool) {
	if at == len(text) || !isCloser(text[at]) {
		return syntaxFault{}, false
	}
	if len(before.open) == 0 {
		return syntaxFault{code: CodeSyntax, start: at, end: at + 1, hint: "remove it, or open it before",
			message: fmt.Sprintf("this %c closes nothing", text[at])}, true
	}
	open := before.open[len(before.open)-1]
	if text[open]+2 == text[at] {
		return syntaxFault{}, false
	}
	f := openFault(text, open)
	f.message = fmt.Sprintf("this %c is not closed by %c but by %c", text[open], text[open]+2, text[at])
	f.hint = fmt.Sprintf("write %c before the %c", text[open]+2, text[at])
	f.related, f.relatedAt = "here", at
	return f, true
}

// afterQuote blames a quote that was closed too early, or one that ran over the end of its line
// to the next quote.
func afterQuote(text []byte, at int, before *outline) (syntaxFault, bool) {
	start, end := before.quoted[0], before.quoted[1]
	if at == len(text) || end == 0 || len(bytes.Trim(text[end:at], " \t")) > 0 {
		return syntaxFault{}, false
	}
	if bytes.ContainsAny(text[start:end], "\r\n") {
		f := openFault(text, start)
		f.message = fmt.Sprintf("this %c is not closed on its line", text[start])
		f.related, f.relatedAt = "the next one stands here", end-1
		return f, true
	}
	f := syntaxFault{code: CodeSyntax, start: at, end: tokenEnd(text, at), message: "text stands behind a closing quote",
		hint: `inside "…" write \" for a quote`}
	if text[start] == '\'' {
		f.hint = "inside '…' write '' for an apostrophe, or use \"…\""
	}
	return f, true
}

// keyBefore is the start of the word that ends at offset i.
func keyBefore(text []byte, i int) int {
	for i > 0 && !isSpace(text[i-1]) && bytes.IndexByte([]byte(",[]{}"), text[i-1]) < 0 {
		i--
	}
	return i
}
