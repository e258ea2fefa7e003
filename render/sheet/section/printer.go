package section

import (
	"slices"
	"strings"
	"unicode/utf8"

	"scrimshaw/plan/meter"
	"scrimshaw/symbols/ink"
)

// Print is the report as plain text: headings, tables in columns and notes, in the order of the collar.
func (c Report) Print(f Fields) string {
	w := &printer{}
	w.line(Joined(", ", TitleOf(c.In.Setup), SetupLine(c.In)))
	for _, s := range HeadLines(c.In.Setup) {
		w.line(s)
	}
	w.line(Joined(", ", f.Production, f.Location, Prefixed("revision ", f.Revision), f.Date, Prefixed("for ", f.Crew), Prefixed("by ", f.By)))
	for _, s := range append(c.Sections(), barred(c.In, c.rooms(), c.pieces())...) {
		if s.speaks() {
			w.section(s)
		}
	}
	return w.String()
}

// printer writes sections as text.
type printer struct{ strings.Builder }

func (w *printer) line(s string) {
	if s = strings.TrimRight(ink.Clean(s), " "); s != "" {
		w.WriteString(s + "\n")
	}
}

func (w *printer) section(s *Section) {
	w.WriteString("\n")
	w.line(strings.ToUpper(s.Title))
	for _, l := range s.Words {
		w.line("  " + l)
	}
	for _, l := range s.textOnly {
		w.line("  " + l)
	}
	for i := range s.Tables {
		w.table(&s.Tables[i])
	}
	for i := range s.textTables {
		w.table(&s.textTables[i])
	}
	for _, l := range s.Without {
		w.line("  " + meter.UncomputedMark + l)
	}
	for _, l := range s.Points {
		w.line("  - " + l)
	}
}

// table prints the heads and the entries in columns two spaces apart.
func (w *printer) table(t *Table) {
	heads, named := make([]string, len(t.Columns)), false
	for i, col := range t.Columns {
		heads[i] = col.Head
		named = named || col.Head != ""
	}
	wide := make([]int, len(t.Columns))
	widen := func(cells []string) {
		for i, s := range cells {
			wide[i] = max(wide[i], utf8.RuneCountInString(s))
		}
	}
	widen(heads)
	for i := range t.Entries {
		e := &t.Entries[i]
		widen(e.plain(e.Cells))
		widen(e.plain(e.Below))
	}
	if named {
		w.line(rowText(t, heads, wide))
	}
	for i := range t.Entries {
		e := &t.Entries[i]
		w.line(barBeside(e, rowText(t, e.plain(e.Cells), wide)))
		if e.Below != nil {
			w.line(rowText(t, e.plain(e.Below), wide))
		}
		for _, note := range e.Notes {
			w.line("      " + note)
		}
	}
}

// plain are the cells of an entry, or what it has below them, in plain text: those that are struck with their mark.
func (e *Entry) plain(cells []string) []string {
	cells = slices.Clone(cells)
	for _, i := range e.Struck {
		if i < len(cells) && cells[i] != "" {
			cells[i] = meter.UncomputedMark + cells[i]
		}
	}
	return cells
}

// barBeside is a row of text with a bar before it where it is not as on the sheet before.
func barBeside(e *Entry, row string) string {
	if e.Revised {
		return "|" + row[1:]
	}
	return row
}

// rowText are cells in columns, behind a margin.
func rowText(t *Table, cells []string, wide []int) string {
	var b strings.Builder
	for i, s := range cells {
		space := strings.Repeat(" ", wide[i]-utf8.RuneCountInString(s))
		if t.Columns[i].Align == ink.Right {
			s = space + s
		} else {
			s += space
		}
		b.WriteString("  " + s)
	}
	return b.String()
}
