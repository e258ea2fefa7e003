package scene

import (
	"cmp"

	"scrimshaw/plan/source"
)

// sequenceWord reads what a sequence is called: a name as that of a set-up, and so perhaps a number.
var sequenceWord = scalar("the name of a sequence", "night", map[string]any{"type": []any{"string", "number"}},
	func(text string, _ *source.Node, _ *source.Context) (string, error) { return text, checkName(text) })

// sequences says by set-up which sequence it is in: the one that it writes, else that of the set-up it starts from, else that of the first of the file.
// None is in one where no set-up writes any.
func sequences(setups []Setup) map[string]string {
	named := map[string]*Setup{}
	for i := range setups {
		named[setups[i].Name] = &setups[i]
	}
	written := func(s *Setup) string {
		for range setups { // set-ups may wait for each other, which mergeSetup reports
			if s == nil || s.Sequence.Set {
				break
			}
			s = named[s.From().Name]
		}
		if s == nil {
			return ""
		}
		return s.Sequence.Value
	}
	of := map[string]string{}
	for i := range setups {
		of[setups[i].Name] = cmp.Or(written(&setups[i]), written(&setups[0]))
	}
	return of
}
