package main

import (
	"context"
	"errors"
	"fmt"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"scrimshaw/plan/kit"
	"scrimshaw/plan/source"
	"scrimshaw/samples"
)

// kitFlags say what the command does.
type kitFlags struct {
	json    bool
	example bool
	lay     string // a kit file
	choice  kitChoice
	show    string // a photometric file
	convert string // a photometric file
	faults  faultForm
	outputFlags
}

// newKit is the command that says what the catalogue holds, and what photometric files hold.
func newKit(std streams) *cobra.Command {
	var flags kitFlags
	cmd := &cobra.Command{
		Use:   "kit [name or words] | kit --show FILE | kit --convert FILE NEWFILE",
		Short: "the catalogue of units, modifiers, gels and more; shows and converts photometric files",
		Long: "kit lists the units, modifiers, gels, cloths, stands, grip, materials, sensors and filters that a scene may name, and the\n" +
			"clamps, bags, cable and distribution of a van. With the name of a unit it shows all of that unit: its light with each\n" +
			"modifier that fits, flux and lux at 3 m, flooded and at spot; what it draws, weighs and comes with. With a kind (units)\n" +
			"or any other words it lists the entries that are of it or contain them, and --class, --watts, --battery and --mount choose\n" +
			"among units. The values are typical of a class of unit and come from no maker: measure what you hire.\n\n" +
			"--lay reads a kit file of your own, says what is wrong or implausible in it, and lays it over the catalogue, as\n" +
			"kit: my-kit.yaml does in a scene: a new name adds an entry, a known one replaces it whole. --example prints a\n" + "commented one to start from.\n\n" +
			"--show reads a photometric file, IES LM-63 of 1986 to 2019 (.ies) or EULUMDAT (.ldt), prints its flux, peak,\n" +
			"beam, field and faults, and draws its polar curve with -o. --convert writes it in the other format, by the\n" +
			"ending of the new name. In a scene, output: {ies: lamp.ies} gives a light the flux, the distribution, the\n" + "luminous opening and the power of its file; gamma 0 lies along the aim, C0 along the lamp's right.",
		Example: "  scrimshaw kit\n  scrimshaw kit led-point-300-bicolour\n  scrimshaw kit tungsten --watts 1000\n  scrimshaw kit --battery --class panel\n  scrimshaw kit --example > my-kit.yaml\n  scrimshaw kit --lay my-kit.yaml our-\n  scrimshaw kit --json | jq '.[].name'\n" +
			"  scrimshaw kit --show lamp.ies -o polar.svg\n  scrimshaw kit --convert lamp.ies lamp.ldt",
		RunE: func(cmd *cobra.Command, args []string) error { return runKit(cmd.Context(), std, args, &flags) },
	}
	cmd.Flags().BoolVar(&flags.json, "json", false, "print JSON with all figures: a list of objects, or one object with --show")
	addKitChoice(cmd, &flags.choice)
	cmd.Flags().StringVar(&flags.lay, "lay", "", "a kit file of your own, laid over the catalogue")
	cmd.Flags().BoolVar(&flags.example, "example", false, "print a commented kit file to start from")
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
	case flags.example:
		_, err := std.out.Write(samples.OwnKit())
		return err
	}
	catalogue, err := openKit(ctx, std, flags)
	if err != nil {
		return err
	}
	return listKit(std, catalogue, args, flags)
}

// openKit is the catalogue, with a file of the user's own over it where there is one.
func openKit(ctx context.Context, std streams, flags *kitFlags) (*kit.Catalogue, error) {
	shipped, err := kit.Shipped()
	if err != nil || flags.lay == "" {
		return shipped, err
	}
	text, err := readNamed(ctx, flags.lay, "kit")
	if err != nil {
		return nil, err
	}
	log := &source.Log{}
	own := shipped.With([]*source.File{{Name: filepath.ToSlash(flags.lay), Text: text}}, log)
	return own, reportFaults(std, flags.faults, log.All())
}

// listKit prints the catalogue, the entries that are chosen from it, or one unit.
func listKit(std streams, catalogue *kit.Catalogue, args []string, flags *kitFlags) error {
	rows := catalogue.List()
	if words := strings.Join(args, " "); words != "" {
		all := rows
		if rows = kit.Matching(all, words); len(rows) == 0 {
			return fmt.Errorf("no entry of the catalogue contains %q%s", words, kitHint(all, words))
		}
	}
	rows, err := flags.choice.of(catalogue, rows)
	if err != nil {
		return err
	}
	if flags.json {
		return writeJSON(std.out, catalogue.WithFigures(rows))
	}
	text := kitTable(rows)
	if len(args) == 1 && len(rows) == 1 && rows[0].Kind == "unit" {
		text = unitPage(catalogue.Unit(rows[0].Name), catalogue)
	}
	_, err = std.out.Write([]byte(text))
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

// kitFooter stands below what the catalogue says.
const kitFooter = "Values are typical of a class of unit and come from no maker; measure what you hire.\n"

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
	b.WriteString("\n" + kitFooter)
	return b.String()
}
