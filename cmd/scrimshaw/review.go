package main

import (
	"context"
	"encoding/json"
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"scrimshaw/plan/review"
	"scrimshaw/plan/review/fit"
	"scrimshaw/plan/source"
	"scrimshaw/plan/study"
)

// reviewFlags are the flags of review.
type reviewFlags struct {
	work        workFlags
	json, quiet bool
	checks      bool
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
		Example:           "  scrimshaw review mine.yaml\n  scrimshaw review mine.yaml --faults line\n  scrimshaw review - --json < mine.yaml\n  scrimshaw review --checks",
		Args:              atMostOne("scene"),
		ValidArgsFunction: completeScenes,
		RunE:              func(cmd *cobra.Command, args []string) error { return runReview(cmd.Context(), std, args, &flags) },
	}
	addWorkFlags(cmd, &flags.work)
	cmd.Flags().BoolVar(&flags.json, "json", false, "print JSON: a list of findings on standard output")
	cmd.Flags().BoolVar(&flags.quiet, "no-notes", false, "print errors and warnings only")
	cmd.Flags().BoolVar(&flags.checks, "checks", false, "list all checks, with what each looks for, and look at no scene")
	return cmd
}

// listChecks prints what is checked, and what is not.
func listChecks(std streams, asJSON bool) error {
	all := review.Checks()
	if asJSON {
		encoder := json.NewEncoder(std.out)
		encoder.SetEscapeHTML(false)
		encoder.SetIndent("", "  ")
		return encoder.Encode(struct {
			Checks    []fit.About `json:"checks"`
			Unchecked []string    `json:"notChecked"`
		}{all, review.Unchecked()})
	}
	var b strings.Builder
	fmt.Fprintf(&b, "%d checks\n", len(all))
	of := ""
	for _, c := range all {
		if c.Of != of {
			of = c.Of
			fmt.Fprintf(&b, "\nof %s\n", of)
		}
		fmt.Fprintf(&b, "  %s\n      %s\n", c.Words, strings.Join(c.Codes, ", "))
	}
	fmt.Fprintf(&b, "\nnot checked\n  %s\n", strings.Join(review.Unchecked(), "\n  "))
	_, err := io.WriteString(std.out, b.String())
	return err
}

// runReview prints what was found in a scene; a status of its own says that there is an error.
func runReview(ctx context.Context, std streams, args []string, flags *reviewFlags) error {
	if flags.checks {
		return listChecks(std, flags.json)
	}
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
	switch {
	case flags.json:
		err = source.JSON(std.out, all)
	case len(all) == 0 && flags.work.faults == formHuman:
		_, err = fmt.Fprintf(std.err, "%s among %d checks; not checked: %s\n", source.Summary(all), len(review.Checks()), strings.Join(review.Unchecked(), " "))
	default:
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
