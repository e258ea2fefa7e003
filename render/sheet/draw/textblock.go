package draw

import (
	"math"

	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/symbols/ink"
)

// Heading is the block's heading, with what repeats below it, as a row.
func (b *Block) Heading() Row {
	return Row{Height: b.headHeight(), Draw: func(p Pad, x, top float64) { b.drawHead(p, x, top, false) }}
}

// Distances in a column, mm.
const (
	blockSlack = 3.0 // by how much more a gap may grow where there is room
	headRise   = 5.4 // from the top of a heading to the top of what follows
	RowAir     = 1.2
)

// Row is the smallest piece of a block: it is never split over columns.
type Row struct {
	Height float64 // mm
	rule   float64 // mm, the length of a hairline below; 0: none
	Draw   func(p Pad, x, top float64)
}

// Block is a headed piece of the collar as it is lettered.
type Block struct {
	Sizes layout.Block
	title []string // in lines
	alarm bool     // in the accent colour
	more  float64  // mm, the pitch of its lines
	lead  []Row
	Rows  []Row
}

// sized is the block with its heights, which the flow of the page needs.
func (b *Block) sized() *Block {
	b.Sizes.Head = b.headHeight()
	for _, r := range b.Rows {
		b.Sizes.Rows = append(b.Sizes.Rows, r.Height)
	}
	return b
}

// headHeight is that of the heading and of what repeats with it.
func (b *Block) headHeight() float64 {
	h := 0.0
	if n := len(b.title); n > 0 {
		h = headRise + b.more*float64(n-1)
	}
	for _, r := range b.lead {
		h += r.Height
	}
	return h
}

// again stands behind the heading of a block that runs on from another column.
const again = "(continued)"

// drawHead letters the heading and the repeated rows, and returns the top of what follows.
func (b *Block) drawHead(p Pad, x, top float64, continued bool) float64 {
	if n := len(b.title); n > 0 {
		st := p.head()
		if b.alarm {
			st = st.inked(p.Look.Alarm)
		}
		for i, l := range b.title {
			p.Text(box.At(x, top-st.Cap-b.more*float64(i)), l, st, ink.Left)
		}
		if from := st.Width(b.title[n-1] + " "); continued && from+p.listed(p.Look.Quiet).Width(again) <= layout.Measure {
			p.Text(box.At(x+from, top-st.Cap-b.more*float64(n-1)), again, p.listed(p.Look.Quiet), ink.Left)
		}
		top -= headRise + b.more*float64(n-1)
	}
	return DrawRows(p, b.lead, x, top)
}

// DrawRows draws rows from top down and returns where they end.
func DrawRows(p Pad, rows []Row, x, top float64) float64 {
	for _, r := range rows {
		r.Draw(p, x, top)
		top -= r.Height
		if r.rule > 0 {
			p.Line(Hair, p.Look.Rule, box.At(x, top), box.At(x+r.rule, top))
		}
	}
	return top
}

// Space is an empty row.
func Space(h float64) Row { return Row{Height: h, Draw: func(Pad, float64, float64) {}} }

// Blocks finds the lettering of a block.
type Blocks map[*layout.Block]*Block

// DrawPieces draws what was poured into slots. Where a slot has height to spare its gaps grow.
func DrawPieces(p Pad, blocks Blocks, pieces []layout.Piece, slots []layout.Slot) {
	for i, s := range slots {
		own := layout.InSlot(pieces, i)
		used := 0.0
		for _, q := range own {
			used += q.Gap + q.Height
		}
		more := math.Min(blockSlack, (s.Height()-used)/math.Max(1, float64(len(own)-1)))
		top := s.Top
		for j, q := range own {
			if j > 0 {
				top -= q.Gap + more
			}
			own := blocks[q.Block]
			top = own.drawHead(p, s.X, top, q.From > 0)
			top = DrawRows(p, own.Rows[q.From:q.To], s.X, top)
		}
	}
}

// Lettered is a row of one line.
func Lettered(s string, st style, h float64) Row {
	return Row{Height: h, Draw: func(p Pad, x, top float64) { p.Text(box.At(x, top-st.Cap), s, st, ink.Left) }}
}

// HeightOf is the height of some rows, mm.
func HeightOf(rows []Row) float64 {
	h := 0.0
	for _, r := range rows {
		h += r.Height
	}
	return h
}
