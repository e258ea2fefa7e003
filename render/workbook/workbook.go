// Package workbook writes lists as a workbook of Office Open XML, a sheet a table (ECMA-376).
package workbook

import (
	"io"
	"unicode/utf8"

	"github.com/xuri/excelize/v2"

	"scrimshaw/render/list"
)

// Measures of cells.
const (
	longWidth  = 40 // the most that a column is wide, characters; what is longer is wrapped
	leastWidth = 8  // characters
	margin     = 2  // of a column beside its longest words, characters
	raggedness = 6  // that wrapped lines lose at their ends, characters
	lineHeight = 15 // points
)

// Write writes the tables of a day: a line of keys, then one a row, and under the kit its totals. Words are never formulas. The same lists are the
// same bytes.
func Write(w io.Writer, d *list.Day) (err error) {
	f := excelize.NewFile()
	defer func() {
		if closed := f.Close(); err == nil {
			err = closed
		}
	}()
	look, err := newLook(f)
	if err != nil {
		return err
	}
	for i, t := range d.Tables() {
		if i == 0 {
			err = f.SetSheetName(f.GetSheetName(0), t.Title)
		} else {
			_, err = f.NewSheet(t.Title)
		}
		if err != nil {
			return err
		}
		s := sheet{f, t, look}
		if err := s.write(); err != nil {
			return err
		}
	}
	if err := totals(f, d, look); err != nil {
		return err
	}
	return f.Write(w)
}

// look are the styles of a workbook.
type look struct {
	strong, wrapped, right int
	running                int // over the cells to the right
}

func newLook(f *excelize.File) (l look, err error) {
	font, err := f.GetDefaultFont()
	if err != nil {
		return l, err
	}
	if l.strong, err = f.NewStyle(&excelize.Style{Font: &excelize.Font{Bold: true, Family: font}}); err != nil {
		return l, err
	}
	if l.right, err = f.NewStyle(&excelize.Style{Alignment: &excelize.Alignment{Horizontal: "right", Vertical: "top"}}); err != nil {
		return l, err
	}
	if l.running, err = f.NewStyle(&excelize.Style{Alignment: &excelize.Alignment{Vertical: "top"}}); err != nil {
		return l, err
	}
	l.wrapped, err = f.NewStyle(&excelize.Style{Alignment: &excelize.Alignment{WrapText: true, Vertical: "top", Indent: 1}})
	return l, err
}

// sheet is one table on its way.
type sheet struct {
	f     *excelize.File
	table *list.Table
	look  look
}

// paper prints a sheet as wide as the paper, on its long side.
func (s *sheet) paper() error {
	landscape, one, all, fit := "landscape", 1, 0, true
	if err := s.f.SetPageLayout(s.table.Title, &excelize.PageLayoutOptions{Orientation: &landscape, FitToWidth: &one, FitToHeight: &all}); err != nil {
		return err
	}
	return s.f.SetSheetProps(s.table.Title, &excelize.SheetPropsOptions{FitToPage: &fit})
}

func (s *sheet) write() error {
	if err := s.paper(); err != nil {
		return err
	}
	for c := range s.table.Columns {
		if err := s.column(c); err != nil {
			return err
		}
	}
	if err := s.f.SetRowStyle(s.table.Title, 1, 1, s.look.strong); err != nil {
		return err
	}
	for r := range s.table.Rows {
		if err := s.f.SetRowHeight(s.table.Title, r+2, float64(lineHeight*s.lines(r))); err != nil {
			return err
		}
		for c := range s.table.Columns {
			if err := s.cell(r, c); err != nil {
				return err
			}
		}
	}
	return s.f.SetPanes(s.table.Title, &excelize.Panes{Freeze: true, YSplit: 1, TopLeftCell: "A2", ActivePane: "bottomLeft"})
}

