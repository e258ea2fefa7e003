package source

import (
	"bytes"
	"unicode/utf8"
)

// nestingHint is the fix for a text that nests too deep.
const nestingHint = "close some brackets before this, or indent less"

// wideText names the encoding of a text whose first characters take more than one byte each, as its mark or the
// zeros among them tell; "" where they do not.
func wideText(text []byte) string {
	head := text[:min(len(text), 4)]
	switch {
	case bytes.HasPrefix(head, []byte{0xff, 0xfe, 0, 0}), bytes.HasPrefix(head, []byte{0, 0, 0xfe, 0xff}):
		return "UTF-32"
	case bytes.HasPrefix(head, []byte{0xff, 0xfe}), bytes.HasPrefix(head, []byte{0xfe, 0xff}):
		return "UTF-16"
	case len(head) == 4 && (head[0] != 0) == (head[2] != 0) && (head[1] != 0) == (head[3] != 0) && (head[0] != 0) != (head[1] != 0):
		return "UTF-16"
	}
	return ""
}

// checkText refuses bytes that are not UTF-8, and characters that no text holds.
func checkText(l *lines, log *Log) bool {
	text := l.file.Text
	if wide := wideText(text); wide != "" {
		log.Errorf(Span{File: l.file, Line: 1, Col: 1, End: min(2, len(text))}, CodeNotText, "save it as UTF-8",
			"the file is not UTF-8 text: it starts like %s", wide)
		return false
	}
	for i := bodyStart(l.file); i < len(text); {
		r, size := utf8.DecodeRune(text[i:])
		switch {
		case r == utf8.RuneError && size == 1:
			log.Errorf(l.span(i, i+1), CodeNotText, "save the file as UTF-8", "the byte 0x%02X is not UTF-8 text", text[i])
			return false
		case isControl(r):
			log.Errorf(l.span(i, i+size), CodeNotText, "remove it, or check that this is a scene and not a binary file",
				"the file is not plain text: it holds the control character U+%04X", r)
			return false
		}
		i += size
	}
	return true
}

// isControl reports whether r may not stand in a scene: control characters but tab and line
// breaks, the line breaks that only some programs know (U+0085, U+2028, U+2029), a byte order
// mark inside the text, and what is no character at all.
func isControl(r rune) bool {
	switch {
	case r == '\t', r == '\n', r == '\r':
		return false
	case r < 0x20, 0x7f <= r && r <= 0x9f:
		return true
	}
	return r == 0x2028 || r == 0x2029 || r == 0xfeff || r&0xfffe == 0xfffe
}

// checkLayout refuses tabs in indentation, nesting beyond any scene, and keys marked with a ?, which
// may be of any form and stand in any number of lines: no scene needs them.
func checkLayout(l *lines, log *Log) bool {
	start := bodyStart(l.file)
	o := outlineOf(l.file.Text[start:])
	switch {
	case o.tab >= 0:
		log.Errorf(l.span(start+o.tab, start+o.tab+1), CodeTab, "indent with spaces",
			"a tab stands in the indentation of this line")
		return false
	case o.deep >= 0:
		log.Errorf(l.span(start+o.deep, start+o.deep+1), CodeTooDeep, nestingHint,
			"nested too deep: a scene has at most %d levels", maxDepth)
		return false
	case o.mark >= 0:
		log.Errorf(l.span(start+o.mark, start+o.mark+1), CodeBadKey, "write key: value, or put the text in quotes",
			"a ? marks a key here, which is not part of the language")
		return false
	}
	return true
}
