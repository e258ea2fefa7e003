package main

import (
	"context"
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"scrimshaw/plan/kit"
	"scrimshaw/plan/source"
)

// kitFlags say what the command does.
type kitFlags struct {
	json    bool
	show    string // a photometric file
	convert string // a photometric file
	faults  faultForm
	outputFlags
}

// newKit is the command that says what the catalogue holds, and what photometric files hold.
func newKit(std streams) *cobra.Command {
	var flags kitFlags
	cmd := &cobra.Command{
		Use:   "kit [word] | kit --show FILE | kit --convert FILE NEWFILE",
		Short: "the catalogue of units, modifiers, gels and more; shows and converts photometric files",
		Long: "kit lists the units, modifiers, gels, cloths, stands, materials and sensors that a scene may name.\n" +
			"With a word it lists only the entries that contain the word. The values are typical of a class of unit and\n" + "come from no maker: measure what you hire.\n\n" +
			"--show reads a photometric file, IES LM-63 of 1986 to 2019 (.ies) or EULUMDAT (.ldt), prints its flux, peak,\n" +
			"beam, field and faults, and draws its polar curve with -o. --convert writes it in the other format, by the\n" +
			"ending of the new name. In a scene, output: {ies: lamp.ies} gives a light the flux, the distribution, the\n" + "luminous opening and the power of its file; gamma 0 lies along the aim, C0 along the lamp's right.",
		Example: "  scrimshaw kit\n  scrimshaw kit tungsten\n  scrimshaw kit --json | jq '.[].name'\n" +
			"  scrimshaw kit --show lamp.ies -o polar.svg\n  scrimshaw kit --convert lamp.ies lamp.ldt",
		Args: cobra.MaximumNArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error { return runKit(cmd.Context(), std, args, &flags) },
	}
	cmd.Flags().BoolVar(&flags.json, "json", false, "print JSON: a list of objects, or one object with --show")
	cmd.Flags().StringVar(&flags.show, "show", "", "a photometric file to show")
	cmd.Flags().StringVar(&flags.convert, "convert", "", "a photometric file to write in the other format")
	addOutputFlags(cmd, &flags.outputFlags)
	addFaultFlag(cmd.Flags(), &flags.faults)
	return cmd
}

func runKit(ctx context.Context, std streams, args []string, flags *kitFlags) error {
	switch {
	case flags.show != "" && flags.convert != "":
		return errors.New("give --show or --convert, not both")
	case flags.convert != "":
		return convertFile(ctx, std, args, flags)
	case flags.show != "":
		return showFile(ctx, std, args, flags)
	case len(flags.outputs) > 0:
		return errors.New("-o draws the polar curve of a photometric file: add --show FILE")
	}
	return listKit(std, args, flags.json)
}

// listKit prints the catalogue, or the entries that hold a word.
func listKit(std streams, args []string, asJSON bool) error {
	catalogue, err := kit.Shipped()
	if err != nil {
		return err
	}
	rows := catalogue.List()
	if len(args) == 1 {
		all := rows
		if rows = kit.Matching(all, args[0]); len(rows) == 0 {
			return fmt.Errorf("no entry of the catalogue contains %q%s", args[0], kitHint(all, args[0]))
		}
	}
	if asJSON {
		return writeJSON(std.out, rows)
	}
	_, err = std.out.Write([]byte(kitTable(rows)))
	return err
}

// kitHint offers the nearest name of the catalogue.
func kitHint(rows []kit.Listed, word string) string {
	var names []string
	for _, r := range rows {
		names = append(names, r.Name)
	}
	if near := source.Nearest(word, names); near != "" {
		return "; did you mean " + near + "?"
	}
	return ""
}

// kitTable is the rows as text, a heading a kind.
func kitTable(rows []kit.Listed) string {
	width := 0
	for _, r := range rows {
		width = max(width, len(r.Name))
	}
	var b strings.Builder
	kind := ""
	for _, r := range rows {
		if r.Kind != kind {
			if kind != "" {
				b.WriteByte('\n')
			}
			kind = r.Kind
			fmt.Fprintf(&b, "%s\n", strings.ToUpper(kind))
		}
		fmt.Fprintf(&b, "  %-*s  %s\n", width, r.Name, r.Summary)
	}
	b.WriteString("\nValues are typical of a class of unit and come from no maker; measure what you hire.\n")
	return b.String()
}
