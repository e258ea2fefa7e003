package main

import (
	"context"
	"errors"
	"fmt"
	"slices"

	"scrimshaw/plan"
	"scrimshaw/plan/light"
	"scrimshaw/plan/resolve"
	"scrimshaw/plan/source"
	"scrimshaw/plan/study"
)

// work is what draw, meter and review share: the set-ups of a scene, laid out and lit one after the other.
type work struct {
	in    *input
	names []string      // of the set-ups
	kept  []*plan.Setup // the set-ups, where they are small enough to be laid out once
	size  int           // of all set-ups together, in solids
}

// keptSolids is the most solids of set-ups that are kept. Larger ones are laid out again each time they are needed,
// so that the number of set-ups costs no memory.
const keptSolids = 20000

// lightSolids is as how many solids a light counts there, with its head and what is written of it: about 12 kB, and a solid has some 300 bytes.
const lightSolids = 40

// workFlags are the flags of every command that computes a scene.
type workFlags struct {
	setups  []string
	quality string
	plane   string
	faults  faultForm
}

// layOut opens the scene and resolves the set-ups asked for, all where none is. Faults go to in.log; where one
// is an error there are no set-ups.
func layOut(ctx context.Context, std streams, args []string, flags *workFlags) (*work, error) {
	if _, err := flags.lightQuality(); err != nil {
		return nil, err
	}
	if slices.Contains(flags.setups, "") {
		return nil, errors.New("--setup has no name behind it; leave it out for all set-ups")
	}
	in, err := open(ctx, std, args)
	if err != nil {
		return nil, err
	}
	w, err := runInterruptibly(ctx, func() (*work, error) { return survey(ctx, in, flags.setups) })
	if err != nil {
		in.Close()
	}
	return w, err
}

// survey lays out every set-up that was asked for, and keeps those that are small.
func survey(ctx context.Context, in *input, asked []string) (*work, error) {
	w := &work{in: in}
	var spent account
	err := resolve.Each(in.document, asked, in.log, func(s *plan.Setup) error {
		if err := spent.add(s); err != nil {
			return err
		}
		w.names = append(w.names, s.Name)
		w.kept = append(w.kept, s)
		if w.size += solidsOf(s) + lightSolids*len(s.Lights); w.size > keptSolids {
			w.kept = nil
		}
		return ctx.Err()
	})
	if in.log.Failed() {
		w.names, w.kept = nil, nil
	}
	return w, err
}

func solidsOf(s *plan.Setup) int { return len(s.Set.Prisms) + len(s.Set.Sheets) }

// each hands the set-ups to use, one after the other.
func (w *work) each(use func(i int, s *plan.Setup) error) error {
	if len(w.kept) == len(w.names) {
		for i, s := range w.kept {
			if err := use(i, s); err != nil {
				return err
			}
		}
		return nil
	}
	i := -1
	return resolve.Each(w.in.document, w.names, &source.Log{}, func(s *plan.Setup) error {
		i++
		return use(i, s)
	})
}

// light computes the light of the set-ups, one after the other, and hands each to use. It shows on a terminal how
// far it is.
func (w *work) light(ctx context.Context, std streams, flags *workFlags, o study.Options, use func(i int, s *study.Study) error) error {
	var err error
	if o.Quality, err = flags.lightQuality(); err != nil {
		return err
	}
	o.Memory = w.memory()
	bar := newBar(std.err, len(w.names))
	defer bar.end()
	return w.each(func(i int, s *plan.Setup) error {
		if o.Planes, err = planesOf(s, flags.plane); err != nil {
			return err
		}
		o.Progress = func(done float64) { bar.show(i, done) }
		lit, err := study.Run(ctx, s, o)
		if err != nil {
			return err
		}
		return use(i, lit)
	})
}

// memory is what set-ups leave for the next; nil where there is one alone.
func (w *work) memory() *study.Memory {
	if len(w.names) < 2 {
		return nil
	}
	return &study.Memory{}
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
