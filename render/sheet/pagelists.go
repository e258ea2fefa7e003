package sheet

import (
	"slices"

	"scrimshaw/symbols/ink"
)

// listPages are the pages of lists that the sheet of the plan has no room for.
func (s *sheet) listPages() []ink.Page {
	var pages []ink.Page
	l := s.listLayout()
	for left := s.layout.left; len(left) > 0; {
		page, more := s.listPage(&l, left)
		pages = append(pages, page)
		if slices.Equal(left, more) {
			break // a row taller than a page; none is made
		}
		left = more
	}
	return pages
}

// listLayout is the paper that lists come on which the sheet of the plan does not hold: a smaller one
// of its series where one sheet of it holds them all, unless a paper was asked for.
func (s *sheet) listLayout() layout {
	own := s.layout
	if s.wish.paper != nil || len(own.left) == 0 {
		return own
	}
	for _, p := range papersOf(s.d.in.Setup.Feet) {
		if p.Width >= own.paper.Width {
			break
		}
		for _, upright := range [...]bool{own.high > own.wide, own.high <= own.wide} {
			l := sheetOf(p, upright)
			l.block = l.titleBlock()
			slots, _ := listSlots(&l)
			if _, more, _ := evenly(own.left, slots); len(more) == 0 {
				return l
			}
		}
	}
	return own
}

// listPage is a page of what the sheet of the plan does not hold, and what it does not hold either.
func (s *sheet) listPage(l *layout, left []rest) (ink.Page, []rest) {
	page, p := s.newPage(l, "lists")
	page.Description = "Lists of the plan: what the sheet itself has no room for."
	p.rect(l.frame, frame, p.look.Ink, nil)
	p.rect(l.block, medium, p.look.Ink, nil)
	slots, top := listSlots(l)
	st := p.name().strong()
	p.text(at(slots[0].x, top-st.cap), st.ellipsis(joined(", ", titleOf(s.d.in.Setup), setupLine(s.d.in)), width(l.frame)-2*pads), st, ink.Left)
	pieces, more, slots := evenly(left, slots)
	drawPieces(p, s.texts, pieces, slots)
	return *page, more
}

// listSlots are the columns of a page of lists, the last one over the title block.
func listSlots(l *layout) ([]slot, float64) {
	top := l.frame.Max.Y - pads
	var slots []slot
	for _, x := range columnsIn(l.frame.Min.X, l.frame.Max.X) {
		s := slot{x: x, top: top - 2*pads, bottom: l.frame.Min.Y + pads}
		if x+measure > l.block.Min.X {
			s.bottom = l.block.Max.Y + pads
		}
		slots = append(slots, s)
	}
	return slots, top
}
