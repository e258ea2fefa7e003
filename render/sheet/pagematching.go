package sheet

import (
	"slices"

	"scrimshaw/plan/match"
	"scrimshaw/plan/study"
	"scrimshaw/render/sheet/draw"
	"scrimshaw/render/sheet/section"
)

// matchingSheet is every face in all set-ups side by side; without pages where no face is in two of them.
func (b *binder) matchingSheet() *sheet {
	s := b.sheetOf("Matching")
	matched, alone := b.matching()
	if len(matched) == 0 {
		return s
	}
	t := &s.d.Typesetter
	begin := func() (*dayPage, float64) {
		d := b.newPage(s, "matching", "Every face side by side in the set-ups that have it, and what brings them together.", "Matching")
		return d, d.heading("Matching", s.title)
	}
	for _, picture := range [...]float64{1, 0.6, 0} { // the pictures give way before another page, and to nothing else
		larger := s.pages
		s.pages = nil
		words := section.MatchNotes(matched, alone)
		if picture > 0 && slices.ContainsFunc(matched, section.Matched.Pictured) {
			words = append(words, "The empty frames are for a still of each set-up.")
		}
		b.pour(s, b.matchingBlocks(t, matched, picture), t.Wide(&section.Section{Words: words}, b.footWide()), begin)
		if larger != nil && len(larger) <= len(s.pages) {
			s.pages = larger
		}
		if len(s.pages) == 1 {
			break
		}
	}
	return s
}

// matchingBlocks are the faces, with pictures of a size.
func (b *binder) matchingBlocks(t *draw.Typesetter, matched []section.Matched, picture float64) (blocks []*draw.Block) {
	for i := range matched {
		blocks = append(blocks, t.Matching(&matched[i], b.wide, picture))
	}
	return blocks
}

// looksOf is how the faces of a set-up look.
func looksOf(s *study.Study) []match.Look {
	faces := match.Lit{Setup: s.Setup, Basis: s.Basis, Levels: s.Levels, Readings: &s.Readings}
	faces.AroundBasis, faces.Around = s.Around()
	return faces.Looks()
}
