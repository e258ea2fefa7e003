package sheet

import (
	"slices"

	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/draw"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols/ink"
)

// listPages are the pages of lists that the sheets of maps have no room for.
func (s *sheet) listPages() []ink.Page {
	var pages []ink.Page
	for len(s.left) > 0 {
		page, more := s.listPage(s.left)
		pages = append(pages, page)
		if slices.Equal(s.left, more) {
			break // a row taller than a page; none is made
		}
		s.left = more
	}
	return pages
}

// enlarged are the sizes that lists come in, the largest first: those which leave their page half empty are read from
// further away.
var enlarged = [...]float64{3.25, 3, 2.75, 2.5, 2.25, 2, 1.75, 1.5, 1.25, 1}

// listPage is a page of what the sheets of maps do not hold, as large as one page holds it, and what it does not hold
// either.
func (s *sheet) listPage(left []layout.Remainder) (ink.Page, []layout.Remainder) {
	by, l := 1.0, s.layout
	for _, by = range enlarged {
		l = listLayout(&s.layout, by)
		if by > 1 && box.Width(l.Frame) < layout.Measure+2*layout.Pads {
			continue // not one column is as narrow
		}
		slots, _ := listSlots(&l)
		if _, more, _ := layout.PourBalanced(left, slots); len(more) == 0 {
			break
		}
	}
	slots, top := listSlots(&l)
	page, p := s.newPage(&s.layout, "lists")
	page.Description = "Lists of the plan: what the sheet itself has no room for."
	first := len(page.Items)
	st := p.Name().Strong()
	p.Text(box.At(slots[0].X, top-st.Cap), st.Ellipsis(section.Joined(", ", section.TitleOf(s.d.In.Setup), section.SetupLine(s.d.In)), box.Width(l.Frame)-2*layout.Pads), st, ink.Left)
	pieces, more, cut := layout.PourBalanced(left, slots)
	draw.DrawPieces(p, s.texts, pieces, cut)
	page.Magnify(first, by)
	p.Rect(s.layout.Frame, draw.FrameLine, p.Look.Ink, nil)
	p.Rect(s.layout.TitleBlock(), draw.Medium, p.Look.Ink, nil)
	return *page, more
}

// listLayout is the frame of a page and its title block, before all is made larger.
func listLayout(page *layout.Layout, by float64) layout.Layout {
	return layout.Layout{Frame: beforeEnlarging(page.Frame, by), Block: beforeEnlarging(page.TitleBlock(), by)}
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
