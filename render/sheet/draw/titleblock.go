package draw

import (
	"fmt"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols/ink"
)

// Folio numbers a sheet: the drawing is the set-up's, 0 of what is of all of them, the sheet is one of all of a run.
type Folio struct{ Drawing, Sheet, Sheets int }

// drawing is the number of the drawing in words.
func (f Folio) drawing() string {
	if f.Drawing == 0 {
		return "day"
	}
	return fmt.Sprint(f.Drawing)
}

// cell is one field of the title block, in shares of its width.
type cell struct {
	label, value string
	from, to     float64
}

// TitleBlock draws the fields of ISO 7200 in the lower right corner of the frame: the legal owner
// is the production, the identification number the drawing.
func (c Collar) TitleBlock(p Pad, b r2.Box, s section.Fields, f Folio) {
	rows := [][]cell{
		{{"Production", s.Production, 0, 0.5}, {"Location", s.Location, 0.5, 1}},
		{{"Drawn for", s.Crew, 0, 0.5}, {"Drawn by", s.By, 0.5, 1}},
		{{"Drawing", f.drawing(), 0, 0.22}, {"Revision", s.Revision, 0.22, 0.5},
			{"Date", s.Date, 0.5, 0.8}, {"Sheet", fmt.Sprintf("%d / %d", f.Sheet, f.Sheets), 0.8, 1}},
	}
	label, value := p.Quiet(), p.Small().Strong()
	x, top := b.Min.X+layout.Pads, b.Max.Y-4.0
	for i, row := range rows {
		y := top - layout.CellPitch*float64(i)
		for _, q := range row {
			left, wide := x+q.from*layout.Measure, (q.to-q.from)*layout.Measure-1.6
			p.Text(box.At(left, y-label.Cap), q.label, label, ink.Left)
			lines, below := c.Set(q.value, value, wide, 2), layout.ValueBelow
			if len(lines) > 1 {
				below = layout.ValueClose
			}
			for j, l := range lines {
				p.Text(box.At(left, y-label.Cap-below-layout.ValueLines*float64(j)), l, value, ink.Left)
			}
		}
	}
}
