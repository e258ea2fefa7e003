package sheet

import (
	"slices"

	"scrimshaw/render/sheet/layout"
)

// listCaps are the heights that lists are lettered at where their sheet has the room, mm, the largest first. All of them
// have it at the least height, which the paper and the scale are chosen by.
var listCaps = []float64{2.5, 2.2, 2.0}

// copiedCaps are those in the look for a copier: two copies keep what is lettered at the first. Nothing is promised of the
// second, which is read on the page.
var copiedCaps = []float64{2.5, 2.0}

// listHeights are the heights to try.
func (s *sheet) listHeights() []float64 {
	if s.request.theme.Plain {
		return copiedCaps
	}
	return listCaps
}

// enlargeLists letters the lists as large as the sheet holds them on as many pages, at the same scale, with as much on
// the first page of what the plan is hard to use without, and with as much said on the plan.
func (s *sheet) enlargeLists() {
	if s.layout.Tiles.Parts() > 1 {
		return
	}
	least, pages := s.layout, s.pagesOf(s.layout)
	fitter, later := s.fitter, s.later
	for _, cap := range s.listHeights() {
		if s.holdsLists(cap, &least, pages) {
			return
		}
	}
	s.d.Pad.Lists = 0
	s.fitter, s.later, s.layout = fitter, later, least
}

// holdsLists tries the lists at a height, and takes it where the sheet has as much on its first page of what is needed there as with the least height, and no
// more pages: what is only wanted beside the plan is read in larger lettering on the next.
func (s *sheet) holdsLists(cap float64, least *layout.Layout, pages int) bool {
	s.trying, s.cut, s.d.Narrow, s.d.Pad.Lists = true, false, false, cap
	defer func() { s.trying = false }()
	f := *s.fitter
	f.Blocks = s.firstBlocks()
	f.KeepRoom(least)
	f.Scales, f.Way, f.Least = []float64{least.Times}, least.Way(), least
	l, ok := f.Best(least.Paper)
	if !ok || s.cut || s.d.Narrow || !l.HoldsAsMuch(least, layout.Needed) {
		return false
	}
	s.fitter = &f
	if s.pagesOf(l) > pages || s.saysLess(&l, least) {
		return false
	}
	s.layout = l
	return true
}

// saysLess says whether more labels of a plan say less than they could in a layout than in another, or no more than a number.
func (s *sheet) saysLess(l, than *layout.Layout) bool {
	shortened, reduced := s.countShortened(l), s.d.Reduced
	return shortened > s.countShortened(than) || reduced > s.d.Reduced
}

// pagesOf is how many pages a layout of the plan makes, with its second map and its lists.
func (s *sheet) pagesOf(l layout.Layout) int {
	s.layout, s.left = l, slices.Concat(l.Left, s.later)
	pages, left := 1, s.left
	if second := s.secondMap(); second != nil {
		pages, left = 2, second.layout.Left
	}
	slots, _ := listSlots(&l)
	for len(left) > 0 {
		_, more, _ := layout.PourBalanced(left, slots)
		pages++
		if slices.Equal(left, more) {
			break // a row taller than a page
		}
		left = more
	}
	return pages
}
