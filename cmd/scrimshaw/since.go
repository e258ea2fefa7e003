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
	var names []string // none are all
	if len(flags.setups) > 0 {
		names = w.inBoth(in)
	}
	old, err := runInterruptibly(ctx, func() (*work, error) { return survey(ctx, in, names) })
	if err != nil {
		return nil, err
	}
	if err := old.reportFaults(std, flags.faults, source.Error); err != nil {
		return nil, err
	}
	if err := w.checkCommon(in, path); err != nil {
		return nil, err
	}
	b := &before{work: old, sheets: sheet.NewSince(w.single(in))}
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

// single says whether both files have one set-up: those are held to each other whatever they are called.
func (w *work) single(in *input) bool {
	return len(w.in.document.Setups) < 2 && len(in.document.Setups) < 2
}

// inBoth are the set-ups of the run that the file before has.
func (w *work) inBoth(in *input) (common []string) {
	for _, name := range in.document.Setups {
		if slices.Contains(w.names, name) {
			common = append(common, name)
		}
	}
	return common
}

// checkCommon refuses a file that has none of the set-ups of the run.
func (w *work) checkCommon(in *input, path string) error {
	if w.single(in) || len(w.inBoth(in)) > 0 {
		return nil
	}
	is, was := strings.Join(w.names, ", "), strings.Join(in.document.Setups, ", ")
	switch {
	case was == "":
		return fmt.Errorf("--since %s: it has no set-ups, and this scene has %s; name a file that has one of them", path, is)
	case is == "":
		return fmt.Errorf("--since %s: it has set-ups, %s, and this scene has none; name a file without", path, was)
	}
	return fmt.Errorf("--since %s: it has none of the set-ups that are drawn, which are %s; its own are %s", path, is, was)
}

// checkRevisions reports a revision that is the same though something differs, or another though nothing does.
func (w *work) checkRevisions(std streams, since *sheet.Since, flags *workFlags) error {
	differs := len(since.Gone(w.names)) > 0
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

// readings computes those of the sheets before, and how faces look there, where they are put side by side.
func (b *before) readings(ctx context.Context, std streams, quality string, matches bool) error {
	own := workFlags{quality: quality}
	return b.light(ctx, std, &own, study.Options{ReadingsOnly: true, AroundHeads: matches}, func(_ int, s *study.Study) error {
		b.sheets.AddLight(s, matches)
		return nil
	})
}
