package main

import (
	"github.com/spf13/cobra"

	"scrimshaw/render/font"
	"scrimshaw/symbols"
	"scrimshaw/symbols/ink"
)

// newSymbols is the command that draws the symbol sheet.
func newSymbols(std streams) *cobra.Command {
	var flags outputFlags
	cmd := &cobra.Command{
		Use:     "symbols",
		Short:   "the symbol sheet",
		Long:    "symbols draws every symbol with its name on one sheet.",
		Example: "  scrimshaw symbols\n  scrimshaw symbols -o symbols.svg -o symbols.png",
		Args:    cobra.NoArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			family, err := font.Default()
			if err != nil {
				return err
			}
			sheet := symbols.Sheet(family)
			document := ink.Document{Title: sheet.Title, Language: "en", Pages: []ink.Page{sheet}}
			return writeDocument(cmd.Context(), std, document, family, &flags, "symbols")
		},
	}
	addOutputFlags(cmd, &flags)
	return cmd
}
