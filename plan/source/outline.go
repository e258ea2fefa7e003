package source

import "bytes"

// outline is what can be told of a YAML text, or of the start of one, without parsing it: which
// brackets and quotes are open at its end, and where its layout goes wrong. It also serves on
// text that no parser takes, to say which bracket was meant.
type outline struct {
	open   []int  // offsets of the brackets that are open at the end, outermost first
	quote  int    // offset of the quote that is open at the end, or -1
	tab    int    // offset of the first tab in indentation, or -1
	mark   int    // offset of the first ? that marks a key, or -1
	deep   int    // offset where nesting passes maxDepth, or -1
	closer int    // offset of the first closing bracket that fits no open one, or -1
	quoted [2]int // start and end of the quoted text that was closed last
	tops   []int  // offsets of the lines that start at the left margin, lists left out

	text []byte
	pos  int
	// In block context, parent is the column of the innermost key or dash, -1 at the top; what
	// belongs to it is indented more. plain says that a plain text may go on in the next line.
	parent int
	plain  bool
}

// outlineOf scans text, which is UTF-8.
func outlineOf(text []byte) *outline {
	o := &outline{quote: -1, tab: -1, mark: -1, deep: -1, closer: -1, parent: -1, text: text}
	for o.pos < len(text) && o.tab < 0 && o.deep < 0 {
		o.line()
	}
	return o
}

// line scans one line that starts in block context, and the lines that brackets, quotes and
// block texts add to it.
func (o *outline) line() {
	start := o.pos
	o.skip(" ")
	indent := o.pos - start
	if o.peek() == '\t' {
		o.tab = o.pos
		return
	}
	if indent == 0 && (o.marker("---") || o.marker("...")) {
		o.pos += 3
		o.parent, o.plain = -1, false
	} else if o.plain && indent > o.parent && !o.atBreak() && o.peek() != '#' {
		o.plainBlock()
		o.rest()
		return
	}
	if !o.atBreak() && o.peek() != '#' {
		o.plain = false
		if indent == 0 && o.peek() != '-' {
			o.tops = append(o.tops, start)
		}
	}
	o.tokens(start)
	o.rest()
}

// marker reports whether a document marker stands here.
func (o *outline) marker(m string) bool {
	rest := o.text[o.pos:]
	return bytes.HasPrefix(rest, []byte(m)) && (len(rest) == len(m) || isSpace(rest[len(m)]))
}

// tokens scans what stands in a line of block context; start is the offset of the line.
func (o *outline) tokens(start int) {
	for dashes := 0; ; {
		o.skip(" \t")
		if o.pos >= len(o.text) || o.atBreak() {
			return
		}
		column := o.pos - start
		switch b := o.peek(); {
		case b == '#':
			return
		case (b == '-' || b == '?' || b == ':') && o.spaceAt(o.pos+1):
			if dashes++; dashes > maxDepth {
				o.deep = o.pos
				return
			}
			o.marked(b)
			o.parent = column
			o.pos++
		case b == '&', b == '!', b == '*':
			o.pos = propertyEnd(o.text, o.pos)
		case b == '|', b == '>':
			o.blockText()
			return
		case b == '"', b == '\'', b == '[', b == '{':
			if !o.enclosed() || !o.colon() {
				return
			}
			o.parent = column
		default:
			if !o.plainBlock() {
				o.plain = true
				return
			}
			o.parent = column
		}
	}
}

// enclosed scans a quoted text or a flow collection; false where the text ends inside it.
func (o *outline) enclosed() bool {
	if b := o.peek(); b == '"' || b == '\'' {
		return o.quotedText()
	}
	return o.flow()
}

// colon steps over the colon that makes a key of what was just scanned.
func (o *outline) colon() bool {
	o.skip(" \t")
	if o.peek() == ':' && o.spaceAt(o.pos+1) {
		o.pos++
		return true
	}
	return false
}

