package draw

import (
	"math"
	"slices"

	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols/ink"
)

const (
	ColumnGap = 2.4 // mm between columns
	maxLines  = 14  // of one cell or note: a row has to fit on a page
	chipWide  = 1.1
)

// rows lays the table out: its heads, which repeat where it is split, and its entries.
func (c *Typesetter) rows(t *section.Table) (lead, rows []Row) {
	widths := c.widths(t)
	if headed(t) {
		lead = append(lead, c.header(t, widths))
	}
	for i := range t.Entries {
		rows = append(rows, c.row(t, &t.Entries[i], widths))
	}
	return lead, rows
}

// widths gives every column what its widest cell needs, and the flexible one the rest.
func (c *Typesetter) widths(t *section.Table) []float64 {
	if c.wide > 0 {
		return c.fitted(t)
	}
	w, cells := make([]float64, len(t.Columns)), make([]float64, len(t.Columns))
	rest, flexible := c.measure()-ColumnGap*float64(len(w)-1), -1
	for i, col := range t.Columns {
		if col.Flexible {
			flexible = i
			continue
		}
		cells[i] = c.widestCell(t, i)
		w[i] = math.Max(cells[i], c.Pad.listed(c.Pad.Look.Quiet).Width(col.Head))
		rest -= w[i]
	}
	if flexible >= 0 {
		c.giveWay(t, w, &rest)
		longest := c.longestUnstacked(t, flexible, rest)
		c.Narrow = c.Narrow || longest > rest
		if short := math.Min(longest, leastName) - rest; short > 0 {
			broken := breakNames(t, w, cells, leastName-rest)
			rest += broken + cutHeads(w, cells, max(0, short-broken))
		}
		w[flexible] = rest
	}
	return w
}

// widestCell is how wide the widest cell of a column is, mm.
func (c *Typesetter) widestCell(t *section.Table, column int) (widest float64) {
	for i := range t.Entries {
		e := &t.Entries[i]
		st := c.cellStyle(t.Columns[column], e)
		cell := st.Width(e.Cells[column])
		if e.Below != nil {
			cell = math.Max(cell, st.Width(e.Below[column]))
		}
		if column == 0 && e.Chip != nil {
			cell += chipWide + 0.8
		}
		widest = math.Max(widest, cell)
	}
	return widest
}

// longestWord is how far the longest word of a column runs, mm.
func (c *Typesetter) longestWord(t *section.Table, column int) float64 {
	longest := 0.0
	for i := range t.Entries {
		for _, w := range words(t.Entries[i].Cells[column]) {
			longest = math.Max(longest, c.cellStyle(t.Columns[column], &t.Entries[i]).Width(w))
		}
	}
	return longest
}

// longestUnstacked is longestWord of the entries whose names would not stand over their figures where the column is so wide.
func (c *Typesetter) longestUnstacked(t *section.Table, column int, width float64) float64 {
	some, before := section.Table{Columns: t.Columns}, 0.0
	for i := range column {
		before += c.widestCell(t, i) + ColumnGap
	}
	for _, e := range t.Entries {
		st := c.cellStyle(t.Columns[column], &e)
		if stacks := column < len(t.Columns)-1 && width > 0 && e.Below == nil && st.Width(e.Cells[column]) <= c.measure()-before; !stacks {
			some.Entries = append(some.Entries, e)
		}
	}
	return c.longestWord(&some, column)
}

// leastFlexible is what the widest column of words leaves to the flexible one, mm.
const leastFlexible = 34.0

// leastName is what heads leave to the flexible column, and that to names which may break, mm, where it has words as long: heads of the house leave more, those that a scene names may not.
const leastName = 14.0

// giveWay makes the widest column of words as narrow as the flexible one needs.
func (c *Typesetter) giveWay(t *section.Table, w []float64, rest *float64) {
	widest := -1
	for i, col := range t.Columns {
		if wraps(col) && !col.Flexible && !col.Breaks && (widest < 0 || w[i] > w[widest]) {
			widest = i
		}
	}
	if short := leastFlexible - *rest; widest >= 0 && short > 0 {
		least := math.Min(w[widest], c.measure()-ColumnGap-leastFlexible)
		narrow := math.Max(w[widest]-short, least)
		*rest += w[widest] - narrow
		w[widest] = narrow
	}
}

// breakNames makes columns of names that may break narrower, and returns by how much together.
func breakNames(t *section.Table, widths, cells []float64, short float64) (by float64) {
	for i, col := range t.Columns {
		if cut := min(short-by, widths[i]-leastName); col.Breaks && cut > 0 {
			widths[i] -= cut
			cells[i] = min(cells[i], widths[i])
			by += cut
		}
	}
	return by
}

// cutHeads makes columns that are wide for their heads alone narrower, the widest first, down to their cells, and returns by how much together.
func cutHeads(widths, cells []float64, short float64) float64 {
	sum := func(all []float64) (s float64) {
		for _, w := range all {
			s += w
		}
		return s
	}
	was := sum(widths)
	for i, w := range widths {
		cells[i] = math.Min(cells[i], w) // one of words has given way already
	}
	copy(widths, levelled(widths, cells, was-short))
	return was - sum(widths)
}

// wraps says whether the cells of a column run on in further lines.
func wraps(col section.Column) bool {
	return col.Flexible || col.Align == ink.Left && (!col.Strong || col.Breaks)
}

func (c *Typesetter) cellStyle(col section.Column, e *section.Entry) style {
	st := c.Pad.listed(c.Pad.Look.Ink)
	st.bold = st.bold || col.Strong
	if e.Alarm {
		st.colour = c.Pad.Look.Alarm
	}
	return st
}

