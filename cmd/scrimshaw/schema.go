package main

import (
	"encoding/json"

	"github.com/spf13/cobra"

	"scrimshaw/plan/scene"
)

// newSchema is the command that prints the language for editors and for readers.
func newSchema(std streams) *cobra.Command {
	var text bool
	cmd := &cobra.Command{
		Use:     "schema",
		Short:   "the language as a JSON Schema, for editors",
		Long:    "schema prints the JSON Schema of the scene language, with which an editor checks and completes a scene.\nWith --text it prints the reference of every key instead, with an example and the default.",
		Example: "  scrimshaw schema > scrimshaw.schema.json\n  scrimshaw schema --text | less",
		Args:    cobra.NoArgs,
		RunE: func(*cobra.Command, []string) error {
			if text {
				return scene.Reference(std.out)
			}
			enc := json.NewEncoder(std.out)
			enc.SetIndent("", "  ")
			return enc.Encode(scene.Schema())
		},
	}
	cmd.Flags().BoolVar(&text, "text", false, "print the reference of every key")
	return cmd
}
