package section_test

import (
	"strings"
	"testing"

	"scrimshaw/plan/match"
	"scrimshaw/plan/meter"
	"scrimshaw/render/sheet/section"
)

// The side of the key is struck where the light of the face is, nothing is made of it then, and the page says what struck figures are; one that is
// not struck is framed where it has turned.
func TestAStruckSideIsNotTurned(t *testing.T) {
	for _, lacks := range []bool{false, true} {
		var days []section.Digest
		for name, side := range map[string]meter.Side{"close": meter.PictureRight, "wide": meter.PictureLeft} {
			l := match.Look{Person: "ada", Setup: name, Camera: "A", Side: side}
			l.Struck[match.Contrast] = lacks
			days = append(days, section.Digest{Name: name, Looks: []match.Look{l}})
		}
		matched, alone := section.Matching(days)
		last := matched[0].Columns[1].Cells[match.Rows]
		if last.Struck != lacks || last.Off == lacks {
			t.Errorf("with figures struck %v, the side is %+v", lacks, last)
		}
		if said := strings.Contains(strings.Join(section.MatchNotes(matched, alone), " "), "Struck figures are without"); said != lacks {
			t.Errorf("with figures struck %v, the page says so: %v", lacks, said)
		}
	}
}
