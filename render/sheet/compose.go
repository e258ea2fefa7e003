package sheet

import (
	"slices"

	"scrimshaw/render/font"
	"scrimshaw/render/sheet/draw"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/symbols/ink"
)

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
