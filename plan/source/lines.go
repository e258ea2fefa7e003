package source

import (
	"bytes"
	"sort"
	"strings"
	"unicode/utf8"
)

// bom is the byte order mark that some editors put before UTF-8.
const bom = "\xef\xbb\xbf"

// lines turns line and column into offsets and back. It remembers where it was asked last, so
// that a walk through one long line is not quadratic.
type lines struct {
	file   *File
	starts []int // offset of each line's first byte
	last   place
}

// place is an offset with its line and column, as a Span counts them.
type place struct{ offset, line, col int }

// newLines indexes f. A line ends with LF, CR LF or CR alone; a byte order mark is before the
// first line, not in it.
func newLines(f *File) *lines {
	l := &lines{file: f, starts: []int{bodyStart(f)}}
	for i, b := range f.Text {
		if b == '\n' || b == '\r' && (i+1 == len(f.Text) || f.Text[i+1] != '\n') {
			l.starts = append(l.starts, i+1)
		}
	}
	l.last = l.lineStart(1)
	return l
}

// bodyStart is the offset of the text behind a byte order mark.
func bodyStart(f *File) int {
	if len(f.Text) >= len(bom) && string(f.Text[:len(bom)]) == bom {
		return len(bom)
	}
	return 0
}

func (l *lines) lineStart(line int) place { return place{l.starts[line-1], line, 1} }

// offset returns the byte at a line and column, the end of the text for what lies behind it.
func (l *lines) offset(line, col int) int {
	if line > len(l.starts) {
		return len(l.file.Text)
	}
	p := l.last
	if p.line != line || p.col > col {
		p = l.lineStart(line)
	}
	for p.col < col && p.offset < len(l.file.Text) {
		p = l.next(p)
	}
	l.last = p
	return p.offset
}

// span is the range of bytes from start to end.
func (l *lines) span(start, end int) Span {
	p := l.last
	if p.offset > start || p.line < len(l.starts) && l.starts[p.line] <= start {
		line := max(1, sort.SearchInts(l.starts, start+1))
		p = l.lineStart(line)
	}
	for p.offset < start {
		p = l.next(p)
	}
	l.last = p
	return Span{File: l.file, Start: start, End: max(start, end), Line: p.line, Col: p.col}
}

// next is the place one rune on, in the same line.
func (l *lines) next(p place) place {
	_, size := utf8.DecodeRune(l.file.Text[p.offset:])
	return place{p.offset + size, p.line, p.col + 1}
}

// isSpace reports whether b is a blank or a line break.
func isSpace(b byte) bool { return b == ' ' || b == '\t' || b == '\n' || b == '\r' }

// lineAt is the offset of the line that holds offset i.
func lineAt(text []byte, i int) int { return bytes.LastIndexAny(text[:i], "\r\n") + 1 }

// indentAt counts the spaces before the line that holds offset i.
func indentAt(text []byte, i int) int {
	start := lineAt(text, i)
	n := 0
	for start+n < len(text) && text[start+n] == ' ' {
		n++
	}
	return n
}

// tokenEnd is the end of the word at offset i, for the caret.
func tokenEnd(text []byte, i int) int {
	if i >= len(text) {
		return i
	}
	end := i
	for end < len(text) && !isSpace(text[end]) && bytes.IndexByte([]byte(",:[]{}"), text[end]) < 0 {
		end++
	}
	if end == i {
		_, size := utf8.DecodeRune(text[i:])
		end += size
	}
	return end
}

// startsLine reports whether offset i is the first thing in its line.
func startsLine(text []byte, i int) bool {
	return strings.TrimSpace(string(text[lineAt(text, i):i])) == ""
}
