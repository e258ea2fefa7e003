package main

import (
	"context"

	"github.com/spf13/cobra"

	"scrimshaw/plan/review"
	"scrimshaw/plan/source"
	"scrimshaw/plan/study"
)

// reviewFlags are the flags of review.
type reviewFlags struct {
	work        workFlags
	json, quiet bool
}

// newReview is the command that says everything that is wrong or at risk.
func newReview(std streams) *cobra.Command {
	var flags reviewFlags
	cmd := &cobra.Command{
		Use:   "review [scene.yaml | -]",
		Short: "everything that is wrong or at risk, with places",
		Long: "review reads a scene as far as it can and prints every fault and risk with its place and the fix,\n" +
			"what it writes that is not computed yet, and what was assumed where it says nothing.\n" +
			"The exit status is 1 where there is an error, else 0.",
		Example:           "  scrimshaw review mine.yaml\n  scrimshaw review mine.yaml --faults line\n  scrimshaw review - --json < mine.yaml",
		Args:              atMostOne("scene"),
		ValidArgsFunction: completeScenes,
		RunE:              func(cmd *cobra.Command, args []string) error { return runReview(cmd.Context(), std, args, &flags) },
	}
	addWorkFlags(cmd, &flags.work)
	cmd.Flags().BoolVar(&flags.json, "json", false, "a list of findings on standard output")
	cmd.Flags().BoolVar(&flags.quiet, "no-notes", false, "errors and warnings only")
	return cmd
}

// runReview prints what was found in a scene; a status of its own says that there is an error.
func runReview(ctx context.Context, std streams, args []string, flags *reviewFlags) error {
	w, err := prepare(ctx, std, args, &flags.work, study.Options{ReadingsOnly: true})
	if err != nil {
		return err
	}
	defer w.in.Close()
	w.addFindings(!flags.quiet)
	all := w.in.log.All()
	if flags.quiet {
		all = from(all, source.Warning)
	}
	if flags.json {
		err = source.JSON(std.out, all)
	} else {
		err = writeFaults(std, flags.work.faults, all)
	}
	if err != nil {
		return err
	}
	if w.in.log.Failed() {
		return &exitError{exitReview}
	}
	return nil
}

// addFindings adds what the lit set-ups show, and what was assumed where notes are wanted.
func (w *work) addFindings(notes bool) {
	for _, s := range w.studies {
		for _, d := range review.Check(s.Setup, s.Readings.Readings) {
			w.in.log.Add(d)
		}
		if notes {
			for _, d := range review.Assumed(s.Setup) {
				w.in.log.Add(d)
			}
		}
	}
}
