package sheet

import (
	"math"

	"scrimshaw/symbols/ink"
)

// row is the smallest piece of a block: it is never split over columns.
type row struct {
	height float64
	rule   bool // a hairline below
	draw   func(p pad, x, top float64)
}

// textBlock is a headed piece of the collar as it is lettered.
type textBlock struct {
	sizes block
	title string
	alarm bool // in the accent colour
	lead  []row
	rows  []row
}

// sized is the block with its heights, which the flow of the page goes by.
func (b *textBlock) sized() *textBlock {
	b.sizes.head = b.headHeight()
	for _, r := range b.rows {
		b.sizes.rows = append(b.sizes.rows, r.height)
	}
	return b
}

// headHeight is that of the heading and of what repeats with it.
func (b *textBlock) headHeight() float64 {
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
func (b *textBlock) drawHead(p pad, x, top float64, continued bool) float64 {
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

// textBlocks finds the lettering of a block.
type textBlocks map[*block]*textBlock

// drawPieces draws what was poured into slots. Where a slot has height to spare its gaps grow.
func drawPieces(p pad, blocks textBlocks, pieces []piece, slots []slot) {
	for i, s := range slots {
		own := inSlot(pieces, i)
		used := 0.0
		for _, q := range own {
			used += q.gap + q.height
		}
		more := math.Min(blockSlack, (s.height()-used)/math.Max(1, float64(len(own)-1)))
		top := s.top
		for j, q := range own {
			if j > 0 {
				top -= q.gap + more
			}
			own := blocks[q.block]
			top = own.drawHead(p, s.x, top, q.from > 0)
			top = drawRows(p, own.rows[q.from:q.to], s.x, top)
		}
	}
}

// lettered is a row of one line.
func lettered(s string, st style, h float64) row {
	return row{height: h, draw: func(p pad, x, top float64) { p.text(at(x, top-st.cap), s, st, ink.Left) }}
}

func heightOf(rows []row) float64 {
	h := 0.0
	for _, r := range rows {
		h += r.height
	}
	return h
}
