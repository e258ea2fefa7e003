package sheet

import (
	"slices"

	"scrimshaw/plan/match"
	"scrimshaw/plan/study"
	"scrimshaw/render/sheet/draw"
	"scrimshaw/render/sheet/section"
)

// matchingSheet is every face in all set-ups of a sequence side by side; without pages where no face is in two of them, and no sequence is written.
func (b *binder) matchingSheet() *sheet {
	s := b.sheetOf("Matching")
	all := b.matching()
	if all.None() {
		return s
	}
	t := &s.d.Typesetter
	describe := "Every face side by side in the set-ups that have it, and what brings them together."
	if all.Sequenced {
		describe = "Every face side by side in the set-ups of a sequence, and what brings them together."
	}
	begin := func() (*dayPage, float64) {
		d := b.newPage(s, "matching", describe, "Matching")
		return d, d.heading("Matching", s.title)
	}
	for _, picture := range [...]float64{1, 0.6, 0} { // the pictures give way before another page, and to nothing else
		larger := s.pages
		s.pages = nil
		words := all.Notes()
		if picture > 0 && slices.ContainsFunc(all.Faces, section.Matched.Pictured) {
			words = append(words, "The empty frames are for a still of each set-up.")
		}
		b.pour(s, b.matchingBlocks(t, all, picture), t.Wide(&section.Section{Words: words}, b.footWide()), begin)
		if larger != nil && len(larger) <= len(s.pages) {
			s.pages = larger
		}
		if len(s.pages) == 1 {
			break
		}
	}
	return s
}

// matchingBlocks are the faces, with pictures of a size, and what is held to nothing where there are none.
func (b *binder) matchingBlocks(t *draw.Typesetter, all *section.Matches, picture float64) (blocks []*draw.Block) {
	for i := range all.Faces {
		blocks = append(blocks, t.Matching(&all.Faces[i], b.wide, picture))
	}
	if nothing := all.Nothing(); nothing != nil {
		blocks = append(blocks, t.Wide(nothing, b.wide))
	}
	return blocks
}

// looksOf is how the faces of a set-up look.
func looksOf(s *study.Study) []match.Look {
	faces := match.Lit{Setup: s.Setup, Basis: s.Basis, Levels: s.Levels, Readings: &s.Readings}
	faces.AroundBasis, faces.Around = s.Around()
	return faces.Looks()
}
