package sheet

import "scrimshaw/symbols/ink"

// typesetter sets texts in lines and rows, and says where it has to cut one.
type typesetter struct {
	p   pad // for its styles; it has no page
	log *faults
}

// set wraps a text and says so where it has to be cut.
func (c *typesetter) set(s string, st style, width float64, most int) []string {
	lines, cut := st.wrap(s, width, most)
	if cut {
		c.log.warn("lettering-cut", "a shorter text, or a larger paper", "%q is too long for its place on the sheet and is cut", s)
	}
	return lines
}

// block lays a section out, with its figure first.
func (c *typesetter) block(s *section, figure []row) *textBlock {
	b := &textBlock{title: s.title, alarm: s.alarm, sizes: block{rank: s.rank}, rows: figure}
	for _, w := range s.words {
		b.rows = append(b.rows, c.paragraph(w, c.p.quiet(), nil)...)
	}
	for i := range s.tables {
		lead, rows := c.rows(&s.tables[i])
		if len(s.tables) == 1 {
			b.lead = lead
		} else {
			if i > 0 {
				b.rows = append(b.rows, space(2*rowAir))
			}
			b.rows = append(b.rows, lead...)
		}
		b.rows = append(b.rows, rows...)
	}
	if len(s.lacks) > 0 && len(s.tables) > 0 {
		b.rows = append(b.rows, space(rowAir))
	}
	for _, w := range s.lacks {
		b.rows = append(b.rows, c.paragraph(w, c.p.small().inked(c.p.look.Alarm), nil)...)
	}
	mark := c.p.look.Quiet
	if s.alarm {
		mark = c.p.look.Alarm
	}
	for _, w := range s.points {
		b.rows = append(b.rows, c.paragraph(w, c.p.small(), &mark)...)
	}
	return b.sized()
}

// markIn is how far text stands in from its mark, mm.
const markIn = 2.6

// wholeLines is how many lines a paragraph may have to be kept in one piece; a longer one may run on in
// the next column.
const wholeLines = 5

// paragraph is a text with a small mark before it where mark is not nil.
func (c *typesetter) paragraph(s string, st style, mark *ink.Colour) []row {
	indent := 0.0
	if mark != nil {
		indent = markIn
	}
	set := c.set(s, st, measure-indent, 0)
	var rows []row
	for from := 0; from < len(set); {
		to := len(set)
		if to > wholeLines {
			to = from + 1
		}
		r := setLines(set[from:to], st, indent)
		if from == 0 && mark != nil {
			r = marked(r, st, *mark)
		}
		if to == len(set) {
			r.height += rowAir
		}
		rows, from = append(rows, r), to
	}
	return rows
}

// setLines is a row of lines.
func setLines(set []string, st style, indent float64) row {
	return row{height: float64(len(set)) * st.leading(), draw: func(p pad, x, top float64) {
		for i, l := range set {
			p.text(at(x+indent, top-st.cap-st.leading()*float64(i)), l, st, ink.Left)
		}
	}}
}

// marked is a row with a square before its first line.
func marked(r row, st style, mark ink.Colour) row {
	const half = 0.45
	text := r.draw
	r.draw = func(p pad, x, top float64) {
		y := top - st.cap/2
		p.rect(box(x, y-half, x+2*half, y+half), 0, mark, &mark)
		text(p, x, top)
	}
	return r
}
