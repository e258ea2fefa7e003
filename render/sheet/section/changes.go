package section

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/day/change"
	"scrimshaw/plan/term"
	"scrimshaw/render/sheet/layout"
)

// TickBox is what a crew ticks off.
const TickBox = "□"

// changes is what the crew does between the set-up before and this one, a box to tick for each line, in an order that can be worked.
func (c Report) changes() *Section {
	before, now := c.In.Setup.Before, c.In.Setup
	if before == nil {
		return &Section{}
	}
	list := change.Between(change.Of(before), change.Of(now))
	s := &Section{Title: "Changes since " + cmp.Or(before.Name, "the set-up before"), Rank: layout.Listed}
	s.Words = uncrossed(now)
	if len(list.Lines) == 0 {
		s.Words = append(s.Words, "Nothing: the set is as it was.")
		return s
	}
	sum := list.Sum()
	s.Words = append([]string{SumWords(&sum) + "."}, s.Words...)
	s.Tables = []Table{{Columns: []Column{{}, {Strong: true}, {Flexible: true}}}}
	for _, row := range ChangeRows(before, now, list, c.Units) {
		s.Tables[0].Entries = append(s.Tables[0].Entries, Entry{Cells: []string{TickBox, row.Tag, Joined("; ", row.Words, row.Time)}})
	}
	return s
}

// changesSince are the changes, a bar beside each that does not read as on the sheet before.
func (c Report) changesSince() *Section {
	now := c.changes()
	if from := c.In.Since; from != nil && from.Setup != nil {
		MarkNew(now, Report{In: &Input{Setup: from.Setup}, Units: c.Units}.changes())
	}
	return now
}

// uncrossed says of a reverse what it leaves where it stood, and why.
func uncrossed(now *plan.Setup) (words []string) {
	if now.Scene == nil {
		return nil
	}
	for _, u := range now.Scene.Uncrossed {
		words = append(words, "Not across: "+now.Numbered(u.Name)+" "+u.Why+".")
	}
	return words
}

// ChangeRow is a line of a list of changes in words. Line is what it says, or nil of one that says which lamps go off first.
type ChangeRow struct {
	Line       *change.Line
	Tag, Words string
	Time       string // by the rates of the scene; "" where these say nothing of it
	Where      string // two distances by tape, of a light or a piece of grip that comes or moves, which a sheet has in its lists
}

// ChangeRows are the lines of a list in words, and before them which lamps go off first, for they stay hot.
func ChangeRows(before, now *plan.Setup, list *change.List, u Units) (rows []ChangeRow) {
	c := told{Report{In: &Input{Setup: now}, Units: u}, before}
	rows = coolRows(list)
	for i := range list.Lines {
		l := &list.Lines[i]
		rows = append(rows, ChangeRow{Line: l, Tag: tagOf(l), Words: Joined("; ", c.lineWords(l), doneHow(now, l)), Time: minutesOf(l), Where: c.where(l)})
	}
	return rows
}

// where says by tape where a thing goes.
func (c told) where(l *change.Line) string {
	if l.Part(change.Comes) == nil && l.Part(change.Place) == nil || l.Part(change.Goes) != nil {
		return ""
	}
	switch l.Sort {
	case change.Light:
		return c.placing(c.In.Setup.LightNamed(l.Name).Placing, c.Length)
	case change.Grip:
		return c.placing(c.In.Setup.GripNamed(l.Name).Placing, c.Length)
	}
	return ""
}

// coolRows say which lamps go off first, those that stay hot as long together.
func coolRows(list *change.List) (rows []ChangeRow) {
	var longest []float64
	for i := range list.Lines {
		if hot := list.Lines[i].HotMinutes; hot > 0 && !slices.Contains(longest, hot) {
			longest = append(longest, hot)
		}
	}
	slices.SortFunc(longest, func(a, b float64) int { return cmp.Compare(b, a) })
	for _, hot := range longest {
		var tags []string
		for i := range list.Lines {
			if l := &list.Lines[i]; l.HotMinutes == hot && !slices.Contains(tags, l.Tag) {
				tags = append(tags, l.Tag)
			}
		}
		slices.Sort(tags)
		rows = append(rows, ChangeRow{Tag: strings.Join(tags, ", "), Words: fmt.Sprintf("off first: hot for about %.0f min", hot)})
	}
	return rows
}

// tagOf is what a line is about, as the plan has it.
func tagOf(l *change.Line) string { return cmp.Or(l.Tag, "cameras") }

// doneHow says whom a thing follows, what comes off it first, and why two people handle it.
func doneHow(s *plan.Setup, l *change.Line) string {
	var held, why []string
	for _, name := range l.Holds {
		held = append(held, s.Numbered(name))
	}
	for _, r := range l.Hands {
		why = append(why, string(r))
	}
	return Joined("; ", Prefixed("follows ", s.Numbered(l.Follows)), Prefixed("take off it first: ", strings.Join(held, ", ")), Prefixed("two people: ", strings.Join(why, ", ")))
}

func minutesOf(l *change.Line) string {
	if l.Rate == nil {
		return ""
	}
	return Minutes(*l.Rate)
}

// Minutes prints a time to a tenth of a minute.
func Minutes(m float64) string { return strings.TrimSuffix(fmt.Sprintf("%.1f", m), ".0") + " min" }

// SumWords says the work of a list: how many lines, of which kinds, and how long they take by the rates of the scene.
func SumWords(s *change.Sum) string {
	var kinds []string
	for i, n := range s.Kinds {
		if n > 0 {
			kinds = append(kinds, fmt.Sprintf("%d %s", n, term.Works[i]))
		}
	}
	words := Joined(": ", Count(s.Lines, "change"), strings.Join(kinds, ", "))
	if s.Unrated == s.Lines {
		return words
	}
	words += "; " + Minutes(s.Minutes) + " by the scene's own rates"
	if s.Unrated == 1 {
		return words + ", without the 1 that has none"
	}
	if s.Unrated > 0 {
		words += fmt.Sprintf(", without the %d that have none", s.Unrated)
	}
	return words
}

// lineWords says what is done to a thing.
func (c told) lineWords(l *change.Line) string {
	switch {
	case l.Part(change.Goes) != nil && l.Sort == change.Camera:
		return "goes out"
	case l.Part(change.Goes) != nil:
		return "struck"
	case l.Part(change.Comes) != nil:
		return c.comes(l)
	}
	var all []string
	for i := range l.Parts {
		all = append(all, c.partWords(l, l.Parts[i].Aspect))
	}
	return Joined("; ", all...)
}

// comes says of a thing that it is new, and what it is where the plan does not say so.
func (c told) comes(l *change.Line) string {
	s := c.In.Setup
	switch l.Sort {
	case change.Camera:
		return "comes in"
	case change.Light:
		return "new: " + c.UnitLabel(s.LightNamed(l.Name))
	case change.Grip:
		g := s.GripNamed(l.Name)
		return Joined(" ", "new:", string(g.Kind), c.GripSize(g, c.Length))
	case change.Furniture:
		return "new: " + string(s.PieceNamed(l.Name).Kind)
	}
	return "new"
}
