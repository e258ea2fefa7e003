package sheet

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"unicode"

	"scrimshaw/render/font"
	"scrimshaw/symbols/ink"
)

// warnMissingGlyphs warns of the characters that the typeface has no glyphs for.
func warnMissingGlyphs(pages []ink.Page, f *font.Family, log *faults) {
	var lacks, unshaped []rune
	for i := range pages {
		items := pages[i].Unfolded().Items
		for j := range items {
			if t := items[j].Text; t != nil {
				lacks = append(lacks, f.Missing(t.S)...)
				unshaped = append(unshaped, ink.Unshaped(t.S)...)
			}
		}
	}
	if slices.Sort(unshaped); len(unshaped) > 0 {
		log.warn("unshaped", "write it in letters that stand side by side", "%q and its like are joined to their neighbours as a rule: they are lettered one by one", unshaped[0])
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