// plainBlock scans a plain text of block context to the end of its line. It stops behind the
// colon of a key and returns true.
func (o *outline) plainBlock() bool {
	for ; o.pos < len(o.text) && !o.atBreak(); o.pos++ {
		switch b := o.peek(); {
		case b == ':' && o.spaceAt(o.pos+1):
			o.pos++
			return true
		case b == '#' && o.pos > 0 && isSpace(o.text[o.pos-1]):
			return false
		}
	}
	return false
}

// blockText scans a literal or folded text: its header, and the lines indented more than parent.
func (o *outline) blockText() {
	o.rest()
	for o.pos < len(o.text) {
		start := o.pos
		o.skip(" ")
		indent := o.pos - start
		if !o.atBreak() && o.pos < len(o.text) && indent <= o.parent {
			o.pos = start
			return
		}
		o.rest()
	}
}

// quotedText scans a text in quotes; false where it is not closed.
func (o *outline) quotedText() bool {
	start, mark := o.pos, o.peek()
	for o.pos++; o.pos < len(o.text); o.pos++ {
		switch b := o.peek(); {
		case b == '\\' && mark == '"':
			o.pos++
		case b == mark && mark == '\'' && o.pos+1 < len(o.text) && o.text[o.pos+1] == mark:
			o.pos++
		case b == mark:
			o.pos++
			o.quoted = [2]int{start, o.pos}
			return true
		}
	}
	o.pos = len(o.text)
	o.quote = start
	return false
}

// flow scans a flow collection with all that is in it; false where it is not closed.
func (o *outline) flow() bool {
	for plain := false; o.pos < len(o.text); {
		switch b := o.peek(); {
		case isSpace(b):
			o.pos++
		case b == '#' && isSpace(o.text[o.pos-1]):
			o.skipLine()
		case b == '[', b == '{':
			if len(o.open) >= maxDepth {
				o.deep = o.pos
				return false
			}
			o.open, plain = append(o.open, o.pos), false
			o.pos++
		case b == ']', b == '}':
			if opener := o.text[o.open[len(o.open)-1]]; opener+2 != b {
				if o.closer < 0 {
					o.closer = o.pos
				}
				o.pos = len(o.text)
				return false
			}
			o.open, plain = o.open[:len(o.open)-1], false
			o.pos++
			if len(o.open) == 0 {
				return true
			}
		case b == ',', b == ':' && o.flowColon():
			plain = false
			o.pos++
		case (b == '"' || b == '\'') && !plain:
			if !o.quotedText() {
				return false
			}
		case (b == '&' || b == '!' || b == '*') && !plain:
			o.pos = propertyEnd(o.text, o.pos)
		case b == '?' && !plain:
			o.marked(b)
			o.pos++
		default:
			plain = true
			o.pos++
		}
	}
	return false
}

// marked notes the mark of a key.
func (o *outline) marked(b byte) {
	if b == '?' && o.mark < 0 {
		o.mark = o.pos
	}
}

// flowColon reports whether the colon here ends a key of flow context.
func (o *outline) flowColon() bool {
	if o.spaceAt(o.pos + 1) {
		return true
	}
	next, last := o.text[o.pos+1], o.text[o.pos-1]
	return bytes.IndexByte([]byte(",[]{}"), next) >= 0 || last == '"' || last == '\''
}

func (o *outline) peek() byte {
	if o.pos < len(o.text) {
		return o.text[o.pos]
	}
	return 0
}

// spaceAt reports whether a space, a line break or the end is at offset i.
func (o *outline) spaceAt(i int) bool { return i >= len(o.text) || isSpace(o.text[i]) }

func (o *outline) atBreak() bool { b := o.peek(); return b == '\n' || b == '\r' }

func (o *outline) skip(set string) {
	for o.pos < len(o.text) && bytes.IndexByte([]byte(set), o.text[o.pos]) >= 0 {
		o.pos++
	}
}

// skipLine goes to the end of the line, rest behind its break.
func (o *outline) skipLine() {
	for o.pos < len(o.text) && !o.atBreak() {
		o.pos++
	}
}

func (o *outline) rest() {
	o.skipLine()
	if o.pos < len(o.text) {
		o.pos++ // the LF of a CR LF is an empty line, which changes nothing
	}
}
