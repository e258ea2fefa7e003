package plan

import (
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
)

// faultKey tells faults apart, whatever set-up they are found in.
type faultKey struct {
	code, message string
	span          source.Span
}

func keyOf(d *source.Diagnostic) faultKey { return faultKey{d.Code, d.Message, d.Span} }

// passOn passes on what is wrong with a set-up. A fault that the scene has without the set-up's change
// is the scene's; of one that only the combination has, both places are shown.
func passOn(doc *scene.Document, s *scene.Scene, before *Setup, own, log *source.Log) {
	var scenes, earlier map[faultKey]bool
	for _, f := range own.All() {
		if s.Setup != "" && doc != nil && f.Severity >= source.Warning {
			if scenes == nil {
				scenes, earlier = faultsOf(doc, doc.Base(&source.Log{})), map[faultKey]bool{}
				if before != nil && before.Name != s.Setup {
					earlier = faultsOf(doc, before.Scene)
				}
			}
			switch key := keyOf(&f); {
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
func faultsOf(doc *scene.Document, s *scene.Scene) map[faultKey]bool {
	known := map[faultKey]bool{}
	if s == nil {
		return known
	}
	log := &source.Log{}
	layOut(doc, s, nil, log)
	for _, f := range log.All() {
		known[keyOf(&f)] = true
	}
	return known
}
