package source

import (
	"bytes"
	"errors"
)

// Parse reads the YAML text of f. Faults go to log, all that can be found at once; a fault of the
// syntax hides what comes after it, so of those there is one. The tree is nil where the text
// cannot be understood, or is no map; else it holds all that could be, even after faults.
func Parse(f *File, log *Log) *Node {
	if len(f.Text) > MaxBytes {
		log.Errorf(Span{File: f, Line: 1, Col: 1}, CodeTooLarge, "check that this is the scene's own file",
			"the file is too large: %.1f MB, where a scene has at most %.0f MB", float64(len(f.Text))/(1<<20), float64(MaxBytes)/(1<<20))
		return nil
	}
	l := newLines(f)
	if !checkText(l, log) || !checkLayout(l, log) {
		return nil
	}
	start := bodyStart(f)
	doc, err := decodeYAML(f.Text[start:])
	if err != nil && !errors.Is(err, errSecond) {
		reportSyntax(l, err, log)
		return nil
	}
	if doc == nil || len(doc.Content) == 0 {
		return reportEmpty(f, log)
	}
	b := &builder{lines: l, log: log, pos: start}
	root := b.document(doc)
	if errors.Is(err, errSecond) && root != nil {
		reportSecond(l, root, log)
	}
	if root == nil || root.Kind == Map {
		return root
	}
	if root.Kind == Null {
		return reportEmpty(f, log)
	}
	if keyGluedToValue(root, &Context{Log: log}, func(string) bool { return true }) {
		return nil
	}
	log.Errorf(root.Span, CodeNotMap, "start with scrimshaw: 1", "a scene is a map of keys, not %s", root.Kind)
	return nil
}

// reportEmpty says that f holds no scene.
func reportEmpty(f *File, log *Log) *Node {
	message, start := "the file is empty", bodyStart(f)
	if rest := bytes.TrimSpace(f.Text[start:]); len(rest) > 0 && skipBlank(rest, 0) == len(rest) {
		message = "the file has only comments"
	}
	log.Errorf(Span{File: f, Start: start, End: start, Line: 1, Col: 1}, CodeEmpty,
		"start with scrimshaw: 1", "%s: it holds no scene", message)
	return nil
}

// reportSecond says that a second document follows root.
func reportSecond(l *lines, root *Node, log *Log) {
	start := secondStart(l.file.Text, root.Span.End)
	log.Add(Diagnostic{Severity: Error, Code: CodeSecond, Span: l.span(start, min(start+3, len(l.file.Text))),
		Message: "a second document starts here, and a file holds one scene",
		Hint:    "put it into a file of its own", Related: []Related{{root.Span, "the first is here"}}})
}

// secondStart is the offset behind end where a second document starts: its marker, or its text
// behind the end marker of the first.
func secondStart(text []byte, end int) int {
	for i := skipBlank(text, lineEnd(text, end)); i < len(text); i = skipBlank(text, lineEnd(text, i)) {
		if !bytes.HasPrefix(text[i:], []byte("...")) {
			return i
		}
	}
	return end
}
