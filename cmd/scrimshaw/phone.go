package main

import (
	"slices"
	"strings"

	"scrimshaw/render/page"
	"scrimshaw/render/sheet"
	"scrimshaw/render/sheet/section"
)

// phoneColumns is a set-up as a web page shows it on a narrow screen, its drawing folded; none where its sheet cannot be drawn.
func phoneColumns(in sheet.Input, o sheet.Options) (all []page.Column) {
	for _, c := range sheet.Columns([]sheet.Input{in}, o) {
		column := page.Column{Heading: c.Heading, Lines: c.Lines, Drawing: c.Drawing}
		column.Drawing.Fold()
		for _, s := range c.Sections {
			if card := cardOf(s); len(card.Rows)+len(card.Words)+len(card.Points) > 0 {
				column.Cards = append(column.Cards, card)
			}
		}
		all = append(all, column)
	}
	return all
}

// cardOf is a section as a card: the entries of its tables one below the other, each with its figures and what they are.
func cardOf(s *section.Section) page.Card {
	card := page.Card{Title: s.Title, Alarm: s.Alarm, Words: s.Words, Points: append(slices.Clone(s.Without), s.Points...)}
	for i := range s.Tables {
		t := &s.Tables[i]
		for j := range t.Entries {
			card.Rows = append(card.Rows, rowOf(t, &t.Entries[j]))
		}
	}
	return card
}

// rowOf is an entry: what stands up to its flexible column names it, what stands beyond that are its figures.
func rowOf(t *section.Table, e *section.Entry) page.Row {
	named := 1 + slices.IndexFunc(t.Columns, func(c section.Column) bool { return c.Flexible })
	row := page.Row{Name: strings.TrimSpace(strings.Join(e.Cells[:named], " ")), Notes: e.Notes, Revised: e.Revised, Struck: slices.ContainsFunc(e.Struck, func(i int) bool { return i < named })}
	if named > 0 && t.Columns[named-1].Head != "" && len(t.Columns) == named+2 {
		row.Name = t.Columns[named-1].Head + ": " + row.Name // whose figures they are
	}
	for i := named; i < len(e.Cells); i++ {
		if value := e.Cells[i]; value != "" {
			if e.Below != nil && e.Below[i] != "" {
				value += ", " + e.Below[i]
			}
			row.Figures = append(row.Figures, page.Figure{Of: t.Columns[i].Head, Value: value, Struck: slices.Contains(e.Struck, i)})
		}
	}
	return row
}
