package source

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/width"
)

const (
	tabStop    = 4   // columns between tab stops in an excerpt
	maxColumns = 100 // widest excerpt; longer lines are cut to a window around the caret
	lead       = 40  // columns kept before the caret in a cut line
	maxContext = 800 // bytes of a line looked at on either side of the span's start
)

// cell is one character of an excerpt as it is shown.
type cell struct {
	shown  string
	width  int // columns on a terminal
	marked bool
}

// excerpt writes the line of a span, and carets under it.
func (p *printer) excerpt(s Span, gutter int, style string) {
	if !s.Valid() || s.Start > len(s.File.Text) {
		return
	}
	cells := cellsOf(s)
	if len(cells) == 0 {
		return
	}
	line, carets := renderCells(cells)
	number := fmt.Sprintf(" %*d | ", gutter, s.Line)
	fmt.Fprintf(p, "%s%s\n", p.styled(ansiDim, number), strings.TrimRight(line, " "))
	fmt.Fprintf(p, "%s%s\n", p.styled(ansiDim, fmt.Sprintf(" %*s | ", gutter, "")), underlined(p, carets, style))
}

// underlined is the line of carets with only the carets in style.
func underlined(p *printer, carets, style string) string {
	start := strings.IndexByte(carets, '^')
	return carets[:start] + p.styled(style, carets[start:])
}

// cellsOf splits the line of a span into characters. A span that is empty or lies in a line break
// marks the place behind the text.
func cellsOf(s Span) []cell {
	start, end := lineAround(s.File.Text, s.Start)
	if start == 0 {
		start = min(bodyStart(s.File), end)
	}
	var cells []cell
	column, markedAny := 0, false
	for i := start; i < end; {
		r, size := utf8.DecodeRune(s.File.Text[i:end])
		c := cellOf(r, s.File.Text[i:i+size], column)
		c.marked = i < s.End && i+size > s.Start || i == s.Start
		if c.marked && r == '\t' {
			c.shown = "→" + c.shown[1:]
		}
		markedAny = markedAny || c.marked
		cells = appendCell(cells, c)
		column += c.width
		i += size
	}
	if len(cells) > 0 && !markedAny {
		cells = append(cells, cell{" ", 1, true})
	}
	return cells
}

// appendCell adds a character, or, where it has no width, puts it on the one before.
func appendCell(cells []cell, c cell) []cell {
	if c.width > 0 || len(cells) == 0 {
		c.width = max(c.width, 1)
		return append(cells, c)
	}
	base := &cells[len(cells)-1]
	base.shown += c.shown
	base.marked = base.marked || c.marked
	return cells
}

// lineAround is the line that holds offset i, or the part of it near i.
func lineAround(text []byte, i int) (start, end int) {
	start, end = i, i
	for start > 0 && i-start < maxContext && text[start-1] != '\n' && text[start-1] != '\r' {
		start--
	}
	for start > 0 && start < i && !utf8.RuneStart(text[start]) {
		start++
	}
	for end < len(text) && end-i < maxContext && text[end] != '\n' && text[end] != '\r' {
		end++
	}
	return start, end
}

// cellOf shows one character at a column. Tabs become spaces; what a terminal would obey or hide
// becomes an escape.
func cellOf(r rune, raw []byte, column int) cell {
	switch {
	case r == '\t':
		n := tabStop - column%tabStop
		return cell{strings.Repeat(" ", n), n, false}
	case r == utf8.RuneError && len(raw) == 1:
		return cell{fmt.Sprintf(`\x%02x`, raw[0]), 4, false}
	case isHidden(r):
		shown := escaped(r)
		return cell{shown, len(shown), false}
	case unicode.In(r, unicode.Mn, unicode.Me), r == '\u200d':
		return cell{string(r), 0, false}
	}
	if kind := width.LookupRune(r).Kind(); kind == width.EastAsianWide || kind == width.EastAsianFullwidth {
		return cell{string(r), 2, false}
	}
	return cell{string(r), 1, false}
}

// isHidden reports whether a terminal would not draw r but obey it, or draw nothing: control
// characters, the marks that turn the direction of writing, line separators, unassigned codes.
// The joiner of emoji and scripts is left as it is.
func isHidden(r rune) bool {
	return r != '\u200d' && !unicode.IsGraphic(r) || unicode.In(r, unicode.Zl, unicode.Zp)
}

func escaped(r rune) string {
	if r < 0x100 {
		return fmt.Sprintf(`\x%02x`, r)
	}
	return fmt.Sprintf(`\u{%x}`, r)
}

// Printable is text that may go to a terminal: everything in it is escaped that a terminal would obey or hide, but for
// ends of lines and tabs.
func Printable(text string) string {
	var b strings.Builder
	for len(text) > 0 {
		n := strings.IndexAny(text, "\n\t")
		if n < 0 {
			return b.String() + visible(text)
		}
		b.WriteString(visible(text[:n]) + text[n:n+1])
		text = text[n+1:]
	}
	return b.String()
}

// visible is text with everything escaped that a terminal would obey or hide.
func visible(text string) string {
	var b strings.Builder
	for i := 0; i < len(text); {
		r, size := utf8.DecodeRuneInString(text[i:])
		switch {
		case r == utf8.RuneError && size == 1:
			fmt.Fprintf(&b, `\x%02x`, text[i])
		case isHidden(r):
			b.WriteString(escaped(r))
		default:
			b.WriteRune(r)
		}
		i += size
	}
	return b.String()
}

// renderCells joins cells to the line and its carets, cut to a window where they are too wide.
func renderCells(cells []cell) (line, carets string) {
	first, last := window(cells)
	var text, marks strings.Builder
	if first > 0 {
		text.WriteString("…")
		marks.WriteString(" ")
	}
	caret := false
	for _, c := range cells[first:last] {
		text.WriteString(c.shown)
		switch {
		case c.marked:
			marks.WriteString(strings.Repeat("^", c.width))
			caret = true
		case !caret:
			marks.WriteString(strings.Repeat(" ", c.width))
		}
	}
	if last < len(cells) {
		text.WriteString("…")
	}
	return text.String(), marks.String()
}

// window picks the cells to show.
func window(cells []cell) (first, last int) {
	total, caret, at := 0, -1, 0
	for i, c := range cells {
		if c.marked && caret < 0 {
			caret, at = i, total
		}
		total += c.width
	}
	if total <= maxColumns {
		return 0, len(cells)
	}
	first = caret
	for columns := 0; first > 0 && columns+cells[first-1].width <= min(lead, at); first-- {
		columns += cells[first-1].width
	}
	last = first
	for columns := 0; last < len(cells) && columns+cells[last].width <= maxColumns-2; last++ {
		columns += cells[last].width
	}
	return first, last
}

// The ANSI escapes of Human.
const (
	ansiBold   = "\x1b[1m"
	ansiDim    = "\x1b[2m"
	ansiRed    = "\x1b[1;31m"
	ansiYellow = "\x1b[1;33m"
	ansiCyan   = "\x1b[1;36m"
	ansiReset  = "\x1b[0m"
)

// printer builds the text for a terminal.
type printer struct {
	strings.Builder
	colour bool
}

// styled is text in a style, where there is colour.
func (p *printer) styled(style, text string) string {
	if !p.colour || text == "" {
		return text
	}
	return style + text + ansiReset
}
