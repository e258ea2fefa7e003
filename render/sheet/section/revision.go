package section

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/day/change"
	"scrimshaw/plan/match"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/unit"
	"scrimshaw/render/sheet/layout"
)

// Since is what the sheet that the crew already holds says of a set-up.
type Since struct {
	Words    string          // which sheet that is: "A", "2031-05-14", "the sheet before"
	Setup    *plan.Setup     // nil: that sheet has no such set-up
	Lines    []change.Line   // what differs from it
	Readings []meter.Reading // with all lights; none where nobody computed them
}

// RevisionRow is a line of a list of what was revised, in words.
type RevisionRow struct {
	Line       *change.Line
	Tag, Words string
}

// SinceOf holds a set-up to what a sheet has of it; was is nil where it has no such set-up.
func SinceOf(words string, was, now *plan.Setup, readings []meter.Reading) *Since {
	s := &Since{Words: words, Setup: was, Readings: readings}
	if was != nil {
		s.Lines = change.Revision(change.OnPaper(was), change.OnPaper(now))
	}
	return s
}

// Rows are the lines of what differs, in words.
func (s *Since) Rows(now *plan.Setup, u Units) (rows []RevisionRow) {
	c := told{Report{In: &Input{Setup: now}, Units: u}, s.Setup}
	lines := s.Lines
	for i := range lines {
		l := &lines[i]
		name := l.Name
		if name == l.Tag || l.Sort == change.Waiting {
			name = ""
		}
		rows = append(rows, RevisionRow{Line: l, Tag: tagOf(l), Words: Joined("; ", Joined(": ", name, c.revisedWords(l)), Prefixed("follows ", now.Numbered(l.Follows)))})
	}
	return rows
}

