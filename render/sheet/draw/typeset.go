package draw

import (
	"cmp"

	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols/ink"
)

// Typesetter sets texts in lines and rows, and says where it has to cut one.
type Typesetter struct {
	Pad Pad               // for its styles; it has no page
	cut func(text string) // receives every text that does not fit and is cut

	wide float64 // of what is set, mm; 0: a column of text

	Narrow bool // a column of a table was narrower than a word in it
}

// measure is how wide lines are set, mm.
func (c *Typesetter) measure() float64 { return cmp.Or(c.wide, layout.Measure) }

// Wide lays a section out over more than one column of text: wide mm.
func (c *Typesetter) Wide(s *section.Section, wide float64) *Block {
	c.wide = wide
	defer func() { c.wide = 0 }()
	return c.Block(s, nil)
}

// Set wraps a text and says so where it has to be cut.
func (c *Typesetter) Set(s string, st style, width float64, most int) []string {
	lines, cut := st.wrap(s, width, most)
	if cut {
		c.cut(s)
	}
	return lines
}

// Block lays a section out, with its figure first. Words above a table that has heads are repeated with these.
func (c *Typesetter) Block(s *section.Section, figure []Row) *Block {
	head := c.Pad.head()
	b := &Block{title: c.Set(s.Title, head, c.measure(), 2), more: head.Leading(), alarm: s.Alarm, Sizes: layout.Block{Rank: s.Rank}, Rows: figure}
	var words []Row
	for _, w := range s.Words {
		words = append(words, c.paragraph(w, c.Pad.listed(c.Pad.Look.Quiet), nil)...)
	}
	if len(s.Tables) != 1 || !headed(&s.Tables[0]) {
		b.Rows, words = append(b.Rows, words...), nil
	}
	for i := range s.Tables {
		lead, rows := c.rows(&s.Tables[i])
		if len(s.Tables) == 1 {
			b.lead = append(words, lead...)
		} else {
			if i > 0 {
				b.Rows = append(b.Rows, Space(2*RowAir))
			}
			b.Rows = append(b.Rows, lead...)
		}
		b.Rows = append(b.Rows, rows...)
	}
	if len(s.Without) > 0 && len(s.Tables) > 0 {
		b.Rows = append(b.Rows, Space(RowAir))
	}
	for _, w := range s.Without {
		b.Rows = append(b.Rows, c.paragraph(w, c.Pad.listed(c.Pad.Look.Alarm), nil)...)
	}
	mark := c.Pad.Look.Quiet
	if s.Alarm {
		mark = c.Pad.Look.Alarm
	}
	for _, w := range s.Points {
		b.Rows = append(b.Rows, c.paragraph(w, c.Pad.listed(c.Pad.Look.Ink), &mark)...)
	}
	if n := len(b.Rows); n > 0 && len(s.Tables) == 0 && len(s.Words)+len(s.Points) > 0 {
		b.Rows[n-1].Height -= RowAir // the gap to the next block does for that below the last paragraph
	}
	return b.sized()
}

// markIn is how far text stands in from its mark, mm.
const markIn = 2.6

// wholeLines is how many lines a paragraph may have to be kept in one piece; a longer one may run on in
// the next column, where it begins and ends with pairedLines together: one line alone at the foot of a column reads as a heading.
const (
	wholeLines  = 5
	pairedLines = 2
)

// paragraph is a text with a small mark before it where mark is not nil.
func (c *Typesetter) paragraph(s string, st style, mark *ink.Colour) []Row {
	indent := 0.0
	if mark != nil {
		indent = markIn
	}
	set := c.Set(s, st, c.measure()-indent, 0)
	var rows []Row
	for from := 0; from < len(set); {
		to := len(set)
		if len(set) > wholeLines && to-from > pairedLines {
			to = from + 1
			if from == 0 {
				to = pairedLines
			}
		}
		r := setLines(set[from:to], st, indent)
		if from == 0 && mark != nil {
			r = marked(r, st, *mark)
		}
		if to == len(set) {
			r.Height += RowAir
		}
		rows, from = append(rows, r), to
	}
	return rows
}

// setLines is a row of lines.
func setLines(set []string, st style, indent float64) Row {
	return Row{Height: float64(len(set)) * st.Leading(), Draw: func(p Pad, x, top float64) {
		for i, l := range set {
			p.Text(box.At(x+indent, top-st.Cap-st.Leading()*float64(i)), l, st, ink.Left)
		}
	}}
}

// marked is a row with a square before its first line.
func marked(r Row, st style, mark ink.Colour) Row {
	const half = 0.45
	text := r.Draw
	r.Draw = func(p Pad, x, top float64) {
		y := top - st.Cap/2
		p.Rect(box.Of(x, y-half, x+2*half, y+half), 0, mark, &mark)
		text(p, x, top)
	}
	return r
}
