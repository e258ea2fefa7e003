package sheet

import (
	"slices"
	"strings"
	"unicode/utf8"

	"scrimshaw/plan/meter"
	"scrimshaw/render/font"
	"scrimshaw/symbols/ink"
)

// Text prints every value of the sheets of some set-ups as plain text: headings, tables in columns
// and notes, in the order of the collar. It is what a screen reader or a message is given in place
// of the drawing. Faults of the options are not reported here: Compose does that.
func Text(o Options, ins ...Input) string {
	if o.Font == nil {
		family, err := font.Default()
		if err != nil {
			return ""
		}
		o.Font = family
	}
	w := &printer{}
	for i, in := range ins {
		if i > 0 {
			w.WriteString("\n\n")
		}
		w.sheet(newComposer(in, o, &faults{}))
	}
	return w.String()
}

// printer writes sections as text.
type printer struct{ strings.Builder }

func (w *printer) sheet(c *composer) {
	w.line(joined(", ", c.title(), c.setupLine()))
	for _, s := range c.exposureLines() {
		w.line(s)
	}
	f := c.sheet()
	w.line(joined(", ", f.production, f.location, prefixed("revision ", f.revision), f.date, prefixed("for ", f.crew), prefixed("by ", f.by)))
	for _, s := range append(c.sections(), c.rooms(), c.pieces()) {
		if s.speaks() {
			w.section(s)
		}
	}
}

// rooms is the list of rooms, whose clear sizes stand on dimension lines of the plan.
func (c *composer) rooms() *section {
	t := table{columns: []column{{strong: true}, {head: "size", align: ink.Right}, {head: "height", align: ink.Right}}}
	for i := range c.in.Setup.Rooms {
		r := &c.in.Setup.Rooms[i]
		g := gatherer{}
		g.all(r.Inside, 0)
		t.entries = append(t.entries, entry{cells: []string{r.Name, c.bare(width(g.box())) + " × " + c.bare(height(g.box())), c.bare(r.Top - r.Base)}})
	}
	return &section{title: c.measured("Rooms"), tables: []table{t}}
}

// pieces is the list of furniture, whose heights are lettered on the plan.
func (c *composer) pieces() *section {
	t := table{columns: []column{{strong: true}, {flexible: true}, {head: "size", align: ink.Right}, {head: "height", align: ink.Right}}}
	for i := range c.in.Setup.Furniture {
		f := &c.in.Setup.Furniture[i]
		t.entries = append(t.entries, entry{cells: []string{f.Name, f.Kind, c.bare(f.Size[0]) + " × " + c.bare(f.Size[1]), c.bare(f.Z1 - f.Base)}})
	}
	return &section{title: c.measured("Furniture"), tables: []table{t}}
}

func prefixed(prefix, s string) string {
	if s == "" {
		return ""
	}
	return prefix + s
}

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
