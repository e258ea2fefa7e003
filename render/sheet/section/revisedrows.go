package section

import (
	"cmp"
	"slices"
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/day/change"
)

// RevisionRow is a line of a list of what was revised, in words.
type RevisionRow struct {
	Line       *change.Line
	Tag, Words string
}

// Rows are the lines of what differs, in words.
func (s *Since) Rows(now *plan.Setup, u Units) (rows []RevisionRow) {
	c := told{Report{In: &Input{Setup: now}, Units: u}, s.Setup}
	for i := range s.Lines {
		l := &s.Lines[i]
		name := l.Name
		if name == l.Tag || l.Sort == change.Waiting {
			name = ""
		}
		rows = append(rows, RevisionRow{Line: l, Tag: tagOf(l), Words: Joined("; ", Joined(": ", name, c.revisedWords(l)), Prefixed("follows ", now.Numbered(l.Follows)))})
	}
	return rows
}

// struckSorts are the sorts of things that are struck from a set; all others are gone.
var struckSorts = []change.Sort{change.Grip, change.Furniture, change.Camera}

// revisedWords says how a thing is otherwise than on the sheet before.
func (c told) revisedWords(l *change.Line) string {
	if l.Sort == change.Numbers {
		return numbersWords(&l.Parts[0])
	}
	left, came := l.Part(change.Goes) != nil, l.Part(change.Comes) != nil
	switch {
	case l.Sort == change.Waiting && came:
		return "asked for, and not computed"
	case l.Sort == change.Waiting:
		return "no longer asked for"
	case left && l.Sort == change.Light:
		return "struck: " + c.UnitLabel(c.before.LightNamed(l.Name))
	case left && !slices.Contains(struckSorts, l.Sort):
		return "gone"
	case left || came:
		return c.lineWords(l)
	}
	var all []string
	for i := range l.Parts {
		p := &l.Parts[i]
		all = append(all, cmp.Or(c.revisedPart(l, p), string(p.Aspect)+" by less than is printed"))
	}
	return Joined("; ", all...)
}

// numbersWords say which numbers on the plan were others: "4 to 7 were 3 to 6, G2 was G1".
func numbersWords(p *change.Part) string {
	is, was := p.Is.Words, p.Was.Words
	var all []string
	for from := 0; from < len(is); {
		to := from
		for to+1 < len(is) && follows(is[to], is[to+1]) && follows(was[to], was[to+1]) {
			to++
		}
		if to < from+run-1 {
			to = from
			all = append(all, is[from]+" was "+was[from])
		} else {
			all = append(all, is[from]+" to "+is[to]+" were "+was[from]+" to "+was[to])
		}
		from = to + 1
	}
	return strings.Join(all, ", ")
}
