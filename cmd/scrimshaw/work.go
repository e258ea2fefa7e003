package main

import (
	"context"
	"fmt"
	"slices"

	"scrimshaw/plan"
	"scrimshaw/plan/light"
	"scrimshaw/plan/source"
	"scrimshaw/plan/study"
)

// work is what draw, meter and review share: the set-ups of a scene, lit.
type work struct {
	in      *input
	studies []*study.Study
}

// workFlags are the flags of every command that computes a scene.
type workFlags struct {
	setups  []string
	quality string
	plane   string
	faults  faultForm
}

// prepare opens the scene, resolves the set-ups asked for (all where none is) and computes
// their light. Faults go to in.log; where one is an error there are no studies.
func prepare(ctx context.Context, std streams, args []string, flags *workFlags, o study.Options) (*work, error) {
	in, err := open(std, args)
	if err != nil {
		return nil, err
	}
	w := &work{in: in}
	setups := w.resolve(flags.setups)
	if in.log.Failed() {
		return w, nil
	}
	var known bool
	if o.Quality, known = light.QualityOf(flags.quality); !known && flags.quality != "" {
		return w, fmt.Errorf("--quality %s: the qualities are draft, normal and fine", flags.quality)
	}
	bar := newBar(std.err, len(setups))
	defer bar.end()
	for i, s := range setups {
		if o.Planes, err = planesOf(s, flags.plane); err != nil {
			return w, err
		}
		o.Progress = func(done float64) { bar.show(i, done) }
		lit, err := study.Run(ctx, s, o)
		if err != nil {
			return w, err
		}
		w.studies = append(w.studies, lit)
	}
	return w, nil
}

// resolve lays out the set-ups asked for, each after the one it follows.
func (w *work) resolve(asked []string) []*plan.Setup {
	document := w.in.document
	if document == nil || w.in.log.Failed() {
		w.resolveFaulty()
		return nil
	}
	names := asked
	if len(names) == 0 {
		names = document.Setups
	}
	if len(names) == 0 {
		names = []string{""}
	}
	done := map[string]*plan.Setup{}
	var setups []*plan.Setup
	for _, name := range names {
		if s := w.resolveOne(name, done); s != nil {
			setups = append(setups, s)
		}
	}
	return setups
}

// resolveFaulty reads on in a scene that has faults, so that all of them are told at once.
func (w *work) resolveFaulty() {
	document := w.in.document
	if document == nil || document.Root == nil {
		return
	}
	names := slices.Clone(document.Setups)
	if len(names) == 0 {
		names = []string{""}
	}
	done := map[string]*plan.Setup{}
	for _, name := range names {
		w.resolveOne(name, done)
	}
}

// resolveOne resolves a set-up and, before it, those it follows. done holds what is resolved.
func (w *work) resolveOne(name string, done map[string]*plan.Setup) *plan.Setup {
	if s, known := done[name]; known {
		return s
	}
	done[name] = nil // a cycle is the loader's to report
	written := w.in.document.Scene(name, w.in.log)
	if written == nil {
		return nil
	}
	var before *plan.Setup
	for _, s := range written.Setups {
		if s.Name == name && s.After.Name != "" {
			before = w.resolveOne(s.After.Name, done)
		}
	}
	done[name] = plan.ResolveAfter(w.in.document, written, before, w.in.log)
	return done[name]
}

// refuse prints the faults and returns the status of refused input, or nil where there is no
// error among them. Below least nothing is printed: infos belong to review.
func (w *work) refuse(std streams, form faultForm, least source.Severity) error {
	if err := printFaults(std.err, form, from(w.in.log.All(), least)); err != nil {
		return fmt.Errorf("cannot write to standard error: %w", err)
	}
	if w.in.log.Failed() {
		return &exitError{status: exitWrong}
	}
	return nil
}
