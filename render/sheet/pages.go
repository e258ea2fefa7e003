package sheet

import (
	"fmt"
	"slices"

	"scrimshaw/render/sheet/draw"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/symbols/ink"
)

// pageKind draws the pages of one kind of a set-up: none where the set-up has nothing to fill them.
type pageKind func(s *sheet) []ink.Page

// pageKinds are the kinds of pages in their order on a sheet. Each stands in a file of its own and is listed here.
func pageKinds() []pageKind {
	return []pageKind{(*sheet).planPages, (*sheet).mapPages, (*sheet).listPages, (*sheet).teachPages}
}

// draw draws the pages.
func (s *sheet) draw() {
	s.pages, s.left = nil, slices.Concat(s.layout.Left, s.later)
	for _, kind := range pageKinds() {
		s.pages = append(s.pages, kind(s)...)
	}
}

// namePages gives every page of a run a name for its file, no two the same: the set-up's where there
// are several, and after a dot, which no name of a set-up has, what the page is if it is not the plan.
// Until then a page is called by what it is.
func namePages(sheets []*sheet) {
	for _, s := range sheets {
		setup := ""
		if len(sheets) > 1 {
			setup = s.name
		}
		times := map[string]int{}
		for i := range s.pages {
			p := &s.pages[i]
			what := p.Name
			if what == "" {
				p.Name = setup
				continue
			}
			if times[what]++; times[what] > 1 {
				what = fmt.Sprintf("%s-%d", what, times[what])
			}
			p.Name = setup + "." + what
		}
	}
}

// outlinePages puts the pages of a run of several set-ups under their set-ups in the outline. Those of one keep their
// titles there.
func outlinePages(sheets []*sheet) {
	for _, s := range sheets {
		if s.ofDay {
			s.outlineDay()
			continue
		}
		times := map[string]int{}
		for i := range s.pages {
			p := &s.pages[i]
			if len(sheets) == 1 || s.heading == "" {
				p.Outline = nil
				continue
			}
			own := p.Outline[0]
			if times[own]++; times[own] > 1 {
				own = fmt.Sprintf("%s, page %d", own, times[own])
			}
			p.Outline = []string{s.heading, own}
		}
	}
}

// outlineDay puts the pages of a list of a day that come behind its first under that, by their numbers.
func (s *sheet) outlineDay() {
	for i := 1; i < len(s.pages); i++ {
		if p := &s.pages[i]; slices.Equal(p.Outline, s.pages[0].Outline) {
			p.Outline = append(slices.Clip(p.Outline), fmt.Sprint("Page ", i+1))
		}
	}
}

// number draws the title block of every page; f is that of the first.
func (s *sheet) number(f draw.Folio) {
	for i := range s.pages {
		l := layout.Layout{Frame: layout.FrameOf(s.pages[i].Width, s.pages[i].Height)}
		draw.Collar{Drawing: s.d}.TitleBlock(s.d.Pad.With(&s.pages[i]), l.TitleBlock(), s.fields, f)
		f.Sheet++
	}
}
