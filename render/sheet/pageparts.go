package sheet

import (
	"fmt"
	"slices"

	"scrimshaw/render/sheet/draw"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols/ink"
)

// drawParts draws the pages of a plan in parts, each with what its collar holds of the lists.
func (s *sheet) drawParts() []ink.Page {
	var pages []ink.Page
	for i := range s.layout.Tiles.Parts() {
		l := s.layout
		if i > 0 {
			l.Pieces, s.left = layout.Pour(slices.Concat(s.fitter.Keys, s.left), l.Slots)
		}
		pages = append(pages, s.planPart(&l, i))
	}
	return pages
}

// planPart draws one part of a plan.
func (s *sheet) planPart(l *layout.Layout, i int) ink.Page {
	v := layout.ViewOf(l.Tiles.Part(i), l.Plan, l.Times)
	v.Panel = l.Tiles.Within(l.Plan, v, i)
	s.d.Part = i
	page := s.planPage(l, v)
	word := fmt.Sprintf("part %d of %d", i+1, l.Tiles.Parts())
	page.Title = section.Joined(", ", page.Title, word)
	page.Outline[0] += ", " + word
	if i > 0 {
		page.Name = fmt.Sprintf("part-%d", i+1)
	}
	page.Description += " This is " + word + "."
	draw.Match{Drawing: s.d}.Lines(s.d.Pad.With(&page).On(ink.Notes), v)
	return page
}
