package main

import (
	"bytes"
	"fmt"
	"os"
	"slices"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"scrimshaw/plan/review"
	"scrimshaw/plan/source"
	"scrimshaw/plan/study"
	"scrimshaw/render/contact"
	"scrimshaw/render/font"
	"scrimshaw/render/sheet"
	"scrimshaw/symbols/ink"
)

// drawFlags are the flags of draw.
type drawFlags struct {
	work   workFlags
	output outputFlags
	sheet  sheet.Options
	font   string
	field  string
}

// newDraw is the command that draws the sheets.
func newDraw(std streams) *cobra.Command {
	var flags drawFlags
	cmd := &cobra.Command{
		Use:   "draw [scene.yaml | -]",
		Short: "the lighting diagram, to scale, with computed light",
		Long: "draw lays the scene out, computes its light and draws a sheet a set-up. Without -o it writes a PDF\n" +
			"named for the scene into the working folder. Beside the drawing there are -o NAME.txt, a text with\n" +
			"every value, and -o NAME.contact.png, the whole run on one picture to be read on a phone.",
		Example: "  scrimshaw draw\n  scrimshaw draw mine.yaml -o mine.pdf -o mine.svg -o mine.png\n" +
			"  scrimshaw draw mine.yaml --setup close --paper A3 --scale 1:25\n  scrimshaw draw - -o - --format svg < mine.yaml > mine.svg",
		Args:              atMostOne("scene"),
		ValidArgsFunction: completeScenes,
		RunE:              func(cmd *cobra.Command, args []string) error { return draw(cmd, std, args, &flags) },
	}
	addOutputFlags(cmd, &flags.output)
	addWorkFlags(cmd, &flags.work)
	cmd.Flags().StringVar(&flags.sheet.Paper, "paper", "", "A4 to A1, letter to D, with portrait or landscape (chosen where not given)")
	cmd.Flags().StringVar(&flags.sheet.Scale, "scale", "", `1:50, or 1/4" for a quarter inch to the foot (the largest that fits where not given)`)
	cmd.Flags().StringVar(&flags.sheet.Levels, "levels", "", "what contours are lettered in: lx, fc, stop, stops")
	cmd.Flags().StringVar(&flags.field, "field", "", "what is mapped: floor, or face, the dome at face height")
	cmd.Flags().StringVar(&flags.work.plane, "plane", "", "maps a plane in place of the floor: a height above it, like 0.75, or a wall, like kitchen.left")
	cmd.Flags().StringVar(&flags.sheet.Theme, "theme", "", "the look")
	cmd.Flags().StringVar(&flags.sheet.Tint, "tint", "", "the ground of the map: bands, or smooth, a continuous tint")
	cmd.Flags().StringVar(&flags.font, "font", "", "a TrueType file to letter with, in place of the built-in face")
	cmd.Flags().StringVar(&flags.sheet.Date, "date", "", "the date on the sheet where the scene gives none: today, or 2031-05-14")
	completeWith(cmd, "levels", "lx", "fc", "stop", "stops")
	completeWith(cmd, "field", "floor", "face")
	completeWith(cmd, "theme", sheet.ThemeNames()...)
	completeWith(cmd, "tint", sheet.TintNames()...)
	return cmd
}

