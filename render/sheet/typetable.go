package sheet

import (
	"math"
	"slices"

	"scrimshaw/symbols/ink"
)

const (
	columnGap = 2.4 // mm between columns
	mostLines = 14  // of one cell or note: a row has to fit on a page
	chipWide  = 1.1
)

// rows lays the table out: its heads, which repeat where it is split, and its entries.
func (c *typesetter) rows(t *table) (lead, rows []row) {
	widths := c.widths(t)
	if head, ok := c.header(t, widths); ok {
		lead = append(lead, head)
	}
	for i := range t.entries {
		rows = append(rows, c.row(t, &t.entries[i], widths))
	}
	return lead, rows
}

// widths gives every column what its widest cell needs, and the flexible one the rest.
func (c *typesetter) widths(t *table) []float64 {
	w := make([]float64, len(t.columns))
	rest, flexible := measure-columnGap*float64(len(w)-1), -1
	for i, col := range t.columns {
		if col.flexible {
			flexible = i
			continue
		}
		w[i] = c.p.quiet().width(col.head)
		for _, e := range t.entries {
			cell := c.cellStyle(col, &e).width(e.cells[i])
			if i == 0 && e.chip != nil {
				cell += chipWide + 0.8
			}
			w[i] = math.Max(w[i], cell)
		}
		rest -= w[i]
	}
	if flexible >= 0 {
		w[flexible] = rest
	}
	return w
}

func (c *typesetter) cellStyle(col column, e *entry) style {
	st := c.p.small()
	st.bold = col.strong
	if e.alarm {
		st.colour = c.p.look.Alarm
	}
	return st
}

// header is the row of the columns' names, if any has one.
func (c *typesetter) header(t *table, widths []float64) (row, bool) {
	named := false
	for _, col := range t.columns {
		named = named || col.head != ""
	}
	st := c.p.quiet()
	return row{height: st.leading() + 0.3, rule: true, draw: func(p pad, x, top float64) {
		for i, col := range t.columns {
			p.text(at(x+cellX(col, widths[i]), top-st.cap), col.head, st, col.align)
			x += widths[i] + columnGap
		}
	}}, named
}

// cellX is where the text of a cell is anchored, from its column's left edge.
func cellX(col column, width float64) float64 {
	if col.align == ink.Right {
		return width
	}
	return 0
}

// row sets one entry.
func (c *typesetter) row(t *table, e *entry, widths []float64) row {
	cells, deepest := make([][]string, len(t.columns)), 1
	indent, x := 0.0, 0.0
	for i, col := range t.columns {
		cells[i] = []string{e.cells[i]}
		if col.flexible {
			cells[i] = c.set(e.cells[i], c.cellStyle(col, e), widths[i], mostLines)
			indent = x
		}
		deepest = max(deepest, len(cells[i]))
		x += widths[i] + columnGap
	}
	var notes []string
	for _, n := range e.notes {
		notes = append(notes, c.set(n, c.p.quiet(), measure-indent, mostLines)...)
	}
	st := c.p.small()
	return row{
		height: st.cap + st.leading()*float64(deepest+len(notes)-1) + 2*rowAir + 0.4,
		rule:   true,
		draw: func(p pad, x, top float64) {
			c.drawRow(t, p, e, cells, widths, x, top-rowAir)
			for i, n := range notes {
				p.text(at(x+indent, top-rowAir-st.cap-st.leading()*float64(deepest+i)), n, p.quiet(), ink.Left)
			}
		},
	}
}

func (c *typesetter) drawRow(t *table, p pad, e *entry, cells [][]string, widths []float64, x, top float64) {
	for i, col := range t.columns {
		st := c.cellStyle(col, e)
		letter := p.text
		if slices.Contains(e.struck, i) {
			letter = p.struckText
		}
		for j, s := range cells[i] {
			letter(at(x+cellX(col, widths[i]), top-st.cap-st.leading()*float64(j)), s, st, col.align)
		}
		if i == 0 && e.chip != nil {
			left, chip := x+widths[0]-chipWide, p.lamp(*e.chip)
			p.rect(box(left, top-st.cap-0.25, left+chipWide, top+0.25), 0, p.look.Ink, &chip)
		}
		x += widths[i] + columnGap
	}
}
