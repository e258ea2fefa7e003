package sheet

import (
	"slices"

	"scrimshaw/plan"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/study"
	"scrimshaw/render/list"
	"scrimshaw/render/sheet/section"
)

// Since is what the sheets say that the crew already holds: the set-ups of another file, in its order.
type Since struct {
	Words string // which sheets those are: "A", "2031-05-14"

	setups   []*plan.Setup
	readings map[string][]meter.Reading
	looks    []section.Digest // of each set-up how its faces look, and nothing else
	lists    *list.Day
	single   bool // this run and that file have one set-up each, which are the same whatever they are called
}

// NewSince begins with no set-ups. single says that the run has one set-up, and the file of the sheet before one, too.
func NewSince(single bool) *Since {
	return &Since{readings: map[string][]meter.Reading{}, lists: list.New(), single: single}
}

// Add takes a set-up of the file of the sheet before. Its set is let go.
func (s *Since) Add(setup *plan.Setup) {
	s.lists.Add(setup)
	s.Words = WordsOf(setup)
	kept := *setup
	kept.Set.Prisms, kept.Set.Sheets = nil, nil
	s.setups = append(s.setups, &kept)
}

// AddLight takes what the sheet before reads in a set-up and, for a page that matches set-ups, how its faces look.
func (s *Since) AddLight(lit *study.Study, matches bool) {
	s.readings[lit.Setup.Name] = lit.Readings.Readings
	if matches {
		s.looks = append(s.looks, section.Digest{Name: lit.Setup.Name, Sequence: lit.Setup.Sequence, Looks: looksOf(lit)})
	}
}

// Named is the set-up of the sheet before for one of the run; nil where there is none.
func (s *Since) Named(name string) *plan.Setup {
	for _, was := range s.setups {
		if was.Name == name || s.single {
			return was
		}
	}
	return nil
}

// Differs says whether a set-up is not as on the sheet before.
func (s *Since) Differs(now *plan.Setup) bool {
	held := s.Of(now)
	return held.Setup == nil || len(held.Lines) > 0
}

// Of holds a set-up to the sheet before; nil where nobody asks.
func (s *Since) Of(now *plan.Setup) *section.Since {
	if s == nil {
		return nil
	}
	was := s.Named(now.Name)
	if was == nil {
		return section.SinceOf(s.Words, nil, now, nil)
	}
	return section.SinceOf(s.Words, was, now, s.readings[was.Name])
}

// Gone are the set-ups of the sheet before that the run has no more.
func (s *Since) Gone(names []string) (all []string) {
	for _, was := range s.setups {
		if !s.single && !slices.Contains(names, was.Name) {
			all = append(all, was.Name)
		}
	}
	return all
}
