package section

import (
	"math"
	"slices"

	"scrimshaw/plan/match"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/unit"
	"scrimshaw/render/sheet/layout"
)

// fewRevised is up to how many rows the list of what was revised stands beside the plan at any rate: what the crew looks for first. A longer one gives way
// to the rest of the sheet, and goes on on the next page.
const fewRevised = 12

// revised is the section of what differs from the sheet that the crew holds.
func revised(in *Input, u Units) *Section {
	from := in.Since
	if from == nil {
		return &Section{}
	}
	s := &Section{Title: "Revised since " + from.Words}
	if from.Setup == nil {
		s.Words = []string{"All of it: this set-up is new."}
		return s
	}
	t := Table{Columns: []Column{{Strong: true}, {Flexible: true}}}
	for _, row := range from.Rows(in.Setup, u) {
		t.Entries = append(t.Entries, Entry{Cells: []string{row.Tag, row.Words}})
	}
	var figures []*meter.Reading
	shifted := shifted(in)
	for i := range shifted {
		q := &shifted[i]
		t.Entries = append(t.Entries, Entry{Cells: []string{"", q.words(u)}, Struck: When(q.Was.StopsStruck() || q.Is.StopsStruck(), 1)})
		figures = append(figures, q.Was, q.Is)
	}
	switch n := len(t.Entries); {
	case n == 0:
		s.Words = []string{"Nothing: the set-up is as it was."}
		return s
	case n > fewRevised:
		s.Rank = layout.Listed
	}
	s.Tables, s.Without = []Table{t}, NonEmpty(leftOut(figures...))
	return s
}

// shift is a reading that is not what the sheet before says.
type shift struct {
	Was, Is *meter.Reading
	Stops   float64 // from what it was; infinite where one of the two is dark
}

// shifted are the readings that lie further from those of the sheet before than two set-ups may that are cut together.
func shifted(in *Input) (all []shift) {
	if in.Since == nil {
		return nil
	}
	before := map[string]*meter.Reading{}
	for i := range in.Since.Readings {
		before[in.Since.Readings[i].Name] = &in.Since.Readings[i]
	}
	for _, is := range listedReadings(in) {
		was := before[is.Name]
		if was == nil || was.Kind != is.Kind || lightOf(is) == lightOf(was) {
			continue
		}
		if stops := math.Log2(lightOf(is) / lightOf(was)); math.Abs(stops) > match.PassStops {
			all = append(all, shift{was, is, stops})
		}
	}
	return all
}

// listedReadings are those that the lists of a sheet have: at the faces, and of the scene's own meters.
func listedReadings(in *Input) (all []*meter.Reading) {
	for _, r := range atFaces(in) {
		if r != nil {
			all = append(all, r)
		}
	}
	for i := range in.Readings {
		if r := &in.Readings[i]; r.Person == "" {
			all = append(all, r)
		}
	}
	return all
}

// words say a reading with what it was.
func (s *shift) words(u Units) string {
	words := set(readingName(s.Is), Joined(" ", u.Metered(s.Is), Stop(s.Is.Stop)), Joined(" ", u.Metered(s.Was), Stop(s.Was.Stop)))
	if math.IsInf(s.Stops, 0) {
		return words
	}
	return words + "; " + signed(unit.FormatStops(s.Stops)) + " stops"
}

// barred puts a bar beside the rows of sections whose thing or reading is not as on the sheet before. Of a set-up that is new all of it is, and no row has one.
func barred(in *Input, all ...*Section) []*Section {
	from := in.Since
	if from == nil || from.Setup == nil {
		return all
	}
	differs := map[string]bool{}
	for i := range from.Lines {
		differs[thingKey(from.Lines[i].Sort, from.Lines[i].Name)] = true
	}
	shifted := shifted(in)
	for i := range shifted {
		differs[shifted[i].Is.Name] = true
	}
	for _, s := range all {
		for i := range s.Tables {
			for k := range s.Tables[i].Entries {
				e := &s.Tables[i].Entries[k]
				e.Revised = e.Revised || slices.ContainsFunc(e.Of, func(of string) bool { return differs[of] })
			}
		}
	}
	return all
}
