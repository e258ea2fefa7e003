package draw

import (
	"math"

	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols/ink"
)

// Blanks is a block of lines to be written in by hand, each with what belongs there.
func (c *Typesetter) Blanks(title string, labels []string) *Block {
	const high, from = 7.6, 34.0 // mm: a line for a pen, and where it begins
	b := &Block{title: []string{title}}
	st := c.Pad.listed(c.Pad.Look.Quiet)
	for _, words := range labels {
		b.Rows = append(b.Rows, Row{Height: high, Draw: func(p Pad, x, top float64) {
			p.Text(box.At(x, top-high+RowAir), words, st, ink.Left)
			p.Line(Hair, p.Look.Quiet, box.At(x+from, top-high+RowAir-0.6), box.At(x+layout.Measure, top-high+RowAir-0.6))
		}})
	}
	return b.sized()
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

// levelled are widths with all that are wider than some width cut to that, but for what they need at least, so that together they take no more than
// there is room.
func levelled(natural, least []float64, room float64) []float64 {
	cut := func(at float64) (widths []float64, sum float64) {
		for i := range natural {
			w := max(least[i], min(natural[i], at))
			widths, sum = append(widths, w), sum+w
		}
		return widths, sum
	}
	low, high := 0.0, math.Max(room, 0)
	if widths, sum := cut(high); sum <= room {
		return widths
	}
	const halvings = 40
	for range halvings {
		if middle := (low + high) / 2; middle > 0 {
			if _, sum := cut(middle); sum > room {
				high = middle
			} else {
				low = middle
			}
		}
	}
	widths, _ := cut(low)
	return widths
}
