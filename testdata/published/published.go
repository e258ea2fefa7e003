// Package published reads the values of standards, reports and handbooks that the tests of the
// project are held to. Each .txt file beside this one is one source:
//
//	source: CIE 15:2004, table T.3
//	status: secondary
//	white D65 | 0.31272 0.32903
//
// A line `source:` or `status:` holds for the rows below it. A row is a label, the figures that go in,
// a bar and the figures that come out. `#` starts a comment. A status is one of primary (read in the
// source's own text), secondary (read in a transcription), computed (from a formula, by other
// code than the project's), from memory, or common practice.
package published

import (
	"embed"
	"slices"
	"strconv"
	"strings"
	"testing"
)

//go:embed *.txt
var files embed.FS

// Row is one published statement.
type Row struct {
	Label          string
	In, Out        []float64
	Source, Status string
}

var statuses = map[string]bool{
	"primary": true, "secondary": true, "computed": true, "from memory": true, "common practice": true,
}

// Read gives the rows of a file, all of them or those with one of the labels, and fails the test
// where there are none.
func Read(t testing.TB, name string, labels ...string) []Row {
	t.Helper()
	text, err := files.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	var rows []Row
	var head Row
	for i, line := range strings.Split(string(text), "\n") {
		line, _, _ = strings.Cut(line, "#")
		line = strings.TrimSpace(line)
		switch key, value, _ := strings.Cut(line, ": "); {
		case line == "":
		case key == "source":
			head = Row{Source: value}
		case key == "status":
			head.Status = value
		default:
			row, ok := parse(line, head)
			if !ok {
				t.Fatalf("%s:%d: a row is `label in ... | out ...` below a source and a status: %s", name, i+1, line)
			}
			if len(labels) == 0 || slices.Contains(labels, row.Label) {
				rows = append(rows, row)
			}
		}
	}
	if len(rows) == 0 {
		t.Fatalf("%s has no rows %v", name, labels)
	}
	return rows
}

// parse reads one row under the source and status of head.
func parse(line string, head Row) (Row, bool) {
	left, right, ok := strings.Cut(line, "|")
	words := strings.Fields(left)
	n := 0
	for n < len(words) {
		if _, err := strconv.ParseFloat(words[n], 64); err == nil {
			break
		}
		n++
	}
	in, inOK := numbers(words[n:])
	out, outOK := numbers(strings.Fields(right))
	row := Row{strings.Join(words[:n], " "), in, out, head.Source, head.Status}
	return row, ok && inOK && outOK && len(out) > 0 && row.Source != "" && statuses[row.Status]
}

func numbers(words []string) ([]float64, bool) {
	var all []float64
	for _, w := range words {
		v, err := strconv.ParseFloat(w, 64)
		if err != nil {
			return nil, false
		}
		all = append(all, v)
	}
	return all, true
}
