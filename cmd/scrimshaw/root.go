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
)

// exitError ends a command with a status when its faults have been printed.
type exitError struct{ status int }

func (e *exitError) Error() string { return fmt.Sprintf("exit status %d", e.status) }

// run executes the command line and returns the exit status.
func run(ctx context.Context, args []string, std streams) int {
	out := &sink{ctx: ctx, w: std.out}
	std.out = out
	root := newRoot(std)
	root.SetArgs(args)
	err := root.ExecuteContext(ctx)
	if err == nil {
		err = out.fault
	}
	if err == nil {
		return exitFine
	}
	var exit *exitError
	if errors.As(err, &exit) {
		return exit.status
	}
	fmt.Fprintf(std.err, "scrimshaw: %s\n", friendly(err))
	return exitWrong
}

// newRoot builds the command tree.
func newRoot(std streams) *cobra.Command {
	root := &cobra.Command{
		Use:   "scrimshaw",
		Short: "a scene as text becomes a lit plan on paper",
		Long: "scrimshaw lays a scene out to scale, computes its light and draws the lighting diagram.\n" +
			"Without a file a command uses the built-in scene; - reads the scene from standard input.\n" + "Results go to standard output, all else to standard error. Exit status: 0 is fine, 1 means that review found\n" + "an error, 2 that the input or a flag is wrong. A run that is stopped writes nothing.",
		Example:       "  scrimshaw new > mine.yaml\n  scrimshaw draw mine.yaml -o mine.pdf -o mine.svg",
		Version:       version(),
		SilenceErrors: true,
		SilenceUsage:  true,
		RunE:          func(cmd *cobra.Command, _ []string) error { return cmd.Help() },
	}
	root.SetIn(std.in)
	root.SetOut(std.out)
	root.SetErr(std.err)
	root.PersistentFlags().SortFlags = false
	root.SetFlagErrorFunc(func(cmd *cobra.Command, err error) error { return flagError(cmd, err) })
	root.AddCommand(
		newDraw(std), newMeter(std), newReview(std), newNew(std),
		newSymbols(std), newKit(std), newSchema(std),
	)
	root.SetHelpCommand(newHelp(root))
	root.SetVersionTemplate("scrimshaw {{.Version}}\n")
	refuseOtherShells(root)
	for _, command := range root.Commands() {
		command.Flags().SortFlags = false
	}
	return root
}

// newHelp is the command that prints the help of another; an unknown command is a fault.
func newHelp(root *cobra.Command) *cobra.Command {
	return &cobra.Command{
		Use:   "help [command]",
		Short: "the help of a command",
		RunE: func(_ *cobra.Command, args []string) error {
			asked, _, err := root.Find(args)
			if err != nil {
				return err
			}
			return asked.Help()
		},
	}
}

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

// friendly strips the words of the standard library that say nothing to a user.
func friendly(err error) string {
	if errors.Is(err, context.Canceled) {
		return "stopped; nothing is written"
	}
	return strings.ReplaceAll(err.Error(), "strconv.ParseFloat: parsing ", "")
}
