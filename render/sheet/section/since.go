package section

import (
	"scrimshaw/plan"
	"scrimshaw/plan/day/change"
	"scrimshaw/plan/meter"
)

// Since is what the sheet that the crew already holds says of a set-up.
type Since struct {
	Words    string          // which sheet that is: "A", "2031-05-14", "the sheet before"
	Setup    *plan.Setup     // nil: that sheet has no such set-up
	Lines    []change.Line   // what differs from it
	Readings []meter.Reading // with all lights; none where nobody computed them
}

// SinceOf holds a set-up to what a sheet has of it; was is nil where it has no such set-up.
func SinceOf(words string, was, now *plan.Setup, readings []meter.Reading) *Since {
	s := &Since{Words: words, Setup: was, Readings: readings}
	if was != nil {
		s.Lines = change.Revision(change.OnPaper(was), change.OnPaper(now))
	}
	return s
}
