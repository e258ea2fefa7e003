package draw

import (
	"math"

	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/symbols/ink"
)

// Blanks is a block of lines to be written in by hand, each with what belongs there.
func (c *Typesetter) Blanks(title string, labels []string) *Block {
	const high, from = 6.8, 34.0 // mm: a line for a pen, and where it begins
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
