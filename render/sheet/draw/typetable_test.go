package draw

import (
	"math"
	"strings"
	"testing"

	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/internal/fixture"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols/ink"
)

// letteredBlock is the lettering of a section in a column of text, from left to right and from the top down to 0.
func letteredBlock(t *testing.T, s *section.Section) []*ink.Text {
	t.Helper()
	d, page, p := blank(t, 200, 200)
	b := d.Block(s)
	DrawRows(p, b.Rows, 0, b.drawHead(p, 0, 150, false))
	var all []*ink.Text
	for i := range page.Items {
		if it := &page.Items[i]; it.Text != nil && it.Text.S != "" {
			all = append(all, it.Text)
		}
	}
	return all
}

// afterCues is a table as that of the stops after cues: figures in two lines under heads that a scene names.
func afterCues(name string, heads ...string) section.Table {
	t := section.Table{Columns: []section.Column{{Flexible: true}}}
	e := section.Entry{Cells: []string{name}, Below: []string{""}}
	for _, head := range heads {
		t.Columns = append(t.Columns, section.Column{Head: head, Align: ink.Right})
		e.Cells, e.Below = append(e.Cells, "T2.8+⅔"), append(e.Below, "−1.1")
	}
	t.Entries = []section.Entry{e}
	return t
}

// A name that takes two lines keeps both where figures have a second line, too.
func TestLongNamesKeepAllTheirLines(t *testing.T) {
	var said []string
	for _, line := range letteredBlock(t, &section.Section{Title: "After", Tables: []section.Table{afterCues("the-longest-name-of-all, fill side", "before", "q1", "q2", "q3")}}) {
		said = append(said, line.S)
	}
	words := strings.Join(said, " ")
	for _, want := range []string{"the-longest-name-", "of-all, fill side", "−1.1"} {
		if !strings.Contains(words, want) {
			t.Errorf("%q is lost: %s", want, words)
		}
	}
}

// Heads that are far longer than their figures keep to the column of text, and leave the names whole words.
func TestLongHeadsKeepToTheirColumn(t *testing.T) {
	long := strings.Repeat("long-", 12)
	family := fixture.Family(t)
	for _, line := range letteredBlock(t, &section.Section{Title: "After", Tables: []section.Table{afterCues("ada, fill side", "before", long, long, long)}}) {
		it := ink.Item{Text: line}
		if b := it.Bounds(family).Box; b.Min.X < -0.1 || b.Max.X > layout.Measure+0.1 {
			t.Errorf("%q is lettered from %.1f to %.1f mm of a column of %.0f", line.S, b.Min.X, b.Max.X, layout.Measure)
		}
		if n := len(line.S); n < 3 {
			t.Errorf("a word is broken: %q", line.S)
		}
	}
}

// Words stand over the heads of a table, not on the rule below them.
func TestWordsStandOverHeads(t *testing.T) {
	at := map[string]float64{}
	for _, line := range letteredBlock(t, &section.Section{Title: "Lights that play", Words: []string{"1 lamp plays fire"}, Tables: []section.Table{afterCues("ada", "lowest", "highest")}}) {
		at[line.S] = line.At.Y
	}
	if !(at["1 lamp plays fire"] > at["lowest"] && at["lowest"] > at["ada"]) {
		t.Errorf("words, heads and cells stand at %v", at)
	}
}

// The name of a circuit that is as long as its row runs on in further lines, and leaves the figures beside it theirs.
func TestLongNamesOfCircuitsLeaveRoomForFigures(t *testing.T) {
	table := section.Table{Columns: []section.Column{{Strong: true, Breaks: true}, {Flexible: true}, {Head: "as set", Align: ink.Right}, {Head: "at full", Align: ink.Right}, {Head: "may carry", Align: ink.Right}},
		Entries: []section.Entry{{Cells: []string{"the-ring-of-the-house-under-the-stairs", "12", "7.8 A", "8.7 A", "16 A"}}, {Cells: []string{"cell", "2", "0.7 A", "1.7 A", "4.3 A"}}}}
	family, all := fixture.Family(t), letteredBlock(t, &section.Section{Title: "Circuits", Tables: []section.Table{table}})
	heads := 0
	for i, a := range all {
		if a.S == "as set" || a.S == "at full" || a.S == "may carry" {
			heads++
		}
		one := ink.Item{Text: a}
		for _, b := range all[i+1:] {
			other := ink.Item{Text: b}
			if shared, meet := box.Intersection(one.Bounds(family).Box, other.Bounds(family).Box); meet && box.Width(shared) > 0.1 {
				t.Errorf("%q lies over %q", a.S, b.S)
			}
		}
	}
	if heads != 3 {
		t.Errorf("%d of 3 heads are whole", heads)
	}
}

// TestLongParagraphsBeginAndEndWithTwoLines: a paragraph of many lines may be divided between columns, but not behind its first line or before its
// last, and no line of it is lost. "Some of what a picture could show: cloth" stood alone at the foot of a column.
func TestLongParagraphsBeginAndEndWithTwoLines(t *testing.T) {
	d, _, _ := blank(t, 200, 200)
	st := d.Pad.listed(d.Pad.Look.Quiet)
	for words := 1; words <= 80; words++ {
		text := strings.TrimSpace(strings.Repeat("somewhat ", words))
		rows := d.paragraph(text, st, nil)
		if len(rows) == 1 {
			continue
		}
		lines := 0
		for i, r := range rows {
			high := r.Height
			if i == len(rows)-1 {
				high -= RowAir
			}
			n := int(math.Round(high / st.Leading()))
			if lines += n; n < 2 && (i == 0 || i == len(rows)-1) {
				t.Errorf("%d words: row %d of %d has %d line", words, i, len(rows), n)
			}
		}
		if want := len(d.Set(text, st, d.measure(), 0)); lines != want {
			t.Errorf("%d words: %d lines in the rows, want %d", words, lines, want)
		}
	}
}
