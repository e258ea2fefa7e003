package sheet

import (
	"scrimshaw/symbols/ink"
)

// measure is the width of every column of text, mm: about fifty characters. Two of them stand beside
// each other on an A4 sheet upright, and five on an A3 sheet.
const measure = 69.0

// Distances in a column, mm.
const (
	blockGap   = 4.8 // above a heading
	blockSlack = 3.0 // by how much more a gap may grow where there is room
	headRise   = 5.4 // from the top of a heading to the top of what follows
	rowAir     = 1.2
)

// row is the smallest piece of a block: it is never split over columns.
type row struct {
	height float64
	rule   bool // a hairline below
	draw   func(p pad, x, top float64)
}

// rank says how much a block belongs on the sheet of the plan.
type rank uint8

// The ranks: a block that must stand beside the plan, one that the plan is hard to use without, one
// that is wanted there, and one that may as well stand on a page of lists.
const (
	must rank = iota
	needed
	wanted
	other
)

// block is a headed piece of the collar.
type block struct {
	title string
	alarm bool // in the accent colour
	rank  rank // how much it belongs on the sheet of the plan
	lead  []row
	rows  []row
}

// headHeight is that of the heading and of what repeats with it.
func (b *block) headHeight() float64 {
	h := 0.0
	if b.title != "" {
		h = headRise
	}
	for _, r := range b.lead {
		h += r.height
	}
	return h
}

// drawHead letters the heading and the repeated rows, and returns the top of what follows.
func (b *block) drawHead(p pad, x, top float64, continued bool) float64 {
	if b.title != "" {
		st := p.head()
		if b.alarm {
			st = st.inked(p.look.Alarm)
		}
		p.text(at(x, top-st.cap), b.title, st, ink.Left)
		if continued {
			p.text(at(x+st.width(b.title+" "), top-st.cap), "(continued)", p.quiet(), ink.Left)
		}
		top -= headRise
	}
	return drawRows(p, b.lead, x, top)
}

// drawRows draws rows from top down and returns where they end.
func drawRows(p pad, rows []row, x, top float64) float64 {
	for _, r := range rows {
		r.draw(p, x, top)
		top -= r.height
		if r.rule {
			p.line(hair, p.look.Rule, at(x, top), at(x+measure, top))
		}
	}
	return top
}

// space is an empty row.
func space(h float64) row { return row{height: h, draw: func(pad, float64, float64) {}} }

// set wraps a text and says so where it has to be cut.
func (c *composer) set(s string, st style, width float64, most int) []string {
	lines, cut := st.wrap(s, width, most)
	if cut {
		c.log.warn("lettering-cut", "a shorter text, or a larger paper", "%q is too long for its place on the sheet and is cut", s)
	}
	return lines
}
