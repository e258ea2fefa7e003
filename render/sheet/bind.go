package sheet

import (
	"slices"

	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/layout"
)

// bind puts what comes before and behind the sheets of the set-ups of a day to them. largest is their paper, none where they have no pages.
func bind(day *packet, sheets []*sheet, largest layout.Paper, o Options) []*sheet {
	b := binderOf(day, sheets[0], largest)
	var behind []*sheet
	if o.Matches() {
		behind = append(behind, b.matchingSheet())
	}
	behind = slices.DeleteFunc(append(behind, b.listSheets()...), func(s *sheet) bool { return len(s.pages) == 0 })
	if !o.Packet {
		return slices.Concat(sheets, behind)
	}
	all := slices.Concat([]*sheet{nil}, sheets, behind)
	const most = 4 // times that the contents are numbered anew: what they take hangs on the width of a number
	for covers, try := 1, 0; try < most; try++ {
		all[0] = b.cover(all[1:], covers)
		if len(all[0].pages) == covers {
			break
		}
		covers = len(all[0].pages)
	}
	return all
}

// binderOf finds the paper of the pages of a day: that of the set-ups, or where they have none the one that the day asks for, or the smallest.
func binderOf(day *packet, first *sheet, largest layout.Paper) binder {
	first.d.Pad.Lists = 0
	b := binder{packet: day, first: first, paper: largest, reader: &first.request.reader}
	if largest == (layout.Paper{}) {
		b.paper = layout.PapersOf(day.feet)[0]
		if p := first.request.paper; p != nil {
			b.paper = *p
		}
	}
	l := layout.PageOf(b.paper, false)
	b.by = max(1, min(box.Width(l.Frame)/chartWide, box.Height(l.Frame)/chartHigh))
	b.wide = box.Width(l.Frame)/b.by - 2*layout.Pads
	return b
}
