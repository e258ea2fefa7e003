package sheet

import (
	"slices"

	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/draw"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols/ink"
)

// listPages are the pages of lists that the sheet of the plan has no room for.
func (s *sheet) listPages() []ink.Page {
	var pages []ink.Page
	l := s.listLayout()
	for left := s.layout.Left; len(left) > 0; {
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
func (s *sheet) listLayout() layout.Layout {
	own := s.layout
	if s.wish.paper != nil || len(own.Left) == 0 {
		return own
	}
	for _, p := range layout.PapersOf(s.d.In.Setup.Feet) {
		if p.Width >= own.Paper.Width {
			break
		}
		for _, upright := range [...]bool{own.High > own.Wide, own.High <= own.Wide} {
			l := layout.PageOf(p, upright)
			l.Block = l.TitleBlock()
			slots, _ := listSlots(&l)
			if _, more, _ := layout.PourBalanced(own.Left, slots); len(more) == 0 {
				return l
			}
		}
	}
	return own
}

// listPage is a page of what the sheet of the plan does not hold, and what it does not hold either.
func (s *sheet) listPage(l *layout.Layout, left []layout.Remainder) (ink.Page, []layout.Remainder) {
	page, p := s.newPage(l, "lists")
	page.Description = "Lists of the plan: what the sheet itself has no room for."
	p.Rect(l.Frame, draw.FrameLine, p.Look.Ink, nil)
	p.Rect(l.Block, draw.Medium, p.Look.Ink, nil)
	slots, top := listSlots(l)
	st := p.Name().Strong()
	p.Text(box.At(slots[0].X, top-st.Cap), st.Ellipsis(section.Joined(", ", section.TitleOf(s.d.In.Setup), section.SetupLine(s.d.In)), box.Width(l.Frame)-2*layout.Pads), st, ink.Left)
	pieces, more, slots := layout.PourBalanced(left, slots)
	draw.DrawPieces(p, s.texts, pieces, slots)
	return *page, more
}

// listSlots are the columns of a page of lists, the last one over the title block.
func listSlots(l *layout.Layout) ([]layout.Slot, float64) {
	top := l.Frame.Max.Y - layout.Pads
	var slots []layout.Slot
	for _, x := range layout.ColumnsIn(l.Frame.Min.X, l.Frame.Max.X) {
		s := layout.Slot{X: x, Top: top - 2*layout.Pads, Bottom: l.Frame.Min.Y + layout.Pads}
		if x+layout.Measure > l.Block.Min.X {
			s.Bottom = l.Block.Max.Y + layout.Pads
		}
		slots = append(slots, s)
	}
	return slots, top
}
