package review

import (
	"fmt"
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/source"
)

// Assumed returns the defaults that decided numbers, as notes.
func Assumed(s *plan.Setup) []source.Diagnostic {
	var notes []source.Diagnostic
	for _, a := range s.Assumed {
		notes = append(notes, source.Diagnostic{Severity: source.Info, Code: CodeAssumed, Path: a.Thing,
			Setup: s.Name, Message: assumption(s, a)})
	}
	return notes
}

// assumption words a default: "assumed for 1 day: level 100 %".
func assumption(s *plan.Setup, a plan.Assumption) string {
	_, name, dotted := strings.Cut(a.Thing, ".")
	if !dotted {
		return fmt.Sprintf("assumed %s: %s", a.What, a.Value)
	}
	return fmt.Sprintf("assumed for %s: %s %s", s.Numbered(name), a.What, a.Value)
}

// maxNamed is how many keys a finding names that its figure leaves out; more are counted.
const maxNamed = 3

// withoutPrefix begins a finding whose figure leaves out what is not computed yet: "without scrims of 1 k, ".
func withoutPrefix(keys []plan.Uncomputed) string {
	switch n := len(keys); {
	case n == 0:
		return ""
	case n <= maxNamed:
		return "without " + plan.ListUncomputed(keys) + ", "
	default:
		return fmt.Sprintf("without %s and %d more, ", plan.ListUncomputed(keys[:maxNamed]), n-maxNamed)
	}
}
