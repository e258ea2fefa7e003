// Package list is what a crew loads and rigs by, as tables: the kit of a day, the lamps and the circuits of each set-up. It writes them as text, CSV
// and JSON.
package list

import (
	"math"
	"strconv"
	"strings"
	"unicode"
)

// Column is one column of a table. Key names it in JSON, and heads it in CSV.
type Column struct {
	Key, Head string
	Doc       string // what it holds, with its unit
	Number    bool   // whether it holds numbers
}

// Cell is what stands in a table: words, or in a column of numbers a number. The zero Cell says nothing: a number that is not known.
type Cell struct {
	Text   string
	Number *float64 // kg, m, A or what else Doc of its column says; nil: not known
}

// Table is columns and rows.
type Table struct {
	Name, Title string
	Columns     []Column
	Rows        [][]Cell
}

// Dash stands for a number that is not known.
const Dash = "–"

// words is a cell of text, in one line and without what no file can hold.
func words(s string) Cell {
	return Cell{Text: strings.TrimSpace(strings.Map(func(r rune) rune {
		switch {
		case r == '\n' || r == '\r' || r == '\t':
			return ' '
		case unicode.IsControl(r) || r == unicode.ReplacementChar || r == 0xfffe || r == 0xffff:
			return -1
		}
		return r
	}, s))}
}

// number is a cell of a number that is known, to a number of decimals.
func number(v float64, decimals int) Cell {
	power := math.Pow(10, float64(decimals))
	v = math.Round(v*power) / power
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return Cell{}
	}
	v += 0 // no minus before nothing
	return Cell{Number: &v}
}

// noLess is a number of which nothing is rounded away: what is rounded up again, to fewer decimals, comes out as the figure itself does.
func noLess(v float64, decimals int) Cell {
	const nothing = 1e-7 // what a sum is off by itself
	power := math.Pow(10, float64(decimals))
	return number(math.Ceil((v-nothing)*power)/power, decimals)
}

// noMore is a number to which nothing is added.
func noMore(v float64, decimals int) Cell {
	c := noLess(-v, decimals)
	if c.Number != nil {
		*c.Number = -*c.Number + 0
	}
	return c
}

// known is a number where a figure is known, which 0 says that it is not.
func known(v float64, decimals int) Cell {
	if v == 0 {
		return Cell{}
	}
	return number(v, decimals)
}

// whole is a number that may be missing.
func whole(v *float64) Cell {
	if v == nil {
		return Cell{}
	}
	return number(*v, 0)
}

// Said is a cell as it is written for a reader: a dash for a number that is not known.
func (t *Table) Said(row, column int) string {
	c := t.Rows[row][column]
	switch {
	case !t.Columns[column].Number:
		return c.Text
	case c.Number == nil:
		return Dash
	}
	return strconv.FormatFloat(*c.Number, 'f', -1, 64)
}

// At is the column of a key.
func (t *Table) At(key string) int {
	for i := range t.Columns {
		if t.Columns[i].Key == key {
			return i
		}
	}
	panic("no column " + key)
}
