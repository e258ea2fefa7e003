package main

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"scrimshaw/plan/source"
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
		RunE:    func(cmd *cobra.Command, args []string) error { return writeSample(cmd.Context(), std, args, sample) },
	}
	cmd.Flags().StringVar(&sample, "sample", samples.Default, "which scene: "+strings.Join(samples.Names(), ", "))
	completeWith(cmd, "sample", samples.Names()...)
	return cmd
}

// writeSample writes a built-in scene to a file that is not there yet, or to standard output.
func writeSample(ctx context.Context, std streams, args []string, sample string) error {
	text, err := samples.Text(sample)
	if err != nil {
		return err
	}
	if len(args) == 0 || args[0] == "-" {
		_, err := std.out.Write(text)
		return err
	}
	if name := sceneName(args[0]); name != args[0] {
		return fmt.Errorf("a scene is a YAML file, and %s does not end in .yaml; name it %s", args[0], name)
	}
	if _, err := os.Lstat(args[0]); err == nil {
		return fmt.Errorf("%s exists already; choose another name", args[0])
	}
	if _, err := write(ctx, std, only(output{path: args[0], data: text})); err != nil {
		return err
	}
	name := source.Printable(args[0])
	fmt.Fprintf(std.err, "wrote %s; draw it with: scrimshaw draw %s\n", name, name)
	return nil
}

// sceneName is a path with the ending of a scene in the place of any other.
func sceneName(path string) string {
	ending := filepath.Ext(path)
	if lower := strings.ToLower(ending); lower == ".yaml" || lower == ".yml" {
		return path
	}
	return strings.TrimSuffix(path, ending) + ".yaml"
}
