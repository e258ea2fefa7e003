package study

import (
	"slices"

	"scrimshaw/plan"
	"scrimshaw/plan/cue"
)

// After is the study as it is after a cue: readings of the levels and colours that its lights have then, without fields, which stay those of
// the set-up. It is nil where there is no cue of that name. The basis is that of the study.
func (s *Study) After(name string) *Study {
	i := slices.IndexFunc(s.Setup.Cues, func(q plan.Cue) bool { return q.Name == name })
	if i < 0 {
		return nil
	}
	settings := cue.After(s.Setup, i+1)
	after := *s
	after.Setup, after.Fields = settings.Setup(s.Setup), nil
	after.Relevel(settings.Levels(s.Setup, s.Levels))
	return &after
}
