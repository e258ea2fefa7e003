package section_test

import (
	"slices"
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
		matched := section.Matching(days)
		last := matched.Faces[0].Columns[1].Cells[match.Rows]
		if last.Struck != lacks || last.Off == lacks {
			t.Errorf("with figures struck %v, the side is %+v", lacks, last)
		}
		if said := strings.Contains(strings.Join(matched.Notes(), " "), "Struck figures are without"); said != lacks {
			t.Errorf("with figures struck %v, the page says so: %v", lacks, said)
		}
	}
}

// Of a set-up with cues the light before them is matched, and the page says so.
func TestMatchingIsBeforeCues(t *testing.T) {
	for _, cued := range []bool{false, true} {
		look := func(name string) []match.Look { return []match.Look{{Person: "ada", Setup: name, Camera: "A"}} }
		m := section.Matching([]section.Digest{{Name: "wide", Looks: look("wide")}, {Name: "close", Looks: look("close"), Cued: cued}})
		if said := strings.Contains(strings.Join(m.Notes(), " "), "before the first of them"); said != cued {
			t.Errorf("with cues %v, the page says so: %v", cued, said)
		}
	}
}

// Where no lamp does what is asked, the page says what is left, and what that hangs on.
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
	matched := section.Matching(days)
	want := "side: none found, for it hangs on many lights; steady: none found, for it hangs on many lights; behind left +0.8: none found, for it hangs on many lights"
	if got := strings.Join(matched.Faces[0].Columns[1].Fix, "; "); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
	if got := matched.Faces[0].Columns[2].Fix; len(got) != 0 {
		t.Errorf("what matches has %q", got)
	}
}

// Where one camera sees a face from behind, all say the person's own side of the key, the figures behind it are not framed, and the page says why.
func TestASideSeenFromBehind(t *testing.T) {
	figure := func(v float64) *float64 { return &v }
	days := []section.Digest{
		{Name: "wide", Looks: []match.Look{{Person: "ada", Setup: "wide", Camera: "A", Side: meter.PictureLeft, Own: "right"}}},
		{Name: "over", Looks: []match.Look{{Person: "ada", Setup: "over", Camera: "A", Side: meter.PictureRight, Own: "right", Back: true}}},
	}
	for i, over := range []float64{0, 2} {
		days[i].Looks[0].Figures[match.BehindLeft] = figure(over)
	}
	matched := section.Matching(days)
	first, over := &matched.Faces[0].Columns[0], &matched.Faces[0].Columns[1]
	if got := first.Cells[match.Rows].Text + "; " + over.Cells[match.Rows].Text; got != "left, own right; own right, from behind" {
		t.Errorf("got %q", got)
	}
	if over.Cells[match.Rows].Off || over.Cells[match.BehindLeft].Off || len(over.Fix) > 0 {
		t.Errorf("it is framed: %+v", over)
	}
	if !strings.Contains(strings.Join(matched.Notes(), " "), "From behind a head") {
		t.Error("the page does not say that left and right are the other way round")
	}
}

// A bar stands beside each figure that reads otherwise on the sheets before, beside all of a camera that they have not, and beside none of a set-up that
// is new.
func TestBarsOfMatching(t *testing.T) {
	figure := func(v float64) *float64 { return &v }
	day := func(closeKey float64, more bool) []section.Digest {
		wide := match.Look{Person: "ada", Setup: "wide", Camera: "A", Side: meter.PictureLeft}
		near := match.Look{Person: "ada", Setup: "close", Camera: "A", Side: meter.PictureLeft}
		wide.Figures[match.Key], near.Figures[match.Key] = figure(0.02), figure(closeKey)
		all := []section.Digest{{Name: "wide", Looks: []match.Look{wide}}, {Name: "close", Looks: []match.Look{near}}}
		if more {
			other := near
			other.Camera = "B"
			all[1].Looks = append(all[1].Looks, other)
			near.Setup = "late"
			all = append(all, section.Digest{Name: "late", Looks: []match.Look{near}})
		}
		return all
	}
	bars := func(before, now []section.Digest) (n []int, fixes int) {
		matched := section.Matching(now)
		matched.Mark(section.Matching(before), func(setup string) bool { return setup == "late" })
		for _, c := range matched.Faces[0].Columns {
			marked := 0
			for _, q := range c.Cells {
				if q.Revised {
					marked++
				}
			}
			if n = append(n, marked); c.Refixed {
				fixes++
			}
		}
		some := slices.Max(n) > 0
		if said := strings.Contains(strings.Join(matched.Notes(), " "), "A bar stands"); said != some {
			t.Errorf("with bars %v the page says what they are: %v", n, said)
		}
		if text := matched.Text(); strings.Contains(text, "\n| ") != some {
			t.Errorf("with bars %v the text is\n%s", n, text)
		}
		return n, fixes
	}
	all := int(match.Rows) + 1
	for _, c := range []struct {
		before, now []section.Digest
		want        []int
		fixes       int
	}{
		{day(0.1, false), day(0.1, false), []int{0, 0}, 0},
		{day(0.1, true), day(0.1, true), []int{0, 0, 0, 0}, 0},
		{day(0.1, false), day(0.3, false), []int{0, 1}, 0},
		{day(0.1, false), day(0.5, false), []int{0, 1}, 1}, // now it is off, and there is something to be said of it
		{day(0.1, false), day(0.1, true), []int{0, 0, all, 0}, 0},
	} {
		if got, fixes := bars(c.before, c.now); !slices.Equal(got, c.want) || fixes != c.fixes {
			t.Errorf("bars %v, want %v; %d fixes, want %d", got, c.want, fixes, c.fixes)
		}
	}
}

