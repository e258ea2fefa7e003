package sheet

import (
	"fmt"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/symbols/ink"
)

// folio numbers a sheet: the drawing is the set-up's, the sheet is one of all of a run.
type folio struct{ drawing, sheet, sheets int }

// cell is one field of the title block, in shares of its width.
type cell struct {
	label, value string
	from, to     float64
}

// The title block: its height, the pitch of its rows, and where the baseline of a value lies below
// that of its label; closer, with its lines, where the value takes two, mm.
const (
	blockHigh  = 33.6
	cellPitch  = 9.8
	valueBelow = 4.0
	valueClose = 3.2
	valueLines = 3.0
)

// titleBlock draws the fields of ISO 7200 in the lower right corner of the frame: the legal owner
// is the production, the identification number the drawing.
func (c collar) titleBlock(p pad, b r2.Box, s fields, f folio) {
	rows := [][]cell{
		{{"Production", s.production, 0, 0.5}, {"Location", s.location, 0.5, 1}},
		{{"Drawn for", s.crew, 0, 0.5}, {"Drawn by", s.by, 0.5, 1}},
		{{"Drawing", fmt.Sprint(f.drawing), 0, 0.22}, {"Revision", s.revision, 0.22, 0.5},
			{"Date", s.date, 0.5, 0.8}, {"Sheet", fmt.Sprintf("%d / %d", f.sheet, f.sheets), 0.8, 1}},
	}
	label, value := p.quiet(), p.small().strong()
	x, top := b.Min.X+pads, b.Max.Y-4.0
	for i, row := range rows {
		y := top - cellPitch*float64(i)
		for _, q := range row {
			left, wide := x+q.from*measure, (q.to-q.from)*measure-1.6
			p.text(at(left, y-label.cap), q.label, label, ink.Left)
			lines, below := c.set(q.value, value, wide, 2), valueBelow
			if len(lines) > 1 {
				below = valueClose
			}
			for j, l := range lines {
				p.text(at(left, y-label.cap-below-valueLines*float64(j)), l, value, ink.Left)
			}
		}
	}
}
