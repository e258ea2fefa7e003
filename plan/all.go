package plan

import (
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
)

// ResolveAll lays out the set-ups of a file that names ask for, in that order, each after the one it follows.
// Without names it takes all of them, and of a file that has no set-ups the scene itself. Where there is an
// error it reads on as far as it can, so that all faults are told at once, and returns nothing: log has Failed.
// A nil doc has no set-ups.
func ResolveAll(doc *scene.Document, names []string, log *source.Log) []*Setup {
	if doc == nil || doc.Root == nil {
		return nil
	}
	if len(names) == 0 || log.Failed() {
		names = doc.Setups
	}
	if len(names) == 0 {
		names = []string{""}
	}
	r := run{doc: doc, log: log, done: map[string]*Setup{}}
	var setups []*Setup
	for _, name := range names {
		if s := r.setup(name); s != nil {
			setups = append(setups, s)
		}
	}
	if log.Failed() {
		return nil
	}
	return setups
}

// run is the set-ups of a file on their way to metres.
type run struct {
	doc  *scene.Document
	log  *source.Log
	done map[string]*Setup
}

// setup resolves a set-up, once, and before it the one that it follows.
func (r *run) setup(name string) *Setup {
	if s, known := r.done[name]; known {
		return s
	}
	r.done[name] = nil // a cycle is the loader's to report
	written := r.doc.Scene(name, r.log)
	if written == nil {
		return nil
	}
	var before *Setup
	for _, s := range written.Setups {
		if s.Name == name && s.After.Name != "" {
			before = r.setup(s.After.Name)
		}
	}
	r.done[name] = ResolveAfter(r.doc, written, before, r.log)
	return r.done[name]
}
