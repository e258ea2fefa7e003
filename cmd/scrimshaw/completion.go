package main

import (
	"context"
	"fmt"
	"strings"

	"github.com/spf13/cobra"
)

// refuseOtherShells lets the completion command refuse a shell that it has no script for, and name those it has;
// the library prints its help instead.
func refuseOtherShells(root *cobra.Command) {
	root.InitDefaultCompletionCmd()
	for _, completion := range root.Commands() {
		if completion.Name() != "completion" {
			continue
		}
		var shells []string
		for _, shell := range completion.Commands() {
			shells = append(shells, shell.Name())
		}
		completion.Args = cobra.ArbitraryArgs
		completion.RunE = func(cmd *cobra.Command, args []string) error {
			if len(args) > 0 {
				return fmt.Errorf("there is no completion for %s; the shells are %s", args[0], strings.Join(shells, ", "))
			}
			return cmd.Help()
		}
	}
}

// completeWith lets the shell complete a flag's value from a fixed list.
func completeWith(cmd *cobra.Command, flag string, words ...string) {
	complete(cmd, flag, func(context.Context, []string) []string { return words })
}

// complete lets the shell complete a flag's value from the words that the arguments so far allow.
func complete(cmd *cobra.Command, flag string, words func(ctx context.Context, args []string) []string) {
	found := func(cmd *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
		return words(cmd.Context(), args), cobra.ShellCompDirectiveNoFileComp
	}
	if err := cmd.RegisterFlagCompletionFunc(flag, found); err != nil {
		panic(err) // a flag of that name is missing: a fault of this program, found by any test
	}
}

// completeScenes lets the shell complete the argument with YAML files.
func completeScenes(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
	return []string{"yaml", "yml"}, cobra.ShellCompDirectiveFilterFileExt
}

// setupNames are the set-ups of the scene that the arguments name; none where it cannot be read, or would be
// read from standard input.
func setupNames(ctx context.Context, args []string) []string {
	if len(args) > 0 && args[0] == "-" {
		return nil
	}
	in, err := open(ctx, streams{}, args)
	if err != nil {
		return nil
	}
	defer in.Close()
	return in.document.Setups
}
