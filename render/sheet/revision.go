package sheet

import (
	"fmt"
	"strconv"
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
)

// NextRevision is the revision after one that ends in a letter or a figure: B after A, AA after Z, 10 after 9. The first is A. After what ends in neither
// there is none: "".
func NextRevision(is string) string {
	if is == "" {
		return "A"
	}
	digits := len(is) - len(strings.TrimRight(is, "0123456789"))
	if n, err := strconv.ParseUint(is[len(is)-digits:], 10, 32); digits > 0 && err == nil {
		return is[:len(is)-digits] + fmt.Sprintf("%0*d", digits, n+1)
	}
	letters := []byte(is)
	for i := len(letters) - 1; i >= 0; i-- {
		switch l := letters[i]; {
		case l == 'z' || l == 'Z':
			letters[i] = l - 25
			if i == 0 {
				return string(letters[:1]) + string(letters)
			}
		case l >= 'a' && l < 'z' || l >= 'A' && l < 'Z':
			letters[i]++
			return string(letters)
		case i == len(letters)-1:
			return ""
		default: // Z after what is no letter
			return is[:i+1] + string(letters[i+1]) + string(letters[i+1:])
		}
	}
	return ""
}

// WordsOf name the sheet of a set-up: by its revision, else by its date.
func WordsOf(setup *plan.Setup) string {
	var s scene.Sheet
	if setup.Scene != nil {
		s = setup.Scene.Sheet
	}
	switch {
	case s.Revision.Value != "":
		return s.Revision.Value
	case s.Date.Value != "":
		return s.Date.Value
	}
	return "the sheet before"
}

// CheckRevision holds the revision of a set-up to that of the sheet before: one that differs needs another, and one that does not needs none.
func (s *Since) CheckRevision(now *plan.Setup, differs bool) []source.Diagnostic {
	if now.Scene == nil || len(s.setups) == 0 || s.setups[0].Scene == nil {
		return nil
	}
	is, was := now.Scene.Sheet.Revision, s.setups[0].Scene.Sheet.Revision.Value
	d := source.Diagnostic{Severity: source.Warning, Code: "revision-letter", Span: is.Span, Path: "sheet.revision"}
	switch {
	case differs && is.Value == was:
		d.Message = "this differs from the sheet before, and bears the same revision, " + was
		if was == "" {
			d.Message = "this differs from the sheet before, and neither has a revision"
		}
		d.Hint = nextHint(was)
	case differs && is.Value == "":
		d.Message = "this differs from the sheet before, which is revision " + was + ", and has no revision"
		d.Hint = nextHint(was)
	case differs && NextRevision(is.Value) == was:
		d.Message = fmt.Sprintf("revision %s comes before %s of the sheet that this is held to", is.Value, was)
		d.Hint = "is the order of the two files right?"
	case !differs && is.Value != was:
		d.Severity = source.Info
		d.Message = fmt.Sprintf("nothing differs from the sheet before but the revision, %s after %s", orNone(is.Value), orNone(was))
	default:
		return nil
	}
	return []source.Diagnostic{d}
}

// nextHint names the revision after another, where there is one.
func nextHint(was string) string {
	if next := NextRevision(was); next != "" {
		return "the next is " + next + ": write sheet: {revision: " + next + "}"
	}
	return "give it another"
}

func orNone(revision string) string {
	if revision == "" {
		return "none"
	}
	return revision
}