// revisedWords says how a thing is otherwise than on the sheet before.
func (c told) revisedWords(l *change.Line) string {
	left, came := l.Part(change.Goes) != nil, l.Part(change.Comes) != nil
	switch {
	case l.Sort == change.Waiting && came:
		return "asked for, and not computed"
	case l.Sort == change.Waiting:
		return "no longer asked for"
	case left && l.Sort == change.Light:
		return "struck: " + c.UnitLabel(c.before.LightNamed(l.Name))
	case left && l.Work == "" && !slices.Contains(struckSorts, l.Sort):
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

// struckSorts are the sorts of things that are struck from a set; all others are gone.
var struckSorts = []change.Sort{change.Grip, change.Furniture, change.Camera}

// revised is the section of what differs from the sheet that the crew holds.
func (c Report) revised() *Section {
	from := c.In.Since
	if from == nil {
		return &Section{}
	}
	s := &Section{Title: "Revised since " + from.Words, Rank: layout.Listed}
	if from.Setup == nil {
		s.Words = []string{"All of it: this set-up is new."}
		return s
	}
	t := Table{Columns: []Column{{Strong: true}, {Flexible: true}}}
	for _, row := range from.Rows(c.In.Setup, c.Units) {
		t.Entries = append(t.Entries, Entry{Cells: []string{row.Tag, row.Words}})
	}
	shifted := c.shifted()
	for i := range shifted {
		t.Entries = append(t.Entries, Entry{Cells: []string{"", c.shiftedWords(&shifted[i])}})
	}
	if len(t.Entries) == 0 {
		s.Words = []string{"Nothing: the set-up is as it was."}
		return s
	}
	s.Tables = []Table{t}
	if len(t.Entries) <= fewRevised {
		s.Rank = 0 // it stands beside the plan
	}
	return s
}

// fewRevised is up to how many rows the list of what was revised stands beside the plan at any rate: what the crew looks for first. A longer one gives way
// to the rest of the sheet, and goes on on the next page.
const fewRevised = 12

// shift is a reading that is not what the sheet before says.
type shift struct {
	Was, Is *meter.Reading
	Stops   float64 // from what it was; infinite where one of the two is dark
}

// shifted are the readings that lie further from those of the sheet before than two set-ups may that are cut together.
func (c Report) shifted() (all []shift) {
	if c.In.Since == nil {
		return nil
	}
	before := map[string]*meter.Reading{}
	for i := range c.In.Since.Readings {
		before[c.In.Since.Readings[i].Name] = &c.In.Since.Readings[i]
	}
	for _, is := range c.listed() {
		was := before[is.Name]
		if was == nil || was.Kind != is.Kind {
			continue
		}
		stops := math.Log2(lightOf(is) / lightOf(was))
		if lightOf(is) == lightOf(was) || math.Abs(stops) <= match.PassStops {
			continue
		}
		all = append(all, shift{was, is, stops})
	}
	return all
}

// listed are the readings that the lists of a sheet have: at the faces, and of the scene's own meters.
func (c Report) listed() (all []*meter.Reading) {
	for _, r := range atFaces(c.In) {
		if r != nil {
			all = append(all, r)
		}
	}
	for i := range c.In.Readings {
		if r := &c.In.Readings[i]; r.Person == "" {
			all = append(all, r)
		}
	}
	return all
}

// lightOf is what a reading is a measure of, lx or cd/m²; 0 of what is dark.
func lightOf(r *meter.Reading) float64 {
	for _, v := range []*float64{r.Lux, r.Luminance} {
		if v != nil {
			return math.Max(*v, 0)
		}
	}
	return 0
}

// shiftedWords say a reading with what it was.
func (c Report) shiftedWords(s *shift) string {
	words := set(readingName(s.Is), Joined(" ", c.Metered(s.Is), Stop(s.Is.Stop)), Joined(" ", c.Metered(s.Was), Stop(s.Was.Stop)))
	if math.IsInf(s.Stops, 0) {
		return words
	}
	return words + "; " + signed(unit.FormatStops(s.Stops)) + " stops"
}

// revisedThings are the things of a set-up whose rows of lists have a bar beside them, by sort and name; none where the set-up is new, for then
// all of it is.
func (c Report) revisedThings() map[string]bool {
	from := c.In.Since
	if from == nil || from.Setup == nil {
		return nil
	}
	all := map[string]bool{}
	for i := range from.Lines {
		all[thingKey(from.Lines[i].Sort, from.Lines[i].Name)] = true
	}
	shifted := c.shifted()
	for i := range shifted {
		all[shifted[i].Is.Name] = true
	}
	return all
}

func thingKey(sort change.Sort, name string) string { return string(sort) + ":" + name }

// barred puts a bar beside the rows of tables whose thing differs from the sheet before.
func (c Report) barred(all ...*Section) []*Section {
	if c.In.Since == nil {
		return all
	}
	things := c.revisedThings()
	for _, s := range all {
		for i := range s.Tables {
			for k := range s.Tables[i].Entries {
				e := &s.Tables[i].Entries[k]
				e.Revised = e.Revised || slices.ContainsFunc(e.Of, func(of string) bool { return things[of] })
			}
		}
	}
	return all
}

// MarkNew puts a bar beside the rows of a section that another has not, and returns those that only the other has; was may be nil.
func MarkNew(now, was *Section) (gone []Entry) {
	reads := func(e *Entry) string { return strings.Join(e.Cells, "\t") + "\n" + strings.Join(e.Notes, "\n") }
	entries := func(s *Section) (all []*Entry) {
		for i := range s.Tables {
			for k := range s.Tables[i].Entries {
				all = append(all, &s.Tables[i].Entries[k])
			}
		}
		return all
	}
	before, after := map[string]bool{}, map[string]bool{}
	if was == nil {
		was = &Section{}
	}
	for _, e := range entries(was) {
		before[reads(e)] = true
	}
	for _, e := range entries(now) {
		e.Revised = !before[reads(e)]
		after[reads(e)] = true
	}
	for _, e := range entries(was) {
		if !after[reads(e)] {
			gone = append(gone, *e)
		}
	}
	return gone
}

// Revised is how much of a set-up is not as on the sheet before.
type Revised struct {
	New  bool // that sheet has no such set-up
	Rows int  // of its list of what was revised
}

// revisedOf counts what was revised of a set-up; nil where nobody asks.
func revisedOf(in *Input) *Revised {
	if in.Since == nil {
		return nil
	}
	return &Revised{New: in.Since.Setup == nil, Rows: len(in.Since.Lines) + len(Report{In: in}.shifted())}
}

// Words say it for a list of contents; "" where nobody asks.
func (r *Revised) Words() string {
	switch {
	case r == nil:
		return ""
	case r.New:
		return "new"
	case r.Rows == 0:
		return "as it was"
	}
	return Count(r.Rows, "revision")
}

// DayRevised says of a day what is not as on the sheets before: which set-ups are new, gone, revised and as they were.
func DayRevised(since string, all []Digest, gone []string) *Section {
	var added, changed, same []string
	for i := range all {
		switch r := all[i].Revised; {
		case r == nil:
			return &Section{}
		case r.New:
			added = append(added, all[i].Name)
		case r.Rows > 0:
			changed = append(changed, fmt.Sprintf("%s (%d)", all[i].Name, r.Rows))
		default:
			same = append(same, all[i].Name)
		}
	}
	list := func(head string, names []string) string { return Prefixed(head+": ", strings.Join(names, ", ")) }
	return &Section{Title: "Revised since " + since, Points: sentences(NonEmpty(list("new", added), list("gone", gone), list("revised", changed), list("as they were", same)))}
}

// PrintDayRevised is the same as plain text.
func PrintDayRevised(s *Section) string {
	w := &printer{}
	if s.speaks() {
		w.section(s)
	}
	return strings.TrimLeft(w.String(), "\n")
}
