package main

import (
	"context"
	"fmt"

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
	setups := plan.ResolveAll(in.document, flags.setups, in.log)
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