func draw(cmd *cobra.Command, std streams, args []string, flags *drawFlags) error {
	w, err := prepare(cmd.Context(), std, args, &flags.work, study.Options{})
	if err != nil {
		return err
	}
	defer w.in.Close()
	if err := w.refuse(std, flags.work.faults, source.Warning); err != nil {
		return err
	}
	paths, err := flags.output.check(w.in.name, "txt", contactSheet)
	if err != nil {
		return err
	}
	if flags.sheet.Font, err = typeface(flags.font); err != nil {
		return err
	}
	if flags.sheet.Date, err = dateOf(flags.sheet.Date, w.in.document.Env.Today); err != nil {
		return err
	}
	inputs := make([]sheet.Input, len(w.studies))
	for i, s := range w.studies {
		if inputs[i], err = sheetInput(s, flags.field); err != nil {
			return err
		}
		inputs[i].Watch = append(inputs[i].Watch, uncounted(w.in.log.All(), s.Setup.Name)...)
	}
	document, faults := sheet.ComposeAll(inputs, flags.sheet)
	log := &source.Log{}
	for _, f := range faults {
		log.Add(f)
	}
	if found := log.All(); len(found) > 0 {
		if err := printFaults(std.err, flags.work.faults, found); err != nil {
			return err
		}
	}
	if log.Failed() {
		return &exitError{status: exitWrong}
	}
	if err := cmd.Context().Err(); err != nil {
		return err
	}
	return writeSheets(std, paths, document, inputs, flags)
}

// writeSheets writes the sheets of a run in every form that was asked for.
func writeSheets(std streams, paths []string, document ink.Document, inputs []sheet.Input, flags *drawFlags) error {
	var files []output
	for _, path := range paths {
		var made []output
		var err error
		switch flags.output.formOf(path) {
		case "txt":
			made = []output{{path: path, data: []byte(sheet.Text(flags.sheet, inputs...))}}
		case contactSheet:
			made, err = contactFile(path, document, inputs, flags.sheet)
		default:
			made, err = encode(document, path, flags.sheet.Font, &flags.output)
		}
		if err != nil {
			return err
		}
		files = append(files, made...)
	}
	return finish(std, files)
}

// contactFile draws a run again, for a phone.
func contactFile(path string, document ink.Document, inputs []sheet.Input, o sheet.Options) ([]output, error) {
	strips, look := sheet.Strips(inputs, o, len(document.Pages)), o.Look()
	return single(path, func(b *bytes.Buffer) error {
		return contact.Write(b, strips, document, contact.Options{Font: o.Font, Paper: look.Paper, Ink: look.Ink})
	})
}

// dateOf is the date that the sheets print where the scene gives none: none unless one is asked
// for, so that the same scene gives the same bytes on any day.
func dateOf(asked string, epoch time.Time) (string, error) {
	switch {
	case asked == "today":
		return time.Now().Format(time.DateOnly), nil
	case asked != "":
		if _, err := time.Parse(time.DateOnly, asked); err != nil {
			return "", fmt.Errorf("--date %s: a date is today, or written like 2031-05-14", asked)
		}
		return asked, nil
	case epoch.IsZero():
		return "", nil
	}
	return epoch.Format(time.DateOnly), nil
}

// typeface reads the font a flag names, or returns the built-in one.
func typeface(path string) (*font.Family, error) {
	if path == "" {
		return font.Default()
	}
	regular, err := os.ReadFile(path)
	if err != nil {
		return nil, plainOpenError(err, path)
	}
	family, err := font.Load(regular, nil)
	if err != nil {
		return nil, fmt.Errorf("--font %s: %w", path, err)
	}
	return family, nil
}

// watch is what a sheet prints of the review: warnings only.
func watch(s *study.Study) []string {
	var lines []string
	for _, d := range review.Check(s.Setup, s.Readings.Readings) {
		if d.Severity >= source.Warning {
			lines = append(lines, d.Message)
		}
	}
	return lines
}

// uncounted says in a sentence what a scene gives and the figures leave out, for the sheet: what was told
// of the scene itself and of a set-up.
func uncounted(found []source.Diagnostic, setup string) []string {
	var parts []string
	for _, d := range found {
		if d.Code != source.CodeLater || d.Severity != source.Warning || d.Setup != "" && d.Setup != setup {
			continue
		}
		path := strings.Split(d.Path, ".")
		part := path[len(path)-1]
		if len(path) > 2 {
			part += " of " + path[1]
		}
		if !slices.Contains(parts, part) {
			parts = append(parts, part)
		}
	}
	if len(parts) == 0 {
		return nil
	}
	return []string{"Written, but not in the figures: " + strings.Join(parts, ", ")}
}
