package resolve

import (
	"fmt"

	"scrimshaw/plan"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
)

// ResolveAll lays out the set-ups of a file that names ask for, in that order, each after the one it follows.
// Without names it takes all of them, and of a file that has no set-ups the scene itself. A set-up of which nothing
// is computed as it is written is left out: the loader has warned of it. Where there is an
// error it reads on as far as it can, so that all faults are reported at once, and returns nothing: log has Failed.
// A nil doc has no set-ups.
func ResolveAll(doc *scene.Document, names []string, log *source.Log) []*plan.Setup {
	if doc == nil || doc.Root == nil {
		return nil
	}
	if len(names) == 0 || log.Failed() {
		names = doc.Setups
	}
	if len(names) == 0 {
		names = []string{""}
	}
	r := fileRun{doc: doc, log: log, done: map[string]*plan.Setup{}}
	var setups []*plan.Setup
	for _, name := range names {
		switch s := r.setup(name); {
		case s == nil:
		case s.Omitted():
			reportOmitted(s, log)
		default:
			setups = append(setups, s)
		}
	}
	if log.Failed() {
		return nil
	}
	return setups
}

// reportOmitted says of a set-up that starts from one that is not computed that it is left out with it. Of the one
// itself the loader has reported.
func reportOmitted(s *plan.Setup, log *source.Log) {
	for _, u := range s.Uncomputed {
		if u.Changes == scene.WholeSetup && u.Thing() != s.Name {
			log.Add(source.Diagnostic{Severity: source.Warning, Code: source.CodeLater, Span: s.Scene.SetupSpan(), Path: "setups." + s.Name, Setup: s.Name,
				Message: fmt.Sprintf("%s is left out, because it starts from %s and %s is not computed yet", s.Name, u.Thing(), u.Key),
				Hint:    "let it start from another set-up, or from the scene"})
			return
		}
	}
}

// fileRun is the set-ups of a file on their way to metres.
type fileRun struct {
	doc  *scene.Document
	log  *source.Log
	done map[string]*plan.Setup
}

// setup resolves a set-up, once, and before it the one that it follows.
func (r *fileRun) setup(name string) *plan.Setup {
	if s, known := r.done[name]; known {
		return s
	}
	r.done[name] = nil // a cycle is the loader's to report
	written := r.doc.Scene(name, r.log)
	if written == nil {
		return nil
	}
	var before *plan.Setup
	for _, s := range written.Setups {
		if s.Name == name && s.After.Name != "" {
			before = r.setup(s.After.Name)
		}
	}
	r.done[name] = ResolveAfter(r.doc, written, before, r.log)
	return r.done[name]
}
