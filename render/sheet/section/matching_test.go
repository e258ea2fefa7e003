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

// What no lamp of the face decides has no fix, and the page says what it hangs on, with by how much.
func TestNoFixSaysWhy(t *testing.T) {
	figure := func(v float64) *float64 { return &v }
	look := func(setup string, side meter.Side, behind, steady float64) match.Look {
		l := match.Look{Person: "ada", Setup: setup, Camera: "A", Side: side}
		l.Figures[match.BehindLeft], l.Figures[match.Steadiness] = figure(behind), figure(steady)
		return l
	}
	days := []section.Digest{
		{Name: "wide", Looks: []match.Look{look("wide", meter.PictureLeft, 0, 0.2)}},
		{Name: "close", Looks: []match.Look{look("close", meter.PictureRight, 0.8, 0.9)}},
		{Name: "tight", Looks: []match.Look{look("tight", meter.PictureLeft, 0.1, 0.2)}},
	}
	matched, _ := section.Matching(days)
	want := "no fix at the face for what is behind: light what stands there by left −0.8, or frame something else; " +
		"no fix by levels for how steady: the light is nearer or harder there: take it farther off; " +
		"no fix by levels for the side: cross the key to the other cheek as the camera sees it, or the camera over the line"
	if got := strings.Join(matched[0].Columns[1].Fix, "; "); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
	if got := matched[0].Columns[2].Fix; len(got) != 0 {
		t.Errorf("what matches has %q", got)
	}
}
