package resolve

import (
	"slices"

	"scrimshaw/plan"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
)

// ResolveAll lays out the set-ups of a file that names ask for, in that order, each after the one it follows.
// Without names it takes all of them, and of a file that has no set-ups the scene itself. Where there is an
// error it reads on as far as it can, so that all faults are reported at once, and returns nothing: log has Failed.
// A nil doc has no set-ups.
func ResolveAll(doc *scene.Document, names []string, log *source.Log) []*plan.Setup {
	var setups []*plan.Setup
	Each(doc, names, log, func(s *plan.Setup) error {
		setups = append(setups, s)
		return nil
	})
	if log.Failed() {
		return nil
	}
	return setups
}

// Each is ResolveAll for one who needs the set-ups one after the other: use gets each as soon as it is laid out, and
// nothing keeps it, so that their number needs no memory. An error that use returns ends it. Whether a
// set-up has errors is known when Each has returned: log has Failed then, and what use did was for nothing.
func Each(doc *scene.Document, names []string, log *source.Log, use func(*plan.Setup) error) error {
	if doc == nil || doc.Root == nil {
		return nil
	}
	if len(names) == 0 || log.Failed() {
		names = doc.Setups
	}
	if len(names) == 0 {
		names = []string{""}
	}
	r := fileRun{doc: doc, log: log, before: map[string]*plan.Setup{}, sides: map[string][]plan.CameraSide{}}
	for _, name := range names {
		s := r.setup(name)
		if s == nil {
			continue
		}
		if err := use(s); err != nil {
			return err
		}
	}
	return nil
}

// fileRun is the set-ups of a file on their way to metres.
type fileRun struct {
	doc    *scene.Document
	log    *source.Log
	before map[string]*plan.Setup       // those that others follow, as far as these need them
	last   *plan.Setup                  // the one before in the file, likewise
	plain  bool                         // nobody asks for what other set-ups have
	others *fileRun                     // lays out set-ups that this run does not draw; nil: none so far
	sides  map[string][]plan.CameraSide // of the line of action, by set-up
}

// setup resolves a set-up, and before it the one that it follows.
func (r *fileRun) setup(name string) *plan.Setup {
	written := r.doc.Scene(name, r.log)
	if written == nil {
		return nil
	}
	var followed *plan.Setup
	if after := afterOf(written, name); after != "" {
		followed = r.followed(after)
	}
	s := ResolveAfter(r.doc, written, followed, r.log)
	if !r.plain {
		s.Before = r.shotBefore(name)
	}
	if s.Line != nil && !r.plain {
		s.Sides = r.sidesBefore(name)
	}
	r.sides[name] = s.CameraSides()
	r.keep(s)
	r.doc.Release(name)
	return s
}

// sidesBefore are the sides of the line of action that the cameras of the set-ups before one in the file are on. Those that the run has not
// laid out are laid out for that; their faults are reported when they are drawn themselves.
func (r *fileRun) sidesBefore(name string) (all []plan.CameraSide) {
	for _, other := range r.doc.Setups {
		if other == name {
			break
		}
		if _, known := r.sides[other]; !known {
			r.layOutQuietly(other)
			r.sides[other] = r.others.sides[other]
		}
		all = append(all, r.sides[other]...)
	}
	return all
}

// shotBefore is the set-up from which a sheet counts the changes: the one before in the file, whichever a set-up is written after, for that one
// stands when the crew begins. Where the run does not draw it, it is laid out for that; its faults are reported when it is drawn itself.
func (r *fileRun) shotBefore(name string) *plan.Setup {
	at := slices.Index(r.doc.Setups, name)
	if at < 1 {
		return nil
	}
	before := r.last
	if previous := r.doc.Setups[at-1]; before == nil || before.Name != previous {
		before = r.layOutQuietly(previous)
	}
	return before
}

// layOutQuietly lays out a set-up that the run does not draw, and gives what remains of it; nil where there is none.
func (r *fileRun) layOutQuietly(name string) *plan.Setup {
	if r.others == nil {
		r.others = &fileRun{doc: r.doc, log: &source.Log{}, before: map[string]*plan.Setup{}, sides: map[string][]plan.CameraSide{}, plain: true}
	}
	if r.others.setup(name) == nil {
		return nil
	}
	return r.others.last
}

// followed is what a set-up leaves to those that follow it.
func (r *fileRun) followed(name string) *plan.Setup {
	if s, known := r.before[name]; known {
		return s
	}
	r.before[name] = nil // a cycle is the loader's to report
	r.setup(name)
	return r.before[name]
}

// keep keeps of a set-up what others need that follow it: where things are. One that nobody follows is kept until the
// next.
func (r *fileRun) keep(s *plan.Setup) {
	followed := slices.ContainsFunc(s.Scene.Setups, func(other scene.Setup) bool { return other.From().Name == s.Name })
	r.last = s.Remains()
	if s.Name != "" && followed {
		r.before[s.Name] = r.last
	}
}

// afterOf is the set-up that one follows, "" for none.
func afterOf(s *scene.Scene, name string) string {
	for i := range s.Setups {
		if s.Setups[i].Name == name {
			return s.Setups[i].From().Name
		}
	}
	return ""
}
