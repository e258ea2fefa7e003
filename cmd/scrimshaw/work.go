package main

import (
	"context"
	"errors"
	"fmt"

	"scrimshaw/plan"
	"scrimshaw/plan/light"
	"scrimshaw/plan/resolve"
	"scrimshaw/plan/source"
	"scrimshaw/plan/study"
)

// work is what draw, meter and review share: the set-ups of a scene, laid out and lit.
type work struct {
	in      *input
	setups  []*plan.Setup
	studies []*study.Study
}

// workFlags are the flags of every command that computes a scene.
type workFlags struct {
	setups  []string
	quality string
	plane   string
	faults  faultForm
}

// prepare lays a scene out and computes its light.
func prepare(ctx context.Context, std streams, args []string, flags *workFlags, o study.Options) (*work, error) {
	w, err := layOut(ctx, std, args, flags)
	if err != nil {
		return nil, err
	}
	if err := w.light(ctx, std, flags, o); err != nil {
		w.in.Close()
		return nil, err
	}
	return w, nil
}

// layOut opens the scene and resolves the set-ups asked for, all where none is. Faults go to in.log; where one
// is an error there are no set-ups.
func layOut(ctx context.Context, std streams, args []string, flags *workFlags) (*work, error) {
	if _, err := flags.lightQuality(); err != nil {
		return nil, err
	}
	in, err := open(ctx, std, args)
	if err != nil {
		return nil, err
	}
	return &work{in: in, setups: resolve.ResolveAll(in.document, flags.setups, in.log)}, nil
}

// light computes the light of the set-ups and shows on a terminal how far it is.
func (w *work) light(ctx context.Context, std streams, flags *workFlags, o study.Options) error {
	var err error
	if o.Quality, err = flags.lightQuality(); err != nil {
		return err
	}
	planes := make([][]study.Plane, len(w.setups))
	for i, s := range w.setups {
		if planes[i], err = planesOf(s, flags.plane); err != nil {
			return err
		}
	}
	bar := newBar(std.err, len(w.setups))
	defer bar.end()
	for i, s := range w.setups {
		o.Planes, o.Progress = planes[i], func(done float64) { bar.show(i, done) }
		lit, err := study.Run(ctx, s, o)
		if err != nil {
			return err
		}
		w.studies = append(w.studies, lit)
	}
	return nil
}

// lightQuality reads the flag --quality.
func (f *workFlags) lightQuality() (light.Quality, error) {
	q, known := light.QualityOf(f.quality)
	if !known && f.quality != "" {
		return q, fmt.Errorf("--quality %s: the qualities are draft, normal and fine", f.quality)
	}
	return q, nil
}

// planesOf reads the flag --plane for a set-up; no plane where there is none.
func planesOf(s *plan.Setup, text string) ([]study.Plane, error) {
	if text == "" {
		return nil, nil
	}
	plane, err := study.ParsePlane(s, text)
	if err != nil {
		return nil, fmt.Errorf("--plane %s: %w", text, err)
	}
	return []study.Plane{plane}, nil
}

// requireSetups refuses to go on where every set-up is left out, after its faults are printed.
func (w *work) requireSetups() error {
	if len(w.setups) == 0 && !w.in.log.Failed() {
		return errors.New("every set-up that you asked for is left out, as said above, so nothing remains to draw or to meter")
	}
	return nil
}

// reportFaults prints the faults and returns the status of refused input, or nil where there is no
// error among them. Below least nothing is printed: infos belong to review.
func (w *work) reportFaults(std streams, form faultForm, least source.Severity) error {
	if err := writeFaults(std, form, atLeastSeverity(w.in.log.All(), least)); err != nil {
		return err
	}
	if w.in.log.Failed() {
		return &exitError{exitWrong}
	}
	return nil
}
