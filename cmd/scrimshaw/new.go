package main

import (
	"fmt"
	"os"
	"strings"

	"github.com/spf13/cobra"

	"scrimshaw/samples"
)

// newNew is the command that gives a scene to start from.
func newNew(std streams) *cobra.Command {
	var sample string
	cmd := &cobra.Command{
		Use:   "new [file]",
		Short: "a commented scene to start from",
		Long: "new writes one of the built-in scenes, comments and all, to a file that does not exist yet\n" +
			"or to standard output. The scenes are " + strings.Join(samples.Names(), ", ") + ".",
		Example: "  scrimshaw new mine.yaml\n  scrimshaw new --sample napkin > mine.yaml",
		Args:    atMostOne("file"),
		RunE: func(cmd *cobra.Command, args []string) error {
			text, err := samples.Text(sample)
			if err != nil {
				return err
			}
			if len(args) == 0 || args[0] == "-" {
				_, err := std.out.Write(text)
				return err
			}
			if _, err := os.Lstat(args[0]); err == nil {
				return fmt.Errorf("%s is there already; name a file that is not", args[0])
			}
			if err := writeFiles(cmd.Context(), []output{{path: args[0], data: text}}); err != nil {
				return err
			}
			fmt.Fprintf(std.err, "wrote %s; draw it with: scrimshaw draw %s\n", args[0], args[0])
			return nil
		},
	}
	cmd.Flags().StringVar(&sample, "sample", samples.Default, "which scene")
	completeWith(cmd, "sample", samples.Names()...)
	return cmd
}

// completeWith lets the shell complete a flag's value from a fixed list.
func completeWith(cmd *cobra.Command, flag string, words ...string) {
	complete := func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
		return words, cobra.ShellCompDirectiveNoFileComp
	}
	if err := cmd.RegisterFlagCompletionFunc(flag, complete); err != nil {
		panic(err) // a flag of that name is missing: a fault of this program, found by any test
	}
}

// completeScenes lets the shell complete the argument with YAML files.
func completeScenes(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
	return []string{"yaml", "yml"}, cobra.ShellCompDirectiveFilterFileExt
}
