// Package workbook writes lists as a workbook of Office Open XML, a sheet a table (ECMA-376).
package workbook

import (
	"io"

	"github.com/xuri/excelize/v2"

	"scrimshaw/render/list"
)

// Widths of columns, in characters.
const (
	numberWidth = 11
	wordWidth   = 16
	longWidth   = 40
	longText    = 24 // characters from which on words take a wide column
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
	strong, err := f.NewStyle(&excelize.Style{Font: &excelize.Font{Bold: true}})
	if err != nil {
		return err
	}
	wrapped, err := f.NewStyle(&excelize.Style{Alignment: &excelize.Alignment{WrapText: true, Vertical: "top"}})
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
		s := sheet{f, t, strong, wrapped}
		if err := s.write(); err != nil {
			return err
		}
	}
	if err := totals(f, d, strong); err != nil {
		return err
	}
	return f.Write(w)
}

// sheet is one table on its way.
type sheet struct {
	f               *excelize.File
	table           *list.Table
	strong, wrapped int // styles
}

func (s *sheet) write() error {
	for c := range s.table.Columns {
		column, err := excelize.ColumnNumberToName(c + 1)
		if err != nil {
			return err
		}
		if err := s.f.SetColStyle(s.table.Title, column, s.wrapped); err != nil {
			return err
		}
		if err := s.f.SetColWidth(s.table.Title, column, column, s.width(c)); err != nil {
			return err
		}
		if err := setText(s.f, s.table.Title, c, 0, s.table.Columns[c].Key); err != nil {
			return err
		}
	}
	if err := s.f.SetRowStyle(s.table.Title, 1, 1, s.strong); err != nil {
		return err
	}
	for r := range s.table.Rows {
		for c := range s.table.Columns {
			if err := s.cell(r, c); err != nil {
				return err
			}
		}
	}
	return s.f.SetPanes(s.table.Title, &excelize.Panes{Freeze: true, YSplit: 1, TopLeftCell: "A2", ActivePane: "bottomLeft"})
}

// width is that of a column, in characters.
func (s *sheet) width(column int) float64 {
	if s.table.Columns[column].Number {
		return numberWidth
	}
	for r := range s.table.Rows {
		if len(s.table.Said(r, column)) > longText {
			return longWidth
		}
	}
	return wordWidth
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

// totals writes the sums of the kit two rows under it, with what they are without.
func totals(f *excelize.File, d *list.Day, strong int) error {
	t, row := &d.Kit, len(d.Kit.Rows)+2
	if err := setText(f, t.Title, 0, row, "total"); err != nil {
		return err
	}
	for key, sum := range map[string]list.Cell{"kg": d.Mass(), "litres": d.Volume()} {
		if sum.Number == nil {
			continue
		}
		for c := range t.Columns {
			if t.Columns[c].Key != key {
				continue
			}
			name, err := excelize.CoordinatesToCellName(c+1, row+1)
			if err != nil {
				return err
			}
			if err := f.SetCellFloat(t.Title, name, *sum.Number, -1, 64); err != nil {
				return err
			}
		}
	}
	if err := f.SetRowStyle(t.Title, row+1, row+1, strong); err != nil {
		return err
	}
	for i, line := range d.Lacks() {
		if err := setText(f, t.Title, 0, row+1+i, line); err != nil {
			return err
		}
	}
	return nil
}
