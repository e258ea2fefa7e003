package main

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"scrimshaw/plan"
	"scrimshaw/plan/source"
	"scrimshaw/plan/study"
	"scrimshaw/render/sheet"
)

// sinceHelp says what --since does and what it does not.
const sinceHelp = "a scene file, or - for standard input, whose sheets the crew already holds"

// addSinceFlag adds the flag that names the file of the sheets before.
func addSinceFlag(cmd *cobra.Command, path *string) {
	cmd.Flags().StringVar(path, "since", "", sinceHelp)
}

// before is the file of the sheets that the crew holds, laid out, and what those say.
type before struct {
	*work
	sheets *sheet.Since
}

// openSince lays out the file of the sheets before, as far as the run has its set-ups, and reports what is wrong with it, and with the revisions of
// the two. It is nil where none is asked for.
func (w *work) openSince(ctx context.Context, std streams, args []string, path string, flags *workFlags) (*before, error) {
	if path == "" {
		return nil, nil
	}
	if err := w.sameFile(args, path); err != nil {
		return nil, err
	}
	in, err := open(ctx, std, []string{path})
	if errors.Is(err, fs.ErrNotExist) {
		err = fmt.Errorf("--since %s: there is no such file", path)
	}
	if err != nil {
		return nil, err
	}
	b, err := w.holdTo(ctx, std, in, path, flags)
	if err != nil {
		in.Close()
		return nil, err
	}
	return b, nil
}

// holdTo lays out an opened file of the sheets before.
func (w *work) holdTo(ctx context.Context, std streams, in *input, path string, flags *workFlags) (*before, error) {
	names, err := w.inBoth(in, path, flags.setups)
	if err != nil {
		return nil, err
	}
	old, err := runInterruptibly(ctx, func() (*work, error) { return survey(ctx, in, names) })
	if err != nil {
		return nil, err
	}
	if err := old.reportFaults(std, flags.faults, source.Error); err != nil {
		return nil, err
	}
	b := &before{work: old, sheets: sheet.NewSince(len(w.in.document.Setups) < 2 && len(in.document.Setups) < 2)}
	err = old.each(func(_ int, s *plan.Setup) error {
		b.sheets.Add(s)
		return ctx.Err()
	})
	if err != nil {
		return nil, err
	}
	return b, w.checkRevisions(std, b.sheets, flags)
}

// sameFile refuses the scene itself as the one before it, and standard input for both.
func (w *work) sameFile(args []string, path string) error {
	stdin := len(args) > 0 && args[0] == "-"
	switch {
	case path == "-" && stdin:
		return errors.New("--since -: standard input is the scene already; name a file")
	case path != "-" && w.in.path != "" && canonicalPath(path) == canonicalPath(w.in.path):
		return fmt.Errorf("--since %s is the scene itself: name the file that the crew's sheets were drawn from", path)
	}
	return nil
}

// inBoth are the set-ups of the file before that are compared: those that were asked for, else all. It refuses a file that has none of those of the run.
func (w *work) inBoth(in *input, path string, asked []string) ([]string, error) {
	if in.log.Failed() || in.document.Root == nil {
		return nil, nil // its faults are reported
	}
	was, is := in.document.Setups, w.names
	if len(w.in.document.Setups) < 2 && len(was) < 2 {
		return nil, nil
	}
	var common []string
	for _, name := range was {
		if slices.Contains(is, name) {
			common = append(common, name)
		}
	}
	switch {
	case len(common) == 0 && len(was) == 0:
		return nil, fmt.Errorf("--since %s: it has no set-ups, and this scene has %s; name a file that has one of them", path, strings.Join(is, ", "))
	case len(common) == 0:
		return nil, fmt.Errorf("--since %s: it has none of the set-ups that are drawn, which are %s; its own are %s", path, strings.Join(is, ", "), strings.Join(was, ", "))
	case len(asked) > 0:
		return common, nil
	}
	return nil, nil
}

// checkRevisions reports a revision that is the same though something differs, or another though nothing does.
func (w *work) checkRevisions(std streams, since *sheet.Since, flags *workFlags) error {
	differs := len(flags.setups) == 0 && since.Lacks(w.names)
	var last *plan.Setup
	err := w.each(func(_ int, s *plan.Setup) error {
		differs, last = differs || since.Differs(s), s
		return nil
	})
	if err != nil || last == nil {
		return err
	}
	return reportFaults(std, flags.faults, since.CheckRevision(last, differs))
}

// readings computes those of the sheets before.
func (b *before) readings(ctx context.Context, std streams, flags *workFlags) error {
	own := workFlags{quality: flags.quality}
	return b.light(ctx, std, &own, study.Options{ReadingsOnly: true}, func(_ int, s *study.Study) error {
		b.sheets.AddReadings(s.Setup.Name, s.Readings.Readings)
		return nil
	})
}
