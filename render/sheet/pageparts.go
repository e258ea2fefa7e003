package sheet

import (
	"fmt"

	"scrimshaw/symbols/ink"
)

// drawParts draws the pages of a plan in parts, the first with what the collar holds.
func (s *sheet) drawParts() []ink.Page {
	var pages []ink.Page
	for i := range s.layout.tiles.parts() {
		l := s.layout
		if i > 0 {
			l.pieces, _ = pour(whole(s.fitter.keys), l.slots)
		}
		pages = append(pages, s.planPart(&l, i))
	}
	return pages
}

// planPart draws one part of a plan.
func (s *sheet) planPart(l *layout, i int) ink.Page {
	v := viewOf(l.tiles.part(i), l.plan, l.times)
	s.d.part = i
	page := s.planPage(l, v)
	word := fmt.Sprintf("part %d of %d", i+1, l.tiles.parts())
	page.Title = joined(", ", page.Title, word)
	if i > 0 {
		page.Name = fmt.Sprintf("part-%d", i+1)
	}
	page.Description += " This is " + word + "."
	match{s.d}.matchLines(s.d.p.with(&page).on(ink.Notes), l, v, i)
	return page
}
