package main

import (
	"context"
	"errors"
	"fmt"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"scrimshaw/plan/source"
)

// The exit statuses.
const (
	exitFine   = 0
	exitReview = 1 // the review found an error; only `review` gives it
	exitWrong  = 2 // the input or the flags are wrong

	brokenPipe = 128 + 13 // nobody reads the output any more; what a shell says of a program that this signal ends
)

// stoppedMessage is what a run says that stops before its end.
const stoppedMessage = "stopped; nothing is written"

// exitError ends a command with a status when its faults have been printed.
type exitError struct{ status int }

func (e *exitError) Error() string { return fmt.Sprintf("exit status %d", e.status) }

// atMostOne refuses a second argument: often it is meant as the output.
func atMostOne(what string) cobra.PositionalArgs {
	return func(cmd *cobra.Command, args []string) error {
		switch {
		case len(args) < 2:
			return nil
		case cmd.Flags().Lookup("output") != nil && !strings.HasPrefix(filepath.Ext(args[1]), ".y"):
			return fmt.Errorf("one %s at a time: %s is a second; to write it: -o %s", what, args[1], args[1])
		}
		return fmt.Errorf("one %s at a time: %s is a second", what, args[1])
	}
}

// flagError adds the nearest flag and the way to the help to a flag fault.
func flagError(cmd *cobra.Command, err error) error {
	message := err.Error()
	var missing *pflag.NotExistError
	if errors.As(err, &missing) {
		if near := nearestFlag(cmd, missing.GetSpecifiedName()); near != "" {
			message += "; did you mean --" + near + "?"
		}
	}
	return fmt.Errorf("%s\nsee: %s --help", message, cmd.CommandPath())
}

// nearestFlag returns the flag that name was most likely meant to be, else the first that it begins, or "".
func nearestFlag(cmd *cobra.Command, name string) string {
	var names []string
	cmd.Flags().VisitAll(func(f *pflag.Flag) { names = append(names, f.Name) })
	if near := source.Nearest(name, names); near != "" || len(name) < 2 {
		return near
	}
	for _, flag := range names {
		if strings.HasPrefix(flag, name) {
			return flag
		}
	}
	return ""
}

// plainMessage strips the words of the standard library that say nothing to a user.
func plainMessage(err error) string {
	if errors.Is(err, context.Canceled) {
		return stoppedMessage
	}
	return strings.ReplaceAll(err.Error(), "strconv.ParseFloat: parsing ", "")
}
