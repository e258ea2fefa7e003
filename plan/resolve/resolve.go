package resolve

import (
	"slices"

	"scrimshaw/plan"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
)

// Resolve lays a scene out in metres. doc is the file it came from: it gives the catalogue, the
// tags that lights keep all day and, where things stay, the set-up before. A nil doc has none of
// these, and a scene that names a unit of the kit is at fault with it. All faults go to log; after an error the set-up holds what could be resolved, which is
// good for a picture beside the errors and for nothing else. It is nil where s is.
func Resolve(doc *scene.Document, s *scene.Scene, log *source.Log) *plan.Setup {
	return ResolveAfter(doc, s, nil, log)
}

// ResolveAfter is Resolve for a caller who has the set-up before; nil leaves it to be found.
func ResolveAfter(doc *scene.Document, s *scene.Scene, before *plan.Setup, log *source.Log) *plan.Setup {
	if s == nil {
		return nil
	}
	if before == nil {
		before = previousSetup(doc, s, nil)
	}
	return resolve(doc, s, before, log)
}

func resolve(doc *scene.Document, s *scene.Scene, before *plan.Setup, log *source.Log) *plan.Setup {
	own := &source.Log{}
	out := layOut(doc, s, before, own)
	for _, d := range own.All() {
		if d.Severity == source.Warning {
			out.Warnings = append(out.Warnings, d)
		}
	}
	forwardFaults(doc, s, before, own, log)
	return out
}

// previousSetup resolves the set-up that comes before a scene's own, where something stays: the one
// it is a change of, else the one before it in the file. Its faults are reported when it is resolved
// itself. waiting are the set-ups that wait for it.
func previousSetup(doc *scene.Document, s *scene.Scene, waiting []string) *plan.Setup {
	name := previousName(s)
	if doc == nil || len(s.Stays) == 0 || name == "" || slices.Contains(waiting, name) {
		return nil
	}
	quiet := &source.Log{}
	earlier := doc.Scene(name, quiet)
	if earlier == nil {
		return nil
	}
	return resolve(doc, earlier, previousSetup(doc, earlier, append(waiting, s.Setup)), quiet)
}

// previousName is the name of that set-up, or "".
func previousName(s *scene.Scene) string {
	for i := range s.Setups {
		if s.Setups[i].Name != s.Setup {
			continue
		}
		if after := s.Setups[i].From().Name; after != "" {
			return after
		}
		if i > 0 {
			return s.Setups[i-1].Name
		}
	}
	return ""
}