// headed says whether any column has a head.
func headed(t *section.Table) bool {
	return slices.ContainsFunc(t.Columns, func(col section.Column) bool { return col.Head != "" })
}

// header is the row of the columns' heads.
func (c *Typesetter) header(t *section.Table, widths []float64) Row {
	st := c.Pad.listed(c.Pad.Look.Quiet)
	return Row{Height: st.Leading() + 0.3, rule: c.measure(), Draw: func(p Pad, x, top float64) {
		for i, col := range t.Columns {
			p.Text(box.At(x+cellX(col, widths[i]), top-st.Cap), st.Ellipsis(col.Head, widths[i]), st, col.Align)
			x += widths[i] + ColumnGap
		}
	}}
}

// cellX is where the text of a cell is anchored, from its column's left edge.
func cellX(col section.Column, width float64) float64 {
	if col.Align == ink.Right {
		return width
	}
	return 0
}

// row sets one entry.
func (c *Typesetter) row(t *section.Table, e *section.Entry, widths []float64) Row {
	cells, deepest := make([][]string, len(t.Columns)), 1
	indent, x := 0.0, 0.0
	for i, col := range t.Columns {
		cells[i] = []string{e.Cells[i]}
		if wraps(col) {
			cells[i] = c.Set(e.Cells[i], c.cellStyle(col, e), widths[i], maxLines)
		}
		if e.Below != nil && e.Below[i] != "" {
			cells[i] = append(cells[i], e.Below[i])
		}
		if col.Flexible {
			indent = x
		}
		deepest = max(deepest, len(cells[i]))
		x += widths[i] + ColumnGap
	}
	deepest = min(deepest, c.stack(t, e, cells, indent))
	var notes []string
	for _, n := range e.Notes {
		notes = append(notes, c.Set(n, c.Pad.listed(c.Pad.Look.Quiet), c.measure()-indent, maxLines)...)
	}
	st, wide := c.Pad.listed(c.Pad.Look.Ink), c.measure()
	return Row{
		Height: st.Cap + st.Leading()*float64(deepest+len(notes)-1) + 2*RowAir + 0.4,
		rule:   wide,
		Draw: func(p Pad, x, top float64) {
			if e.Revised {
				bar(p, x, top, deepest+len(notes))
			}
			linkTo(p, box.Of(x, top-2*RowAir-st.Cap, x+wide, top), e.Link)
			c.drawRow(t, p, e, cells, widths, x, top-RowAir)
			for i, n := range notes {
				p.Text(box.At(x+indent, top-RowAir-st.Cap-st.Leading()*float64(deepest+i)), n, p.listed(p.Look.Quiet), ink.Left)
			}
		},
	}
}

// stack puts the name of an entry over its figures where that is no higher than the name broken beside them, and returns how many lines the
// entry has. Nobody reads a unit of three words in three lines.
func (c *Typesetter) stack(t *section.Table, e *section.Entry, cells [][]string, indent float64) (lines int) {
	name, beside := slices.IndexFunc(t.Columns, func(col section.Column) bool { return col.Flexible }), 0
	for i := range cells {
		if i != name {
			beside = max(beside, len(cells[i]))
		}
		lines = max(lines, len(cells[i]))
	}
	if c.wide > 0 || name < 0 || name == len(cells)-1 || len(cells[name]) < 2 || 1+beside > len(cells[name]) {
		return lines
	}
	if c.cellStyle(t.Columns[name], e).Width(e.Cells[name]) > c.measure()-indent {
		return lines
	}
	cells[name] = []string{e.Cells[name]}
	for i := name + 1; i < len(cells); i++ {
		cells[i] = append([]string{""}, cells[i]...)
	}
	return 1 + beside
}

func (c *Typesetter) drawRow(t *section.Table, p Pad, e *section.Entry, cells [][]string, widths []float64, x, top float64) {
	for i, col := range t.Columns {
		st := c.cellStyle(col, e)
		letter := p.Text
		if slices.Contains(e.Struck, i) {
			letter = p.struckText
		}
		for j, s := range cells[i] {
			if s == "" {
				continue
			}
			letter(box.At(x+cellX(col, widths[i]), top-st.Cap-st.Leading()*float64(j)), s, st, col.Align)
		}
		if i == 0 && e.Chip != nil {
			left, chip := x+widths[0]-chipWide, p.lamp(*e.Chip)
			p.Rect(box.Of(left, top-st.Cap-0.25, left+chipWide, top+0.25), 0, p.Look.Ink, &chip)
		}
		x += widths[i] + ColumnGap
	}
}

// fitted gives the columns of a wide table what their widest cells need, and where that is too much makes the widest of those that wrap narrower, down
// to their longest words. What is left goes to the flexible one.
func (c *Typesetter) fitted(t *section.Table) []float64 {
	natural, least := make([]float64, len(t.Columns)), make([]float64, len(t.Columns))
	room, rest := c.measure()-ColumnGap*float64(len(t.Columns)-1), 0
	for i, col := range t.Columns {
		natural[i] = max(c.Pad.listed(c.Pad.Look.Quiet).Width(col.Head), col.Least)
		least[i] = natural[i]
		for k := range t.Entries {
			natural[i] = max(natural[i], c.cellStyle(col, &t.Entries[k]).Width(t.Entries[k].Cells[i]))
		}
		if wraps(col) {
			least[i] = max(least[i], c.longestWord(t, i))
		} else {
			least[i] = natural[i]
		}
		if col.Flexible {
			rest = i
		}
	}
	widths := levelled(natural, least, room)
	taken := 0.0
	for _, w := range widths {
		taken += w
	}
	c.Narrow = c.Narrow || taken > room+1e-6
	widths[rest] += max(0, room-taken)
	return widths
}
