package main

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"scrimshaw/plan/kit"
	"scrimshaw/plan/source"
	"scrimshaw/plan/unit"
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
		Short: "what the catalogue holds; photometric files shown and converted",
		Long: "kit lists the units, modifiers, gels, cloths, stands, materials and sensors that a scene may name.\n" +
			"A word keeps the entries that hold it. All values are typical of a class and no maker's.\n\n" +
			"--show reads a photometric file, IES LM-63 (.ies) or EULUMDAT (.ldt), says what light it holds and what\n" +
			"is odd about it, and with -o draws its polar curve. --convert writes one as the other, by the ending\n" +
			"of the new name.",
		Example: "  scrimshaw kit\n  scrimshaw kit tungsten\n  scrimshaw kit --json | jq '.[].name'\n" +
			"  scrimshaw kit --show lamp.ies -o polar.svg\n  scrimshaw kit --convert lamp.ies lamp.ldt",
		Args: cobra.MaximumNArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error { return runKit(cmd.Context(), std, args, &flags) },
	}
	cmd.Flags().BoolVar(&flags.json, "json", false, "a list of objects; of --show, one object")
	cmd.Flags().StringVar(&flags.show, "show", "", "a photometric file to show")
	cmd.Flags().StringVar(&flags.convert, "convert", "", "a photometric file to write in the format of another name")
	addOutputFlags(cmd, &flags.outputFlags)
	addFaultFlag(cmd.Flags(), &flags.faults)
	return cmd
}

func runKit(ctx context.Context, std streams, args []string, flags *kitFlags) error {
	switch {
	case flags.show != "" && flags.convert != "":
		return errors.New("--show and --convert are two commands; give one of them")
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
	rows := kitRows(catalogue)
	if len(args) == 1 {
		if rows = kitMatching(rows, args[0]); len(rows) == 0 {
			return fmt.Errorf("nothing in the catalogue holds %q%s", args[0], kitHint(catalogue, args[0]))
		}
	}
	if asJSON {
		return writeJSON(std.out, rows)
	}
	_, err = std.out.Write([]byte(kitTable(rows)))
	return err
}

// writeJSON prints a value as indented JSON.
func writeJSON(w io.Writer, v any) error {
	enc := json.NewEncoder(w)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	return enc.Encode(v)
}

// kitRow is one entry as it prints.
type kitRow struct {
	Kind string `json:"kind"`
	Name string `json:"name"`
	Says string `json:"says"`
	Doc  string `json:"doc"`
}

// kitRows lists the whole catalogue, kind by kind, in the order of its files.
func kitRows(c *kit.Catalogue) []kitRow {
	var rows []kitRow
	add := func(kind string, e kit.Entry, says string) {
		rows = append(rows, kitRow{Kind: kind, Name: e.Name, Says: says, Doc: e.Doc})
	}
	for _, u := range c.Units {
		add("unit", u.Entry, unitSays(u))
	}
	for _, b := range c.Bulbs {
		add("bulb", b.Entry, fmt.Sprintf("%g W, %g lm, %s", b.Watts, b.Lumens, unit.FormatKelvin(b.Kelvin)))
	}
	for _, m := range c.Modifiers {
		add("modifier", m.Entry, modifierSays(m))
	}
	for _, g := range c.Gels {
		add("gel", g.Entry, gelSays(g))
	}
	for _, cl := range c.Cloth {
		add("cloth", cl.Entry, fmt.Sprintf("passes %.0f %% straight, %.0f %% scattered", 100*cl.Direct, 100*cl.Diffuse))
	}
	for _, s := range c.Stands {
		add("stand", s.Entry, fmt.Sprintf("%.2f to %.2f m, footprint %.2f m, carries %g kg", s.Lowest, s.Highest, s.Footprint, s.Load))
	}
	for _, m := range c.Materials {
		add("material", m.Entry, materialSays(m))
	}
	for _, s := range c.Sensors {
		add("sensor", s.Entry, fmt.Sprintf("%g x %g mm", s.Width, s.Height))
	}
	return rows
}

func unitSays(u *kit.Unit) string {
	white := unit.FormatKelvin(u.Native)
	if u.Kelvin[0] != u.Kelvin[1] {
		white = unit.FormatKelvin(u.Kelvin[0]) + " to " + unit.FormatKelvin(u.Kelvin[1])
	}
	return fmt.Sprintf("%s, %g W, %s", u.Class, u.Watts, white)
}

func modifierSays(m *kit.Modifier) string {
	if m.Beam == 0 {
		return fmt.Sprintf("soft, passes %.0f %%", 100*m.Efficiency)
	}
	return fmt.Sprintf("beam %g°, field %g°, passes %.0f %%", m.Beam, m.Field, 100*m.Efficiency)
}

func gelSays(g *kit.GelData) string {
	parts := []string{fmt.Sprintf("passes %.1f %%", 100*g.Transmittance)}
	if g.Mired != 0 {
		parts = append(parts, fmt.Sprintf("%+.0f mired (set %s)", g.Mired, g.Set))
	}
	if g.Duv != 0 {
		parts = append(parts, fmt.Sprintf("%+.4f Duv", g.Duv))
	}
	return strings.Join(parts, ", ")
}

func materialSays(m *kit.Material) string {
	if m.Transmittance > 0 {
		return fmt.Sprintf("passes %.0f %%", 100*m.Transmittance)
	}
	return fmt.Sprintf("reflects %.0f %%", 100*m.Reflectance)
}

func kitMatching(rows []kitRow, word string) []kitRow {
	word = strings.ToLower(word)
	var kept []kitRow
	for _, r := range rows { // a kind, in the plural too, means all of that kind
		if r.Kind == word || r.Kind+"s" == word {
			kept = append(kept, r)
		}
	}
	if len(kept) > 0 {
		return kept
	}
	for _, r := range rows {
		if strings.Contains(strings.ToLower(r.Kind+" "+r.Name+" "+r.Says+" "+r.Doc), word) {
			kept = append(kept, r)
		}
	}
	return kept
}

// kitHint offers the nearest name of the catalogue.
func kitHint(c *kit.Catalogue, word string) string {
	var names []string
	for _, r := range kitRows(c) {
		names = append(names, r.Name)
	}
	if near := source.Nearest(word, names); near != "" {
		return "; did you mean " + near + "?"
	}
	return ""
}

// kitTable is the rows as text, a heading a kind.
func kitTable(rows []kitRow) string {
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
		fmt.Fprintf(&b, "  %-*s  %s\n", width, r.Name, r.Says)
	}
	b.WriteString("\nValues are typical of a class, not a maker's; measure what you hire.\n")
	return b.String()
}
