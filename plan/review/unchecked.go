package review

import (
	"slices"
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/source"
)

// Unchecked returns what neither the figures nor the checks take into account, in sentences that every sheet
// carries: what is not said to be unchecked is taken for checked.
func Unchecked() []string {
	return []string{
		"What cloth, frames and nets do to light; and what mirrors and polished boards throw: every surface returns light as if it were matt.",
		"Frame: lights and stands in picture.",
		"Floor load, house wiring, circuits and rigging points.",
	}
}

// Uncounted says in a sentence what a scene gives and the figures leave out, "" where there is nothing. It is
// taken from what was told while the scene was read: of the scene itself and of the set-up.
func Uncounted(told []source.Diagnostic, s *plan.Setup) string {
	var parts []string
	for _, d := range told {
		if d.Code != source.CodeLater || d.Severity != source.Warning || d.Setup != "" && d.Setup != s.Name {
			continue
		}
		if part := partOf(d.Path, s); !slices.Contains(parts, part) {
			parts = append(parts, part)
		}
	}
	if len(parts) == 0 {
		return ""
	}
	return "Written, but not in the figures: " + strings.Join(parts, ", ")
}

// partOf words a path: "lights.k.scrims" is "scrims of 1 k".
func partOf(path string, s *plan.Setup) string {
	keys := strings.Split(path, ".")
	part := keys[len(keys)-1]
	if len(keys) > 2 {
		part += " of " + s.Numbered(keys[1])
	}
	return part
}
