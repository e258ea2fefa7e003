package section

import (
	"scrimshaw/plan/colour"
	"scrimshaw/symbols/ink"
)

// Column is one column of a table. A flexible one takes the width that the others leave, and
// wraps; the others are as wide as what stands in them.
type Column struct {
	Head     string
	Flexible bool
	Align    ink.Align // left or right
	Strong   bool
	Breaks   bool    // a strong one whose cells run on in further lines where the flexible one would have no room
	Least    float64 // mm that it is wide at least: room to write in
}

// Entry is one row of a table: a cell a column, and notes below it that run from the flexible
// column to the right edge.
type Entry struct {
	Cells []string
	Below []string // a second line of the cells, of columns that do not wrap; nil: there is none
	Notes []string
	Chip  *colour.RGB // a strip of the colour of a light after the first cell
	Alarm bool
	Link  string // the name of the page that it leads to; "" none

	Of      []string // what it is about: things by sort and name, readings by name
	Revised bool     // it is not as on the sheet before: a bar stands beside it

	Struck []int // the cells whose figures are struck through
}

// Table is columns and rows of words.
type Table struct {
	Columns []Column
	Entries []Entry
}
