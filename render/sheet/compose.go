package sheet

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"unicode"

	"scrimshaw/plan"
	"scrimshaw/plan/source"
	"scrimshaw/render/font"
	"scrimshaw/render/sheet/draw"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols/ink"
)

// Compose draws the sheets of the set-ups of a scene in order, numbered through: of each the plan with its collar, and
// as many pages of lists as the collar does not hold. There are no pages where an error was found. The same input gives
// the same ink.
func Compose(ins []Input, o Options) (ink.Document, []source.Diagnostic) {
	log := &faults{}
	if o.Font == nil {
		family, err := font.Default()
		if err != nil {
			log.add(source.Diagnostic{Severity: source.Error, Code: "no-font", Message: err.Error()})
			return ink.Document{}, log.all
		}
		o.Font = family
	}
	var sheets []*sheet
	for _, in := range ins {
		if s := newSheet(in, o, log).lay(); s != nil {
			sheets = append(sheets, s)
		}
	}
	if log.failed() || len(sheets) == 0 {
		return ink.Document{}, log.all
	}
	onOnePaper(sheets)
	pages := 0
	for _, s := range sheets {
		s.draw()
		pages += len(s.pages)
	}
	doc := ink.Document{Title: section.TitleOf(sheets[0].d.In.Setup), Language: "en-GB", Author: sheets[0].fields.By,
		Subject: "Lighting plan", Date: sheets[0].fields.Date}
	namePages(sheets)
	outlinePages(sheets)
	for i, s := range sheets {
		s.number(draw.Folio{Drawing: drawingOf(s.d.In.Setup, i+1), Sheet: len(doc.Pages) + 1, Sheets: pages})
		doc.Pages = append(doc.Pages, s.pages...)
	}
	warnMissingGlyphs(doc.Pages, o.Font, log)
	return doc, log.all
}

// drawingOf is the number of a set-up's drawing: its place in the file, so that it keeps it in a run of some;
// else its place in the run.
func drawingOf(s *plan.Setup, place int) int {
	if s.Scene == nil {
		return place
	}
	for i := range s.Scene.Setups {
		if s.Scene.Setups[i].Name == s.Name {
			return i + 1
		}
	}
	return place
}

// warnMissingGlyphs warns of the characters that the typeface has no glyphs for.
func warnMissingGlyphs(pages []ink.Page, f *font.Family, log *faults) {
	var lacks []rune
	for i := range pages {
		for j := range pages[i].Items {
			if t := pages[i].Items[j].Text; t != nil {
				lacks = append(lacks, f.Missing(t.S)...)
			}
		}
	}
	slices.Sort(lacks)
	if lacks = slices.Compact(lacks); len(lacks) > 0 {
		log.warn("missing-glyph", "use another typeface: --font FILE.ttf", "the typeface %s has no glyphs for %s", f.Name(), scriptsOf(lacks))
	}
}

// scriptsOf names the scripts of some characters, and of each a few.
func scriptsOf(all []rune) string {
	const shown = 6
	var names []string
	of := map[string][]rune{}
	for _, r := range all {
		name := scriptOf(r)
		if of[name] == nil {
			names = append(names, name)
		}
		of[name] = append(of[name], r)
	}
	var words []string
	for _, name := range names {
		some := of[name]
		more := ""
		if len(some) > shown {
			some, more = some[:shown], fmt.Sprintf(" and %d more", len(some)-shown)
		}
		words = append(words, fmt.Sprintf("%s (%s%s)", name, string(some), more))
	}
	return strings.Join(words, ", ")
}

// scriptOf is the script of a character by its name in Unicode; of one that many share, signs.
func scriptOf(r rune) string {
	for _, name := range slices.Sorted(maps.Keys(unicode.Scripts)) {
		if unicode.Is(unicode.Scripts[name], r) && name != "Common" && name != "Inherited" {
			return name
		}
	}
	return "signs"
}

// onOnePaper lays sheets for which no paper was asked on the largest that one of them needs, so
// that a run comes out of one tray.
func onOnePaper(sheets []*sheet) {
	largest := sheets[0].layout.Paper
	for _, s := range sheets[1:] {
		if s.layout.Paper.Width > largest.Width {
			largest = s.layout.Paper
		}
	}
	for _, s := range sheets {
		if s.wish.paper != nil || s.layout.Paper == largest || s.layout.Tiles.Parts() > 1 {
			continue
		}
		if l, ok := s.fitter.Best(largest); ok {
			s.layout = l
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
