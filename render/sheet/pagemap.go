package sheet

import (
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
	second := &sheet{request: s.request, fields: s.fields, log: s.log, texts: s.texts}
	second.d = s.d.Other(report)
	key := second.set(second.d.Block(second.d.LevelKey()))
	f := s.fitterOf(append(layout.Whole([]*layout.Block{key}), s.left...))
	paper := s.layout.Paper
	f.Asked, f.Way, f.Second = &paper, s.layout.Way(), false
	f.Scales = []float64{s.layout.Times}
	if s.layout.Tiles.Parts() > 1 {
		f.Scales = layout.Scales(s.d.In.Setup.Feet)
	}
	l, ok := f.Best(paper)
	if !ok {
		return nil
	}
	second.fitter, second.layout = f, l
	return second
}
