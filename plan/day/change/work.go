package change

import (
	"slices"

	"scrimshaw/plan/term"
)

// Sum is the work of some lines.
type Sum struct {
	Lines   int
	Kinds   []int   // lines by kind of work, in the order of term.Works
	Minutes float64 // by the rates of the scene, as if one line were done after the other
	Unrated int     // lines of kinds of which the rates say nothing
}

// Add adds another sum.
func (s *Sum) Add(other Sum) {
	s.Lines, s.Minutes, s.Unrated = s.Lines+other.Lines, s.Minutes+other.Minutes, s.Unrated+other.Unrated
	if s.Kinds == nil {
		s.Kinds = make([]int, len(term.Works))
	}
	for i, n := range other.Kinds {
		s.Kinds[i] += n
	}
}

// Sum is the work of a list.
func (l *List) Sum() Sum { return sumOf(l.Lines) }

func sumOf(lines []Line) (s Sum) {
	s.Kinds = make([]int, len(term.Works))
	for i := range lines {
		l := &lines[i]
		s.Lines++
		s.Kinds[slices.Index(term.Works, l.Work)]++
		if l.Rate == nil {
			s.Unrated++
			continue
		}
		s.Minutes += *l.Rate
	}
	return s
}

// Work is the sum of what is done between two states, without the order of its lines.
func Work(before, now *State) Sum { return sumOf(now.rated(difference(before, now))) }

// less says whether a sum is less work than another: by minutes where rates say them, else by lines.
func (s *Sum) less(o *Sum) bool {
	if d := o.Minutes - s.Minutes; d > exactly || d < -exactly {
		return d > 0
	}
	return s.Lines < o.Lines
}
