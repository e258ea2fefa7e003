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
		Short: "all errors and risks of a scene, with places",
		Long: "review prints every error and every risk of a scene with its place and the fix, every key that is not\n" +
			"computed yet, and every default that decided a number.\n" +
			"The exit status is 1 if there is an error, else 0.",
		Example:           "  scrimshaw review mine.yaml\n  scrimshaw review mine.yaml --faults line\n  scrimshaw review - --json < mine.yaml",
		Args:              atMostOne("scene"),
		ValidArgsFunction: completeScenes,
		RunE:              func(cmd *cobra.Command, args []string) error { return runReview(cmd.Context(), std, args, &flags) },
	}
	addWorkFlags(cmd, &flags.work)
	cmd.Flags().BoolVar(&flags.json, "json", false, "print JSON: a list of findings on standard output")
	cmd.Flags().BoolVar(&flags.quiet, "no-notes", false, "print errors and warnings only")
	return cmd
}

// runReview prints what was found in a scene; a status of its own says that there is an error.
func runReview(ctx context.Context, std streams, args []string, flags *reviewFlags) error {
	w, err := layOut(ctx, std, args, &flags.work)
	if err != nil {
		return err
	}
	defer w.in.Close()
	err = w.light(ctx, std, &flags.work, study.Options{ReadingsOnly: true}, func(_ int, s *study.Study) error {
		w.addFindings(s, !flags.quiet)
		return nil
	})
	if err != nil {
		return err
	}
	all := w.in.log.All()
	if flags.quiet {
		all = atLeastSeverity(all, source.Warning)
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

// addFindings adds what a lit set-up shows, and what was assumed where notes are wanted.
func (w *work) addFindings(s *study.Study, notes bool) {
	for _, d := range review.Check(s.Setup, &s.Readings) {
		w.in.log.Add(d)
	}
	if notes {
		for _, d := range review.Assumed(s.Setup) {
			w.in.log.Add(d)
		}
	}
}
