package sheet

import "scrimshaw/symbols/ink"

// section is a headed piece of the collar as data: the same section is laid out as a block on
// paper and printed as text.
type section struct {
	title  string
	alarm  bool     // in the accent colour
	rank   rank     // how much it belongs on the sheet of the plan
	drawn  []row    // what only a drawing shows; it stands first
	said   []string // the same in words, for text alone
	words  []string // plain paragraphs, second rank
	tables []table
	lacks  []string // what struck figures are without, in the accent colour
	points []string // paragraphs with a mark
}

// empty says whether there is nothing to print.
func (s *section) empty() bool { return len(s.drawn) == 0 && !s.speaks() }

// speaks says whether there is anything in words.
func (s *section) speaks() bool {
	return len(s.said) > 0 || len(s.words) > 0 || len(s.points) > 0 || len(s.lacks) > 0 || s.hasRows()
}

func (s *section) hasRows() bool {
	for _, t := range s.tables {
		if len(t.entries) > 0 {
			return true
		}
	}
	return false
}

// block lays the section out.
func (s *section) block(c *composer) *block {
	b := &block{title: s.title, alarm: s.alarm, rank: s.rank, rows: s.drawn}
	for _, w := range s.words {
		b.rows = append(b.rows, c.paragraph(w, c.p.quiet(), nil)...)
	}
	for i := range s.tables {
		lead, rows := s.tables[i].rows(c)
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
	return b
}

// markIn is how far text stands in from its mark, mm.
const markIn = 2.6

// wholeLines is how many lines a paragraph may have to be kept in one piece; a longer one may run on in
// the next column.
const wholeLines = 5

// paragraph is a text with a small mark before it where mark is not nil.
func (c *composer) paragraph(s string, st style, mark *ink.Colour) []row {
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