// cut are set-ups of one face each, "setup/sequence/person", which look one stop brighter one after the other.
func cut(setups ...string) (days []section.Digest) {
	for i, s := range setups {
		of := strings.Split(s, "/")
		key := float64(i)
		l := match.Look{Person: of[2], Setup: of[0], Camera: "A", Side: meter.PictureLeft}
		l.Figures[match.Key] = &key
		days = append(days, section.Digest{Name: of[0], Sequence: of[1], Looks: []match.Look{l}})
	}
	return days
}

// A face is held to the first set-up of its sequence, one that comes back goes on where it was, none is held across, and the page says what is held to nothing.
func TestSequencesAreHeldApart(t *testing.T) {
	for _, c := range []struct {
		name   string
		setups []section.Digest
		want   string // each face with its figures
		alone  string
	}{
		{"none", cut("a//ada", "b//ada", "c//noor"), "ada, held to a: 0.0, +1.0 (+1.0)", "In one set-up alone: noor (c)."},
		{"one for all", cut("a/day/ada", "b/day/ada"), "Sequence day: ada, held to a: 0.0, +1.0 (+1.0)", ""},
		{"two", cut("a/day/ada", "b/day/ada", "c/night/ada", "d/night/ada"),
			"Sequence day: ada, held to a: 0.0, +1.0 (+1.0); Sequence night: ada, held to c: +2.0, +3.0 (+1.0)", ""},
		{"the first without a name", cut("a//ada", "b//ada", "c/night/ada", "d/night/ada"),
			"Sequence of a: ada, held to a: 0.0, +1.0 (+1.0); Sequence night: ada, held to c: +2.0, +3.0 (+1.0)", ""},
		{"of one set-up", cut("a/day/ada", "b/day/ada", "c/night/ada"), "Sequence day: ada, held to a: 0.0, +1.0 (+1.0)",
			"Sequence night is one set-up alone, c, which is held to nothing."},
		{"that comes back", cut("a/day/ada", "b/night/ada", "c/day/ada", "d/night/ada"),
			"Sequence day: ada, held to a: 0.0, +2.0 (+2.0); Sequence night: ada, held to b: +1.0, +3.0 (+2.0)", ""},
		{"others in each", cut("a/day/ada", "b/day/noor", "c/night/noor", "d/night/noor"), "Sequence night: noor, held to c: +2.0, +3.0 (+1.0)",
			"In one set-up of a sequence alone: ada (a), noor (b)."},
		{"each of one", cut("a/day/ada", "b/night/ada"), "",
			"Sequence day is one set-up alone, a, which is held to nothing. Sequence night is one set-up alone, b, which is held to nothing."},
	} {
		m := section.Matching(c.setups)
		var got []string
		for i := range m.Faces {
			var figures []string
			for _, col := range m.Faces[i].Columns {
				figures = append(figures, section.Joined(" ", col.Cells[match.Key].Text, col.Cells[match.Key].Apart))
			}
			got = append(got, m.Faces[i].Title()+": "+strings.Join(figures, ", "))
		}
		if is := strings.Join(got, "; "); is != c.want || strings.Join(m.Alone, " ") != c.alone {
			t.Errorf("%s: got\n%s\n%s\nwant\n%s\n%s", c.name, is, m.Alone, c.want, c.alone)
		}
		if notes := strings.Join(m.Notes(), " "); len(m.Faces) > 0 && !strings.HasSuffix(notes, c.alone) || strings.Contains(notes, "of its sequence") != (m.Sequenced && len(m.Faces) > 0) {
			t.Errorf("%s: the page says %s", c.name, notes)
		}
		if m.None() || !strings.Contains(strings.Join(strings.Fields(m.Text()), " "), c.alone) {
			t.Errorf("%s: the text is %s", c.name, m.Text())
		}
	}
	if m := section.Matching(cut("a//ada", "b//noor")); !m.None() || m.Text() != "" {
		t.Errorf("with no face in two set-ups, and no sequence: %s", m.Text())
	}
}

// A set-up that goes over to another sequence has bars beside the figures that are held to another set-up now.
func TestBarsOfASequence(t *testing.T) {
	now := section.Matching(cut("a/day/ada", "b/day/ada", "c/night/ada", "d/night/ada"))
	now.Mark(section.Matching(cut("a/day/ada", "b/day/ada", "c/day/ada", "d/day/ada")), func(string) bool { return false })
	for i := range 2 {
		if c := now.Faces[1].Columns[i]; !c.Cells[match.Key].Revised {
			t.Errorf("%s: %+v", c.Setup, c.Cells[match.Key])
		}
	}
	if now.Faces[0].Columns[1].Cells[match.Key].Revised {
		t.Error("what is held to what it was has a bar")
	}
}
