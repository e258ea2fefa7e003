package sheet

import (
	"slices"
	"strings"
	"unicode/utf8"

	"scrimshaw/plan/meter"
	"scrimshaw/symbols/ink"
)

// print is the report as plain text: headings, tables in columns and notes, in the order of the collar.
func (c Report) print(f fields) string {
	w := &printer{}
	w.line(joined(", ", titleOf(c.in.Setup), setupLine(c.in)))
	for _, s := range exposureLines(c.in.Setup) {
		w.line(s)
	}
	w.line(joined(", ", f.production, f.location, prefixed("revision ", f.revision), f.date, prefixed("for ", f.crew), prefixed("by ", f.by)))
	for _, s := range append(c.sections(), c.rooms(), c.pieces()) {
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

func (w *printer) section(s *section) {
	w.WriteString("\n")
	w.line(strings.ToUpper(s.title))
	for _, l := range s.words {
		w.line("  " + l)
	}
	for _, l := range s.said {
		w.line("  " + l)
	}
	for i := range s.tables {
		w.table(&s.tables[i])
	}
	for _, l := range s.lacks {
		w.line("  " + meter.Mark + l)
	}
	for _, l := range s.points {
		w.line("  - " + l)
	}
}

// table prints the heads and the entries in columns two spaces apart.
func (w *printer) table(t *table) {
	rows := make([][]string, 0, len(t.entries)+1)
	heads, named := make([]string, len(t.columns)), false
	for i, col := range t.columns {
		heads[i] = col.head
		named = named || col.head != ""
	}
	if named {
		rows = append(rows, heads)
	}
	wide := make([]int, len(t.columns))
	for i := range t.entries {
		rows = append(rows, t.entries[i].plain())
	}
	for _, r := range rows {
		for i, s := range r {
			wide[i] = max(wide[i], utf8.RuneCountInString(s))
		}
	}
	for i, r := range rows {
		w.row(t, r, wide)
		if n := i - (len(rows) - len(t.entries)); n >= 0 {
			for _, note := range t.entries[n].notes {
				w.line("      " + note)
			}
		}
	}
}

// plain are the cells in plain text, those that are struck with their mark.
func (e *entry) plain() []string {
	cells := slices.Clone(e.cells)
	for _, i := range e.struck {
		cells[i] = meter.Mark + cells[i]
	}
	return cells
}

func (w *printer) row(t *table, cells []string, wide []int) {
	var b strings.Builder
	for i, s := range cells {
		space := strings.Repeat(" ", wide[i]-utf8.RuneCountInString(s))
		if t.columns[i].align == ink.Right {
			s = space + s
		} else {
			s += space
		}
		b.WriteString("  " + s)
	}
	w.line(b.String())
}
