package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"scrimshaw/plan"
	"scrimshaw/plan/source"
	"scrimshaw/render/list"
	"scrimshaw/render/workbook"
)

// listFlags are the flags of list.
type listFlags struct {
	work    workFlags
	json    bool
	csv     string
	outputs []string
}

// listHelp says what list does, before the keys of its tables.
const listHelp = "list counts what the set-ups of a scene take: of each thing the most that is in use at one time, with its mass and the\n" +
	"volume of its case; then the lamps of each set-up as they are rigged, with what changes since the set-up before, and the circuits.\n" +
	"A figure that is not known is a dash, in JSON null; the totals say what they are without. Nothing of it says that\n" +
	"a thing holds or is safe: whoever rigs decides.\n\n"

// newList is the command that lists what a day takes.
func newList(std streams) *cobra.Command {
	var flags listFlags
	cmd := &cobra.Command{
		Use:               "list [scene.yaml | -]",
		Short:             "what must be in the van, and the lamps and circuits of each set-up",
		Long:              listHelp + listColumns(),
		Example:           "  scrimshaw list mine.yaml\n  scrimshaw list mine.yaml --csv kit > kit.csv\n  scrimshaw list mine.yaml -o mine.xlsx",
		Args:              atMostOne("scene"),
		ValidArgsFunction: completeScenes,
		RunE:              func(cmd *cobra.Command, args []string) error { return runList(cmd.Context(), std, args, &flags) },
	}
	cmd.Flags().StringArrayVar(&flags.work.setups, "setup", nil, "the set-up to list; repeat it for more (default: all)")
	cmd.Flags().BoolVar(&flags.json, "json", false, "print JSON: one object with a list of objects a table, keyed as above")
	cmd.Flags().StringVar(&flags.csv, "csv", "", "print one table as CSV: "+strings.Join(listNames(), ", "))
	cmd.Flags().StringArrayVarP(&flags.outputs, "output", "o", nil, "a workbook to write, .xlsx; - is standard output")
	addFaultFlag(cmd.Flags(), &flags.work.faults)
	complete(cmd, "setup", setupNames)
	completeWith(cmd, "csv", listNames()...)
	completeWith(cmd, "faults", string(formHuman), string(formLine), string(formJSON))
	return cmd
}

// listNames are the names of the tables.
func listNames() (names []string) {
	for _, t := range list.New().Tables() {
		names = append(names, t.Name)
	}
	return names
}

// listColumns explain every key of every table.
func listColumns() string {
	var b strings.Builder
	for _, t := range list.New().Tables() {
		fmt.Fprintf(&b, "Of %s, JSON and CSV have:\n", t.Name)
		for _, c := range t.Columns {
			fmt.Fprintf(&b, "  %-13s %s\n", c.Key, c.Doc)
		}
	}
	return strings.TrimRight(b.String(), "\n")
}

// check refuses what does not go together before anything is computed.
func (f *listFlags) check() error {
	if f.csv != "" && !slices.Contains(listNames(), f.csv) {
		return fmt.Errorf("--csv %s: the tables are %s", f.csv, strings.Join(listNames(), ", "))
	}
	if f.json && f.csv != "" || (f.json || f.csv != "") && len(f.outputs) > 0 {
		return errors.New("--json, --csv and -o are three ways to write the lists; give one of them")
	}
	for _, path := range f.outputs {
		if path != "-" && (!strings.EqualFold(filepath.Ext(path), ".xlsx") || strings.EqualFold(filepath.Base(path), ".xlsx")) {
			return fmt.Errorf("-o %s: write a name that ends in .xlsx", path)
		}
	}
	return givenOnce(f.outputs)
}

// runList prints or writes the lists of a scene.
func runList(ctx context.Context, std streams, args []string, flags *listFlags) error {
	if err := flags.check(); err != nil {
		return err
	}
	w, err := layOut(ctx, std, args, &flags.work)
	if err != nil {
		return err
	}
	defer w.in.Close()
	err = w.in.refuseOverwrite(flags.outputs)
	if err == nil {
		err = w.reportFaults(std, flags.work.faults, source.Warning)
	}
	if err != nil {
		return err
	}
	return w.list(ctx, std, flags)
}

// list lists the set-ups that are laid out.
func (w *work) list(ctx context.Context, std streams, flags *listFlags) error {
	d, feet := list.New(), false
	err := w.each(func(_ int, s *plan.Setup) error {
		feet = s.Feet
		d.Add(s)
		return ctx.Err()
	})
	if err != nil {
		return err
	}
	return writeList(ctx, std, d, feet, flags)
}

// writeList writes the lists in the form that the flags ask for.
func writeList(ctx context.Context, std streams, d *list.Day, feet bool, flags *listFlags) error {
	switch {
	case flags.json:
		return list.WriteJSON(std.out, d)
	case flags.csv != "":
		for _, t := range d.Tables() {
			if t.Name == flags.csv {
				return list.WriteCSV(std.out, t)
			}
		}
	case len(flags.outputs) > 0:
		return writeOutputs(ctx, std, flags.outputs, func(path string, put func(output) error) error {
			return single(path, put, func(b *bytes.Buffer) error { return workbook.Write(b, d) })
		})
	}
	return list.WriteText(std.out, d, feet)
}
