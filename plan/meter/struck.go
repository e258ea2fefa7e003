package meter

import (
	"slices"
	"strings"

	"scrimshaw/plan"
)

// UncomputedMark stands before a figure in plain text that a key could change which nothing computes yet: text cannot be
// struck through.
const UncomputedMark = "✗ "

// Mark marks a figure, if it is one.
func Mark(figure string, is bool) string {
	if is && figure != "" {
		return UncomputedMark + figure
	}
	return figure
}

// AlteringLight are the keys that could change the light of one of some readings and that nothing computes yet.
func AlteringLight(readings ...*Reading) []plan.Uncomputed {
	var keys []plan.Uncomputed
	for _, r := range readings {
		for _, u := range r.Uncomputed {
			if u.AltersLight() {
				keys = append(keys, u)
			}
		}
	}
	return plan.Unique(keys)
}

// legend says below a table what the marked figures are without, a line a key, and of which readings where they
// are not all.
func (s *Set) legend(b *strings.Builder) {
	var keys []plan.Uncomputed
	of := map[string][]string{}
	for i := range s.Readings {
		for _, u := range s.Readings[i].Uncomputed {
			if of[u.Path] == nil {
				keys = append(keys, u)
			}
			of[u.Path] = append(of[u.Path], s.Readings[i].Name)
		}
	}
	for i := range s.Walks {
		for _, u := range s.Walks[i].Uncomputed() {
			if of[u.Path] == nil {
				keys = append(keys, u)
			}
			of[u.Path] = append(of[u.Path], "the walk of "+s.Walks[i].Person)
		}
	}
	slices.SortStableFunc(keys, func(a, c plan.Uncomputed) int { return a.Span.Start - c.Span.Start })
	for _, u := range keys {
		names := ""
		if len(of[u.Path]) < len(s.Readings)+len(s.Walks) {
			names = ": " + strings.Join(of[u.Path], ", ")
		}
		b.WriteString(UncomputedMark + "without " + u.Words + " (" + u.Waits + ", not computed yet)" + names + "\n")
	}
}
