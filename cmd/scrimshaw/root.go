package main

import (
	"context"
	"errors"
	"fmt"
	"runtime/debug"
	"syscall"

	"github.com/spf13/cobra"

	"scrimshaw/plan/source"
)

// run executes the command line and returns the exit status.
func run(ctx context.Context, args []string, std streams) int {
	out := &outputWriter{ctx: ctx, w: std.out}
	std.out = out
	if std.staged == nil {
		std.staged = &staging{}
	}
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
	if errors.Is(err, syscall.EPIPE) {
		return brokenPipe // whoever read the output has enough, and needs no word of it
	}
	fmt.Fprintf(std.err, "scrimshaw: %s\n", source.Printable(plainMessage(err)))
	return exitWrong
}

// newRoot builds the command tree.
func newRoot(std streams) *cobra.Command {
	var notices bool
	root := &cobra.Command{
		Use:   "scrimshaw",
		Short: "a scene as text becomes a lit plan on paper",
		Long: "scrimshaw lays a scene out to scale, computes its light and draws the lighting diagram.\n" +
			"Without a file a command uses the built-in scene; - reads the scene from standard input.\n" + "Results go to standard output, all else to standard error. Exit status: 0 is fine, 1 means that review found\n" + "an error, 2 that the input or a flag is wrong. A run that is stopped writes nothing.",
		Example:       "  scrimshaw new > mine.yaml\n  scrimshaw draw mine.yaml -o mine.pdf -o mine.svg",
		Version:       version(),
		SilenceErrors: true,
		SilenceUsage:  true,
		RunE: func(cmd *cobra.Command, _ []string) error {
			if notices {
				_, err := std.out.Write([]byte(licences))
				return err
			}
			return cmd.Help()
		},
	}
	root.Flags().BoolVar(&notices, "licences", false, "print the notices of what the program is made of")
	root.SetIn(std.in)
	root.SetOut(std.out)
	root.SetErr(std.err)
	root.PersistentFlags().SortFlags = false
	root.SetFlagErrorFunc(func(cmd *cobra.Command, err error) error { return flagError(cmd, err) })
	root.AddCommand(
		newDraw(std), newMeter(std), newExplain(std), newReview(std), newList(std), newDay(std), newNew(std),
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

// version is that of the module by the information of the build; "devel" where a build has none.
func version() string {
	info, known := debug.ReadBuildInfo()
	if !known || info.Main.Version == "" || info.Main.Version == "(devel)" {
		return "devel"
	}
	return info.Main.Version
}
