package resolve

import (
	"scrimshaw/plan"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
)

// forwardFaults passes on what is wrong with a set-up. A fault that the scene has without the set-up's change
// is the scene's; of one that only the combination has, both places are shown.
func forwardFaults(doc *scene.Document, s *scene.Scene, before *plan.Setup, own, log *source.Log) {
	var scenes, earlier map[source.DiagnosticKey]bool
	for _, f := range own.All() {
		if s.Setup != "" && doc != nil && f.Severity >= source.Warning {
			if scenes == nil {
				scenes, earlier = faultsOf(doc, doc.Base(&source.Log{})), map[source.DiagnosticKey]bool{}
				if before != nil && before.Name != s.Setup {
					earlier = faultsOf(doc, doc.Scene(before.Name, &source.Log{}))
				}
			}
			switch key := f.Key(); {
			case scenes[key]:
				f.Setup = ""
			case !earlier[key]:
				s.ShowChange(&f)
			}
		}
		log.Add(f)
	}
}

// faultsOf is what is wrong with a scene by itself.
func faultsOf(doc *scene.Document, s *scene.Scene) map[source.DiagnosticKey]bool {
	known := map[source.DiagnosticKey]bool{}
	if s == nil {
		return known
	}
	log := &source.Log{}
	layOut(doc, s, nil, log)
	for _, f := range log.All() {
		known[f.Key()] = true
	}
	return known
}
