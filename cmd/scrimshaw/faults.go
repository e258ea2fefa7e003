package main

import (
	"fmt"
	"io"
	"os"

	"github.com/spf13/pflag"

	"scrimshaw/plan/source"
)

// faultForm is how diagnostics are printed: human, line or json.
type faultForm string

const (
	formHuman faultForm = "human"
	formLine  faultForm = "line"
	formJSON  faultForm = "json"
)

func (f *faultForm) String() string { return string(*f) }
func (f *faultForm) Type() string   { return "form" }

func (f *faultForm) Set(s string) error {
	switch form := faultForm(s); form {
	case formHuman, formLine, formJSON:
		*f = form
		return nil
	}
	return fmt.Errorf("the forms are human, line and json")
}

// addFaultFlag adds the flag that says how faults are printed.
func addFaultFlag(flags *pflag.FlagSet, form *faultForm) {
	*form = formHuman
	flags.Var(form, "faults", "how faults are printed: human, line (one a line with its fix, for editors) or json")
}

// printFaults writes diagnostics in the given form and, for a person, how many there were.
func printFaults(w io.Writer, form faultForm, all []source.Diagnostic) error {
	switch form {
	case formJSON:
		return source.JSON(w, all)
	case formLine:
		return source.Short(w, all)
	}
	kept, more := source.Capped(all, source.MaxShown)
	if err := source.Human(w, kept, colourful(w, os.Getenv)); err != nil {
		return err
	}
	if more > 0 {
		fmt.Fprintf(w, "and %d more\n", more)
	}
	if len(all) > 0 {
		fmt.Fprintln(w, source.Summary(all))
	}
	return nil
}

// writeFaults prints diagnostics where everything but results goes.
func writeFaults(std streams, form faultForm, all []source.Diagnostic) error {
	if err := printFaults(std.err, form, all); err != nil {
		return fmt.Errorf("cannot write to standard error: %w", withoutPath(err))
	}
	return nil
}

// reportFaults prints what was found, if anything, and returns the status of refused input where there is an error.
func reportFaults(std streams, form faultForm, found []source.Diagnostic) error {
	if len(found) == 0 {
		return nil
	}
	log := &source.Log{}
	for _, d := range found {
		log.Add(d)
	}
	if err := writeFaults(std, form, log.All()); err != nil {
		return err
	}
	if log.Failed() {
		return &exitError{exitWrong}
	}
	return nil
}

// colourful reports whether w is a terminal that wants colour.
func colourful(w io.Writer, getenv func(string) string) bool {
	return getenv("NO_COLOR") == "" && getenv("TERM") != "dumb" && isTerminal(w)
}

// isTerminal reports whether w is a terminal.
func isTerminal(w io.Writer) bool {
	f, ok := w.(*os.File)
	if !ok {
		return false
	}
	info, err := f.Stat()
	return err == nil && info.Mode()&os.ModeCharDevice != 0
}

// atLeastSeverity returns the diagnostics of at least a severity.
func atLeastSeverity(all []source.Diagnostic, least source.Severity) []source.Diagnostic {
	var kept []source.Diagnostic
	for _, d := range all {
		if d.Severity >= least {
			kept = append(kept, d)
		}
	}
	return kept
}
