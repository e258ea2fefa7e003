package files

import (
	"bytes"
	"fmt"
	"slices"
	"sort"
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/encoding/charmap"

	"scrimshaw/plan/source"
)

// part is a range of bytes of a file.
type part struct{ start, end int }

// text is a file by its lines, with the log that its faults go to.
type text struct {
	file    *source.File
	log     *source.Log
	lines   []part // without their ends
	notUTF8 bool   // bytes beyond ASCII are not UTF-8
	quirks  []*quirk
}

// quirk is something that was read leniently, perhaps in many places.
type quirk struct {
	at            part
	code, message string
	hint          string
	times         int
}

// newText splits a file into lines, which end with LF, CR LF or CR alone. It refuses a file that is
// too large or no text.
func newText(f *source.File, log *source.Log) (*text, bool) {
	t := &text{file: f, log: log, notUTF8: !utf8.Valid(f.Text)}
	b := f.Text
	if len(b) > MaxBytes {
		t.fault(part{}, CodeFormat, "check that this is a photometric file: one has some kilobytes", "the file is larger than %d megabytes", MaxBytes>>20)
		return nil, false
	}
	if t.split(); len(t.lines) > maxLines {
		t.fault(part{}, CodeFormat, "check that this is a photometric file: one has some hundred lines", "the file has more than %d lines", maxLines)
		return nil, false
	}
	if i := bytes.IndexByte(b, 0); i >= 0 {
		t.fault(part{i, i + 1}, CodeFormat, "check that it is a photometric file, saved as plain text", "the file is not text: it holds a byte 0")
		return nil, false
	}
	t.dropTail()
	return t, true
}

// maxLines is the most lines of a file, without blank ones at its end: twice the intensities of a quarter of a degree
// each way, all round.
const maxLines = 2 << 20

// split finds the lines, up to one more than there may be.
func (t *text) split() {
	b := t.file.Text
	if whole := bytes.TrimRight(b, "\r\n"); len(whole) < len(b) {
		b = b[:len(whole)+1] // blank lines at the end need no room
	}
	start := 0
	if bytes.HasPrefix(b, []byte("\xef\xbb\xbf")) {
		start = 3
	}
	for i := start; i < len(b) && len(t.lines) <= maxLines; i++ {
		if b[i] != '\n' && b[i] != '\r' {
			continue
		}
		t.lines = append(t.lines, part{start, i})
		if b[i] == '\r' && i+1 < len(b) && b[i+1] == '\n' {
			i++
		}
		start = i + 1
	}
	if start < len(b) {
		t.lines = append(t.lines, part{start, len(b)})
	}
}

// dropTail leaves out blank lines at the end, and the mark by which old systems end a text.
func (t *text) dropTail() {
	for n := len(t.lines); n > 0; n-- {
		if strings.Trim(string(t.raw(t.lines[n-1])), " \t\x1a\x0c") != "" {
			return
		}
		t.lines = t.lines[:n-1]
	}
}

func (t *text) raw(p part) []byte { return t.file.Text[p.start:p.end] }

// line is the trimmed text of a line, and where it lies; "" beyond the last.
func (t *text) line(i int) (string, part) {
	if i >= len(t.lines) {
		return "", t.end()
	}
	p := t.trimmed(t.lines[i])
	return t.words(p), p
}

// trimmed is a part without blanks around it.
func (t *text) trimmed(p part) part {
	b := t.file.Text
	for p.start < p.end && blank(b[p.start]) {
		p.start++
	}
	for p.end > p.start && blank(b[p.end-1]) {
		p.end--
	}
	return p
}

func blank(b byte) bool { return b == ' ' || b == '\t' || b == '\v' || b == '\f' || b == 0x1a }

// words is a part as one line of readable text: bytes that are not UTF-8 are those of Windows-1252,
// and what no screen shows is left out.
func (t *text) words(p part) string {
	b := t.raw(p)
	if t.notUTF8 && slices.ContainsFunc(b, func(c byte) bool { return c >= utf8.RuneSelf }) {
		if decoded, err := charmap.Windows1252.NewDecoder().Bytes(b); err == nil {
			b = decoded
		}
	}
	return clean(string(b))
}

// clean is text as a file can hold it in one line.
func clean(s string) string {
	return strings.TrimSpace(strings.Map(func(r rune) rune {
		switch {
		case r == '\t' || r == '\n' || r == '\r':
			return ' '
		case r == utf8.RuneError || !unicode.IsGraphic(r):
			return -1
		}
		return r
	}, s))
}

// encoded are bytes that read back as the text: those of Windows-1252, which older programs
// expect, where that can be, else UTF-8.
func encoded(s string) []byte {
	b, err := charmap.Windows1252.NewEncoder().Bytes([]byte(s))
	if err != nil || utf8.Valid(b) {
		return []byte(s)
	}
	return b
}

// end is the place behind the last text of the file.
func (t *text) end() part {
	if n := len(t.lines); n > 0 {
		e := t.trimmed(t.lines[n-1]).end
		return part{e, e}
	}
	return part{}
}

// span is a part as diagnostics name it.
func (t *text) span(p part) source.Span {
	line := sort.Search(len(t.lines), func(i int) bool { return t.lines[i].start > p.start })
	first := 0
	if line > 0 {
		first = t.lines[line-1].start
	}
	column := 1
	if p.start > first {
		column += utf8.RuneCount(t.file.Text[first:p.start])
	}
	return source.Span{File: t.file, Start: p.start, End: max(p.start, p.end), Line: max(line, 1), Col: column}
}

// fault logs an error.
func (t *text) fault(p part, code, hint, format string, args ...any) {
	t.log.Errorf(t.span(p), code, hint, format, args...)
}

// noteQuirk notes a quirk; what is noted with the same message again is only counted.
func (t *text) noteQuirk(p part, code, hint, format string, args ...any) {
	message := fmt.Sprintf(format, args...)
	for _, q := range t.quirks {
		if q.code == code && q.message == message {
			q.times++
			return
		}
	}
	t.quirks = append(t.quirks, &quirk{p, code, message, hint, 1})
}

// logQuirks logs the quirks: as warnings, but for what changes no light.
func (t *text) logQuirks() {
	for _, q := range t.quirks {
		message := q.message
		if q.times > 1 {
			message += fmt.Sprintf(" (%d times)", q.times)
		}
		severity := source.Warning
		if q.code == CodeUnused || q.code == CodeLabel {
			severity = source.Info
		}
		t.log.Add(source.Diagnostic{Severity: severity, Code: q.code, Span: t.span(q.at), Message: message, Hint: q.hint})
	}
	t.quirks = nil
}
