package sheet

import (
	"slices"

	"scrimshaw/plan"
	"scrimshaw/plan/source"
	"scrimshaw/render/font"
	"scrimshaw/render/sheet/draw"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/symbols/ink"
)

// Compose draws the sheets of the set-ups of a scene in order, numbered through: of each the plan with its collar, and
// as many pages of lists as the collar does not hold. There are no pages where an error was found. The same input gives
// the same ink. A Run does the same for set-ups that come one after the other.
func Compose(ins []Input, o Options) (ink.Document, []source.Diagnostic) {
	r := NewRun(o)
	for _, in := range ins {
		r.Add(in)
	}
	for i := range ins {
		if r.Misfit(i) {
			r.Redraw(i, ins[i])
		}
	}
	return r.Document()
}

// drawingOf is the number of a set-up's drawing: its place in the file, so that it keeps it in a run of some; 0 where
// it has none there.
func drawingOf(s *plan.Setup) int {
	if s.Scene == nil {
		return 0
	}
	for i := range s.Scene.Setups {
		if s.Scene.Setups[i].Name == s.Name {
			return i + 1
		}
	}
	return 0
}

// warnMissingGlyphs warns of the characters that the typeface has no glyphs for.
func warnMissingGlyphs(pages []ink.Page, f *font.Family, log *faults) {
	var lacks, unshaped []rune
	for i := range pages {
		for j := range pages[i].Items {
			if t := pages[i].Items[j].Text; t != nil {
				lacks = append(lacks, f.Missing(t.S)...)
				unshaped = append(unshaped, ink.Unshaped(t.S)...)
			}
		}
	}
	if slices.Sort(unshaped); len(unshaped) > 0 {
		log.warn("unshaped", "write it in letters that stand side by side", "%q and its like are joined to their neighbours as a rule: they are lettered one by one", unshaped[0])
	}
	slices.Sort(lacks)
	for _, r := range slices.Compact(lacks) {
		log.warn("missing-glyph", "use another typeface: --font FILE.ttf", "the typeface %s has no glyph for %q (%U)", f.Name(), r, r)
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