// column sets up a column and writes its key.
func (s *sheet) column(c int) error {
	name, err := excelize.ColumnNumberToName(c + 1)
	if err != nil {
		return err
	}
	if err := s.f.SetColStyle(s.table.Title, name, s.style(c)); err != nil {
		return err
	}
	if err := s.f.SetColWidth(s.table.Title, name, name, float64(s.width(c))); err != nil {
		return err
	}
	return setText(s.f, s.table.Title, c, 0, s.table.Columns[c].Key)
}

// style is that of a column: dashes stand where numbers do.
func (s *sheet) style(column int) int {
	if s.table.Columns[column].Number {
		return s.look.right
	}
	return s.look.wrapped
}

// width is that of a column, in characters.
func (s *sheet) width(column int) int {
	longest := utf8.RuneCountInString(s.table.Columns[column].Key)
	for r := range s.table.Rows {
		longest = max(longest, utf8.RuneCountInString(s.table.Said(r, column)))
	}
	return max(leastWidth, min(longest+margin, longWidth))
}

// lines is how many lines the words of a row take.
func (s *sheet) lines(row int) int {
	most := 1
	for c := range s.table.Columns {
		if n := utf8.RuneCountInString(s.table.Said(row, c)); n > longWidth-margin {
			most = max(most, (n+longWidth-raggedness-1)/(longWidth-raggedness))
		}
	}
	return most
}

// cell writes one cell: a number as a number, all else as words.
func (s *sheet) cell(row, column int) error {
	if n := s.table.Rows[row][column].Number; n != nil {
		name, err := excelize.CoordinatesToCellName(column+1, row+2)
		if err != nil {
			return err
		}
		return s.f.SetCellFloat(s.table.Title, name, *n, -1, 64)
	}
	return setText(s.f, s.table.Title, column, row+1, s.table.Said(row, column))
}

func setText(f *excelize.File, sheet string, column, row int, text string) error {
	name, err := excelize.CoordinatesToCellName(column+1, row+1)
	if err != nil || text == "" {
		return err
	}
	return f.SetCellStr(sheet, name, text)
}

// totals writes the sums of the kit and of what is used up two rows under each; under the last what both cost together, and under the kit what it is without.
func totals(f *excelize.File, d *list.Day, l look) error {
	if _, err := sums(f, &d.Kit, l, "total", map[string]list.Cell{"kg": d.Mass(), "litres": d.Volume(), "price": d.Hire()}, len(d.Kit.Rows)+2); err != nil {
		return err
	}
	if err := lines(f, &d.Kit, l, len(d.Kit.Rows)+3, d.Lacks()); err != nil || len(d.Consumables.Rows) == 0 {
		return err
	}
	row, err := sums(f, &d.Consumables, l, "total", map[string]list.Cell{"kg": d.ConsumableMass(), "price": d.Sales()}, len(d.Consumables.Rows)+2)
	if err != nil || d.Terms() == "" {
		return err
	}
	if row, err = sums(f, &d.Consumables, l, "hire and consumables", map[string]list.Cell{"price": d.Price()}, row); err != nil {
		return err
	}
	return lines(f, &d.Consumables, l, row, []string{d.Terms()})
}

// sums writes a row of sums under their columns, and returns the row after it.
func sums(f *excelize.File, t *list.Table, l look, name string, of map[string]list.Cell, row int) (next int, err error) {
	if err := setText(f, t.Title, 0, row, name); err != nil {
		return 0, err
	}
	for c := range t.Columns {
		sum := of[t.Columns[c].Key]
		if sum.Number == nil {
			continue
		}
		cell, err := excelize.CoordinatesToCellName(c+1, row+1)
		if err != nil {
			return 0, err
		}
		if err := f.SetCellFloat(t.Title, cell, *sum.Number, -1, 64); err != nil {
			return 0, err
		}
	}
	return row + 1, f.SetRowStyle(t.Title, row+1, row+1, l.strong)
}

// lines writes sentences in the first column, one a row.
func lines(f *excelize.File, t *list.Table, l look, row int, all []string) error {
	for i, line := range all {
		if err := setText(f, t.Title, 0, row+i, line); err != nil {
			return err
		}
	}
	return f.SetRowStyle(t.Title, row+1, row+max(1, len(all)), l.running)
}
