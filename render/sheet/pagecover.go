package sheet

import (
	"cmp"
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/draw"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols/ink"
)

// coverPlans are the heights that the overview may have on the cover, mm, the largest first: the rest is of the contents and the notes.
var coverPlans = []float64{84, 76, 68, 60}

// cover is the first page of a day: the set in few strokes, what the packet holds, whom to reach, what is assumed and what was not checked. covers is how
// many pages that is taken to be, for the numbers of the others. The overview is as large as leaves room for the rest; where none of its heights
// does, it is the largest, and the rest goes to a page of its own.
func (b *binder) cover(others []*sheet, covers int) *sheet {
	var largest *sheet
	for _, high := range coverPlans {
		s := b.coverWith(high, others, covers)
		if len(s.pages) == 1 {
			return s
		}
		largest = cmp.Or(largest, s)
	}
	return largest
}

// coverWith is the cover with an overview of a height, mm.
func (b *binder) coverWith(high float64, others []*sheet, covers int) *sheet {
	s := b.sheetOf("Cover")
	d := b.newPage(s, "cover", "The cover of the packet: an overview of the set and the contents.", "Cover")
	t := &s.d.Typesetter
	column := d.frame.Max.X - layout.Measure - 2*layout.Pads
	floor := d.frame.Max.Y - high
	plan := box.Of(d.frame.Min.X, floor, column, d.frame.Max.Y)
	x := column + layout.Pads
	top := draw.DrawRows(d.p, b.title(t), x, d.frame.Max.Y-layout.Pads) // what is read first
	b.overview(d, plan)
	d.p.Line(draw.Medium, d.p.Look.Ink, box.At(d.frame.Min.X, floor), box.At(column, floor))
	d.p.Line(draw.Medium, d.p.Look.Ink, box.At(column, d.frame.Min.Y), box.At(column, d.frame.Max.Y))

	contents := t.Wide(section.Contents(b.contents(others, covers)), box.Width(plan)-2*layout.Pads)
	blocks := layout.Whole([]*layout.Block{s.set(contents)})
	low := layout.Slot{X: d.frame.Min.X + layout.Pads, Top: floor - layout.Pads, Bottom: d.frame.Min.Y + layout.Pads}
	poured, more := layout.Pour(blocks, []layout.Slot{low})
	draw.DrawPieces(d.p, s.texts, poured, []layout.Slot{low})

	side := layout.Slot{X: x, Top: top, Bottom: d.block.Max.Y + layout.Pads}
	slots := append([]layout.Slot{side}, below(poured, low, column)...)
	pieces, rest := layout.Pour(b.notes(s), slots)
	draw.DrawPieces(d.p, s.texts, pieces, slots)
	s.pages = append(s.pages, b.done(d))
	b.coverRest(s, more, rest)
	return s
}

// overview draws the set into a panel.
func (b *binder) overview(d *dayPage, panel r2.Box) {
	o := draw.OverviewOf(b.digests)
	extent := o.Extent()
	times := math.Max(box.Width(extent)*1000/(box.Width(panel)-2*layout.Pads), box.Height(extent)*1000/(box.Height(panel)-2*layout.Pads))
	o.Draw(d.p, layout.ViewOf(extent, panel, times))
}

// notes are the blocks beside and below the contents.
func (b *binder) notes(s *sheet) []layout.Remainder {
	t := &s.d.Typesetter
	blocks := []*layout.Block{s.set(t.Blanks("Contacts", section.ContactRoles()))}
	for _, q := range []*section.Section{b.revised(), section.Unchecked(b.unchecked), section.DayCautions(b.digests), section.CommonAssumed(b.digests)} {
		if block := t.Block(q, nil); len(block.Rows) > 0 {
			blocks = append(blocks, s.set(block))
		}
	}
	return layout.Whole(blocks)
}

// below are the columns below what was poured into a slot, up to a line on the right.
func below(pieces []layout.Piece, s layout.Slot, right float64) (slots []layout.Slot) {
	top := s.Top - layout.Pads
	for _, q := range pieces {
		top -= q.Height + q.Gap
	}
	for _, x := range layout.ColumnsIn(s.X-layout.Pads, right) {
		slots = append(slots, layout.Slot{X: x, Top: top, Bottom: s.Bottom})
	}
	return slots
}

// coverRest draws what the cover has no room for: more contents, and below them the notes in columns.
func (b *binder) coverRest(s *sheet, contents, notes []layout.Remainder) {
	for len(contents)+len(notes) > 0 {
		d := b.newPage(s, "cover", "What the cover has no room for.", "Cover", "More")
		top := d.heading("The day", s.title)
		whole := layout.Slot{X: d.frame.Min.X + layout.Pads, Top: top, Bottom: d.block.Max.Y + layout.Pads}
		was := len(contents) + len(notes)
		var pieces []layout.Piece
		if len(contents) > 0 {
			pieces, contents = layout.Pour(contents, []layout.Slot{whole})
			draw.DrawPieces(d.p, s.texts, pieces, []layout.Slot{whole})
			was = -1
		} else {
			slots, _ := listSlots(&layout.Layout{Frame: d.frame, Block: d.block})
			for i := range slots {
				slots[i].Top = top
			}
			pieces, notes, slots = layout.PourBalanced(notes, slots)
			draw.DrawPieces(d.p, s.texts, pieces, slots)
		}
		s.pages = append(s.pages, b.done(d))
		if was == len(contents)+len(notes) && len(pieces) == 0 {
			return
		}
	}
}

// title is what the day is called.
func (b *binder) title(t *draw.Typesetter) (rows []draw.Row) {
	title := b.first.d.Pad.Style(draw.CapTitle, b.first.d.Pad.Look.Ink).Strong()
	for _, l := range t.Set(b.first.title, title, layout.Measure, 3) {
		rows = append(rows, draw.Lettered(l, title, title.Cap*1.7))
	}
	f := b.first.fields
	quiet := b.first.d.Pad.Quiet()
	for _, words := range section.NonEmpty(section.Joined(", ", f.Production, f.Location), section.Joined(", ", section.Count(len(b.digests), "set-up"), f.Date, section.Prefixed("for ", b.reader.name))) {
		for _, l := range t.Set(words, quiet, layout.Measure, 2) {
			rows = append(rows, draw.Lettered(l, quiet, quiet.Leading()))
		}
	}
	return append(rows, draw.Space(layout.Pads))
}

// contents are what the packet holds, with the numbers of the sheets.
func (b *binder) contents(others []*sheet, covers int) (lines []section.Content) {
	number := covers + 1
	for i, s := range others {
		if len(s.pages) == 0 {
			continue
		}
		line := section.Content{What: s.heading, Sheet: number, To: s.name}
		if s.ofDay {
			line.To = "." + s.pages[0].Name
			line.Of = s.pages[0].Description
		} else if i < len(b.digests) {
			r := b.digests[i].Revised
			line.Of = section.Joined("; ", r.Words(), b.digests[i].Line())
			line.Revised = r.Differs()
			line.What = ink.Capital(s.heading)
		}
		lines = append(lines, line)
		number += len(s.pages)
	}
	return lines
}
