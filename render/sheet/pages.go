package sheet

import "scrimshaw/symbols/ink"

// pageKind draws the pages of one kind of a set-up: none where it has nothing for them.
type pageKind func(s *sheet) []ink.Page

// pageKinds are the kinds of pages in their order on a sheet. Each stands in a file of its own and is told here.
func pageKinds() []pageKind {
	return []pageKind{(*sheet).planPages, (*sheet).listPages}
}

// draw draws the pages.
func (s *sheet) draw() {
	s.pages = nil
	for _, kind := range pageKinds() {
		s.pages = append(s.pages, kind(s)...)
	}
}

// newPage is a page with its paper and frame.
func (s *sheet) newPage(l *layout, what string) (*ink.Page, pad) {
	page := &ink.Page{Width: l.wide, Height: l.high, Title: joined(", ", titleOf(s.d.in.Setup), setupLine(s.d.in), what),
		Name: what}
	p := s.d.p.with(page)
	if p.look.Paper != (ink.Colour{R: 255, G: 255, B: 255}) {
		p.on(ink.Tint).rect(box(0, 0, l.wide, l.high), 0, p.look.Ink, &p.look.Paper)
	}
	return page, p
}
