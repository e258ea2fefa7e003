package sheet

import (
	"scrimshaw/plan/colour"
	"scrimshaw/symbols/ink"
)

// column is one column of a table. A flexible one takes the width that the others leave, and
// wraps; the others are as wide as what stands in them.
type column struct {
	head     string
	flexible bool
	align    ink.Align // left or right
	strong   bool
}

// entry is one row of a table: a cell a column, and notes below it that run from the flexible
// column to the right edge.
type entry struct {
	cells []string
	notes []string
	chip  *colour.RGB // a strip of the colour of a light after the first cell
	alarm bool

	struck []int // the cells whose figures are struck through
}

// table is columns and rows of words.
type table struct {
	columns []column
	entries []entry
}
