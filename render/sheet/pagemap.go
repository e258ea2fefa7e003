package sheet

import (
	"slices"

	"scrimshaw/render/sheet/draw"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols/ink"
)

// mapPages are the sheet of the second map: as large as the first, with what stands and its numbers, and beside it the
// lists that the first has no room for.
func (s *sheet) mapPages() []ink.Page {
	second := s.secondMap()
	if second == nil {
		return nil
	}
	page := second.drawPlan()
	page.Outline = []string{ink.Capital(page.Name) + " map"}
	s.left = second.layout.Left
	if s.d.Explain(second.d) && s.layout.Tiles.Parts() == 1 {
		s.pages[0] = s.planPage(&s.layout, s.fitter.View(&s.layout)) // its legend stands for both pages
	}
	return []ink.Page{page}
}

// hasSecond says whether the set-up has a second map.
func (s *sheet) hasSecond() bool {
	return s.d.In.Inset != nil && s.d.In.Elevation == nil && len(section.LevelsOf(s.d.In)) > 0
}

// secondMap is the sheet of the second map, laid out on the paper of the first; nil where there is none.
func (s *sheet) secondMap() *sheet {
	if !s.hasSecond() {
		return nil
	}
	in := *s.d.In
	in.Field, in.Floors, in.Inset, in.Insets = in.Inset, in.Insets, in.Field, in.Floors
	in.Beams, in.Views = nil, nil
	report := s.d.Report
	report.In = &in
	second := &sheet{request: s.request, fields: s.fields, log: s.log, texts: s.texts, says: s.says}
	second.d = s.d.Other(report)
	if !second.layMap(s, s.left) {
		return nil
	}
	if !second.layout.All() && s.d.Pad.Lists > 0 && !slices.ContainsFunc(s.left, layout.Remainder.IsBegun) {
		second.letterSmaller(s)
	}
	return second
}

// layMap lays the sheet of the second map out, on the paper and at the scale of the first, with what is left of that; false where it has no room.
func (second *sheet) layMap(s *sheet, left []layout.Remainder) bool {
	key := second.set(second.d.Block(second.d.LevelKey()))
	f := s.fitterOf(append(layout.Whole([]*layout.Block{key}), left...))
	paper := s.layout.Paper
	f.Asked, f.Way, f.Second = &paper, s.layout.Way(), false
	f.Scales = []float64{s.layout.Times}
	if s.layout.Tiles.Parts() > 1 {
		f.Scales = layout.Scales(s.d.In.Setup.Feet)
	}
	l, ok := f.Best(paper)
	if ok {
		second.fitter, second.layout = f, l
	}
	return ok
}

// letterSmaller letters the lists beside the second map in the largest lettering that leaves none of them to another page: the first is what hangs on
// the wall, and keeps its own. Where none does, they stay as they are.
func (second *sheet) letterSmaller(s *sheet) {
	fitter, l, cap := second.fitter, second.layout, second.d.Pad.Lists
	for _, lower := range append(slices.Clone(listCaps), draw.CapSmall) {
		if lower >= cap {
			continue
		}
		second.d.Pad.Lists = lower
		var again []*layout.Block
		for _, r := range s.left {
			q := s.says[r.Of()]
			b := second.d.Block(q)
			again = append(again, second.set(b))
			second.says[&b.Sizes] = q
		}
		if second.layMap(s, layout.Whole(again)) && second.layout.All() {
			return
		}
	}
	second.fitter, second.layout, second.d.Pad.Lists = fitter, l, cap
}
