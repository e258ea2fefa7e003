package list

import (
	"encoding/csv"
	"io"
	"strings"
)

// WriteCSV writes one table as RFC 4180 has it: a line of keys, then one a row. Words that a spreadsheet would take for a formula have an
// apostrophe before them, and so has what begins with one.
func WriteCSV(w io.Writer, t *Table) error {
	out := csv.NewWriter(w)
	out.UseCRLF = true
	record := make([]string, len(t.Columns))
	for i := range t.Columns {
		record[i] = t.Columns[i].Key
	}
	if err := out.Write(record); err != nil {
		return err
	}
	for r := range t.Rows {
		for i := range t.Columns {
			record[i] = t.Said(r, i)
			if !t.Columns[i].Number {
				record[i] = Harmless(record[i])
			}
		}
		if err := out.Write(record); err != nil {
			return err
		}
	}
	out.Flush()
	return out.Error()
}

// formulaSigns begin what a spreadsheet computes, in their wide forms too.
const formulaSigns = "=+-@＝＋－＠"

// Harmless is a text that no spreadsheet computes.
func Harmless(text string) string {
	if text != "" && strings.ContainsAny(text[:len(firstRune(text))], formulaSigns+"'") {
		return "'" + text
	}
	return text
}

func firstRune(text string) string {
	for _, r := range text {
		return string(r)
	}
	return ""
}
