package sheet

import (
	"slices"

	"scrimshaw/render/sheet/layout"
)

// listCaps are the heights that lists are lettered at where their sheet has the room, mm, the largest first. All of them
// have it at the least height, which the paper and the scale are chosen by.
var listCaps = []float64{2.5, 2.2, 2.0}

// copiedCaps are those in the look for a copier, in which lists are bold: two copies keep what has them as well as the page does. Where a sheet holds
// neither, its lists are as small as the least and are read on the page: lettering between would promise copies that fail.
var copiedCaps = []float64{3.0, 2.8}

// trial is a way to letter lists: in capitals of a height, mm, on so many pages more than with the least lettering.
type trial struct {
	cap  float64
	more int
}

// trials are the ways to try, the best first. What is to be copied is worth a page more.
func (s *sheet) trials() (all []trial) {
	if s.request.theme.Plain {
		for _, cap := range copiedCaps {
			all = append(all, trial{cap, 0}, trial{cap, 1})
		}
		return all
	}
	for _, cap := range listCaps {
		all = append(all, trial{cap, 0})
	}
	return all
}

// enlargeLists letters the lists as large as the sheet holds them on as many pages, at the same scale, with as much on
// the first page of what the plan is hard to use without, and with as much said on the plan.
func (s *sheet) enlargeLists() {
	if s.layout.Tiles.Parts() > 1 {
		return
	}
	least, pages := s.layout, s.pagesOf(s.layout)
	fitter, later := s.fitter, s.later
	for _, t := range s.trials() {
		if s.holdsLists(t, &least, pages) {
			return
		}
	}
	s.d.Pad.Lists = 0
	s.fitter, s.later, s.layout = fitter, later, least
}

// holdsLists tries the lists in a way, and takes it where the sheet has as much on its first page of what is needed there as with the least height, and no
// more pages than that may be: what is only wanted beside the plan is read in larger lettering on the next.
func (s *sheet) holdsLists(t trial, least *layout.Layout, pages int) bool {
	s.trying, s.cut, s.d.Narrow, s.d.Pad.Lists = true, false, false, t.cap
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
	if s.pagesOf(l) > pages+t.more || s.saysLess(&l, least) {
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
