package source

import (
	"bytes"
	"errors"
	"slices"
)

// locator finds where a text that does not parse goes wrong. The library often names the wrong
// line or none, so it is asked about ever longer starts of the text instead, each with its open
// quotes and brackets closed: the fault is what follows the longest start that parses.
type locator struct {
	text []byte
	work int // bytes that may still be parsed
}

// searchWork bounds the bytes that a search may parse; the library reads some 5 MB a second.
const searchWork = 4 << 20

// locate returns the offset of the first thing in text that does not fit what stands before it;
// len(text) where only closing brackets and quotes are missing. Where the search had to be given
// up, sure is false and the fault is somewhere behind the offset.
func locate(text []byte) (offset int, sure bool) {
	from, to := section(text)
	l := &locator{text: text[from:to], work: searchWork}
	return from + l.locate(), l.work >= 0
}

// section narrows a fault down to a key at the left margin with all that is under it, and its
// neighbours, since a fault may lie in how they meet. Keys cannot be read apart where one may
// repeat the anchor of another.
func section(text []byte) (from, to int) {
	tops := outlineOf(text).tops
	if len(tops) < 4 || bytes.IndexByte(text, '&') >= 0 {
		return 0, len(text)
	}
	ends := append(tops[1:len(tops):len(tops)], len(text))
	for i, top := range tops {
		if doc, ok := decodes(text[top:ends[i]]); ok && doc != nil && doc.Content[0].Kind == mappingNode {
			continue
		}
		from, to = tops[max(0, i-1)], ends[min(i+1, len(ends)-1)]
		if _, ok := decodes(text[from:to]); !ok {
			return from, to
		}
		break
	}
	return 0, len(text)
}

// locate is locate for the locator's part of the text.
func (l *locator) locate() int {
	ends := lineEnds(l.text)
	fits := l.last(ends)
	if fits == len(ends)-1 {
		return len(l.text)
	}
	start := 0
	if fits >= 0 {
		start = ends[fits]
	}
	return l.inLine(start, ends[fits+1])
}

// inLine narrows the fault down to a token of the line from start to end.
func (l *locator) inLine(start, end int) int {
	cuts := cutsOf(l.text, start, end)
	at := start
	if fits := l.lastOf(cuts); fits >= 0 {
		at = cuts[fits]
	}
	for at < end && isSpace(l.text[at]) {
		at++
	}
	return min(at, end)
}

// last is the index of the longest start that parses, -1 where none does. Starts behind the
// fault never parse, so it is found by halves; a start that ends in the midst of something may
// fail as well, which the few next to the one found make up for.
func (l *locator) last(ends []int) int {
	low, high := -1, len(ends)
	for high-low > 1 {
		if mid := (low + high) / 2; l.parses(ends[mid]) {
			low = mid
		} else {
			high = mid
		}
	}
	for i := low + 1; i < min(low+4, len(ends)); i++ {
		if l.parses(ends[i]) {
			low = i
		}
	}
	return low
}

// lastOf is last for the starts that end in one line. Many of them end in the midst of a word, so
// all are tried, from the end, as long as the work allows.
func (l *locator) lastOf(cuts []int) int {
	if len(cuts) > 0 && len(cuts)*cuts[len(cuts)-1] > l.work {
		return l.last(cuts)
	}
	for i, cut := range slices.Backward(cuts) {
		if l.parses(cut) {
			return i
		}
	}
	return -1
}

// parses reports whether the first n bytes parse, once their open quotes and brackets are closed.
func (l *locator) parses(n int) bool {
	if l.work -= n; l.work < 0 {
		return false
	}
	start := bytes.Clone(l.text[:n])
	_, ok := decodes(append(start, closers(start)...))
	return ok
}

// decodes reads the first document of text, and reports whether it has no fault.
func decodes(text []byte) (*yamlNode, bool) {
	doc, err := decodeYAML(text)
	return doc, err == nil || errors.Is(err, errSecond)
}

// closers closes the quotes and brackets that are open at the end of text. The line break before
// them ends a comment.
func closers(text []byte) string {
	o := outlineOf(text)
	var b []byte
	if o.quote >= 0 {
		b = append(b, '\n', ' ', text[o.quote])
	}
	if len(o.open) > 0 {
		b = append(b, '\n', ' ')
	}
	for _, open := range slices.Backward(o.open) {
		b = append(b, text[open]+2) // ] and } come two after [ and {
	}
	return string(b)
}

// lineEnds returns the offset behind each line of text.
func lineEnds(text []byte) []int {
	var ends []int
	for i, b := range text {
		if b == '\n' || b == '\r' && (i+1 == len(text) || text[i+1] != '\n') {
			ends = append(ends, i+1)
		}
	}
	if len(text) > 0 && (len(ends) == 0 || ends[len(ends)-1] < len(text)) {
		ends = append(ends, len(text))
	}
	return ends
}

// cutsOf returns the offsets in the line from start to end where a token may end.
func cutsOf(text []byte, start, end int) []int {
	var cuts []int
	for i := start + 1; i < end; i++ {
		if isMark(text[i]) || isMark(text[i-1]) {
			cuts = append(cuts, i)
		}
	}
	return cuts
}

// isMark reports whether b can end a token, or is one.
func isMark(b byte) bool {
	return isSpace(b) || bytes.IndexByte([]byte(",:[]{}\"'#&*!|>@`%\\"), b) >= 0
}
