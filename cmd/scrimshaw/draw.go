package main

import (
	"context"
	"fmt"
	"slices"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"scrimshaw/plan"
	"scrimshaw/plan/source"
	"scrimshaw/plan/teach"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
	"scrimshaw/render/font"
	"scrimshaw/render/png"
	"scrimshaw/render/sheet"
	"scrimshaw/symbols/ink"
)

// drawFormats are the forms that only draw writes: every value as text, and the run on one picture.
var drawFormats = []string{"txt", contactSheet}

// drawFlags are the flags of draw.
type drawFlags struct {
	work   workFlags
	output outputFlags
	sheet  sheet.Options
	font   string
	notes  string
	since  string     // the file of the sheets that the crew holds
	pair   teach.Pair // that notes are about
}

// newDraw is the command that draws the sheets.
func newDraw(std streams) *cobra.Command {
	var flags drawFlags
	cmd := &cobra.Command{
		Use:   "draw [scene.yaml | -]",
		Short: "the lighting diagram, to scale, with computed light",
		Long: "draw lays the scene out, computes its light and draws one sheet for each set-up. Without -o it writes a PDF\n" +
			"named for the scene into the working folder. A file of several set-ups becomes a packet: a cover with the contents before them, and\n" +
			"behind them a page that matches faces from set-up to set-up, and the lists of the day; --setup leaves those out, and --for picks\n" +
			"what one reader has use for. -o NAME.txt writes every value as text, -o NAME.contact.png\n" +
			"puts all set-ups into one picture that a phone reads without enlarging. A .svg or .png holds one sheet:\n" +
			"of several set-ups the cover is NAME.png and each of them NAME-SETUP.png; second pages are NAME-SETUP.face.png,\n" +
			"notes NAME-SETUP.teach.png, and of the day NAME.matching.png, NAME.kit.png, NAME.lamps.png and NAME.circuits.png.\n\n" + "Paper and scale are chosen so that the plan fills the page. A set too large for the paper you ask for comes\n" + "in parts with match lines. A sheet carries a date only if the scene, --date or SOURCE_DATE_EPOCH gives one.\n" + "--since a file that was drawn before marks what is not as on the sheets of that one: a list of it and of readings that moved by more than a\n" +
			"third of a stop, clouds on the plans, bars beside rows of lists. Set-ups are held to those of the same name; what moved by less than 1 cm\n" +
			"or half a degree, paper, scale, date and units revise nothing; materials, gels and cloth of kit files are compared by their names.\n" +
			"The sheet strikes through each figure that a key of the scene could change and that is not computed yet.",
		Example: "  scrimshaw draw\n  scrimshaw draw mine.yaml -o mine.pdf -o mine.svg -o mine.png\n" +
			"  scrimshaw draw mine.yaml --setup close --paper A3 --scale 1:25\n  scrimshaw draw mine.yaml --notes teach -o mine.pdf\n  scrimshaw draw - -o - --format svg < mine.yaml > mine.svg",
		Args:              atMostOne("scene"),
		ValidArgsFunction: completeScenes,
		RunE:              func(cmd *cobra.Command, args []string) error { return draw(cmd.Context(), std, args, &flags) },
	}
	addOutputFlags(cmd, &flags.output, drawFormats...)
	addWorkFlags(cmd, &flags.work)
	cmd.Flags().StringVar(&flags.sheet.Paper, "paper", "", "A4 to A1, letter to D, with portrait or landscape, like \"letter portrait\" (default: chosen for the plan)")
	cmd.Flags().StringVar(&flags.sheet.Scale, "scale", "", `1:50, or 1/4" for a quarter inch to the foot (default: the largest that fits)`)
	cmd.Flags().StringVar(&flags.sheet.Levels, "levels", "", "the unit of the contours: lx, fc, stop (the T-stop), stops (from the working stop)")
	cmd.Flags().StringVar(&flags.sheet.Field, "field", "", "the map: floor, or face, which is an incident dome at face height, turned toward the first camera, on every floor")
	cmd.Flags().StringVar(&flags.work.plane, "plane", "", "map a level plane at a height above the floor, like 0.75, or draw a wall in elevation, like kitchen.left")
	cmd.Flags().StringVar(&flags.sheet.Theme, "theme", "", "the look: "+strings.Join(sheet.ThemeNames(), ", ")+"; ink is black on white for a copier, night dim and red for a phone on set")
	cmd.Flags().StringVar(&flags.sheet.Tint, "tint", "", "the tint of the map: bands; smooth, which has no steps; or colour, the colour of the light against the camera's white with a line every 25 mired")
	cmd.Flags().StringVar(&flags.sheet.Beams, "beams", "", "whose beams and throws are drawn whole: all, main (key and fill) or none; the rest get a stub (default: all of up to six lights, else main)")
	cmd.Flags().StringVar(&flags.notes, "notes", "", "teach: a page that shows by angles, distances and sentences what the light on a face does; the sentences in .txt and .html, too"+notesHelp)
	cmd.Flags().StringVar(&flags.sheet.For, "for", "", "who reads it: electric (plans, lamps, circuits, their part of the kit), grip (plans without light, grip, stands and rigging), camera (readings, matching), rental (lists alone) or class (notes to learn from)")
	addSinceFlag(cmd, &flags.since)
	cmd.Flags().StringVar(&flags.font, "font", "", "a TrueType file to letter the sheet with instead of the built-in typeface")
	cmd.Flags().StringVar(&flags.sheet.Date, "date", "", "the date on the sheet if the scene gives none: today, or one like 2031-05-14")
	completeWith(cmd, "levels", "lx", "fc", "stop", "stops")
	completeWith(cmd, "field", term.Words(term.Maps)...)
	completeWith(cmd, "theme", sheet.ThemeNames()...)
	completeWith(cmd, "tint", sheet.TintNames()...)
	completeWith(cmd, "beams", sheet.BeamNames()...)
	completeWith(cmd, "notes", sheet.NotesNames()...)
	completeWith(cmd, "for", sheet.ReaderNames()...)
	return cmd
}

// draw checks all that was asked for before it computes light, which may take minutes.
func draw(ctx context.Context, std streams, args []string, flags *drawFlags) error {
	w, err := layOut(ctx, std, args, &flags.work)
	if err != nil {
		return err
	}
	defer w.in.Close()
	if err := w.reportFaults(std, flags.work.faults, source.Warning); err != nil {
		return err
	}
	paths, err := flags.check(ctx, w.in)
	if err != nil {
		return err
	}
	if err := w.fit(std, flags, paths); err != nil {
		return err
	}
	if err := w.checkPair(flags.pair); err != nil {
		return err
	}
	flags.sheet.Packet = len(w.names) > 1 && len(flags.work.setups) == 0 && flags.holdsDay(paths)
	if flags.sheet.Since, err = w.readSince(ctx, std, args, flags); err != nil {
		return err
	}
	d := newDrawing(len(w.names), paths, flags)
	if err := w.compose(ctx, std, d, &flags.work); err != nil {
		return err
	}
	if err := reportFaults(std, flags.work.faults, d.faults); err != nil {
		return err
	}
	if err := writeOutputs(ctx, std, paths, func(path string, put func(output) error) error { return d.files(path, flags, put) }); err != nil {
		return err
	}
	if slices.Contains(paths, "-") {
		d.reportOmittedPages(std, flags.output.formOf("-"), w.in.name)
	}
	return nil
}

// readSince gives what the sheets before say, with the readings of those whose plans are drawn; nil where nobody asks.
func (w *work) readSince(ctx context.Context, std streams, args []string, flags *drawFlags) (*sheet.Since, error) {
	old, err := w.openSince(ctx, std, args, flags.since, &flags.work)
	if old == nil || err != nil {
		return nil, err
	}
	defer old.in.Close()
	if flags.sheet.PicksPlans() {
		err = old.readings(ctx, std, flags.work.quality, flags.sheet.Matches())
	}
	return old.sheets, err
}

// holdsDay says whether an output holds more than one picture, or is more than one file: a picture down a pipe is the plan.
func (f *drawFlags) holdsDay(paths []string) bool {
	return slices.ContainsFunc(paths, func(p string) bool { return p != "-" || !onePage(f.output.formOf(p)) })
}

// fit reports sheets that nobody can draw.
func (w *work) fit(std streams, flags *drawFlags, paths []string) error {
	var options, sizes []source.Diagnostic
	err := w.each(func(_ int, s *plan.Setup) error {
		options = append(options, sheet.Check([]*plan.Setup{s}, flags.sheet)...)
		bare, err := unlitSheet(s, &flags.work)
		if err != nil {
			return err
		}
		sizes = append(sizes, sheet.Fits([]sheet.Input{bare}, flags.sheet)...)
		return flags.fitPicture(bare, paths)
	})
	if faulty := reportFaults(std, flags.work.faults, options); faulty != nil {
		return faulty
	}
	if err != nil {
		return err
	}
	return reportFaults(std, flags.work.faults, sizes)
}

// fitPicture refuses a resolution at which not even the plan by itself is a picture, before its light is computed.
func (f *drawFlags) fitPicture(bare sheet.Input, paths []string) error {
	if !slices.ContainsFunc(paths, func(p string) bool { return f.output.formOf(p) == "png" }) {
		return nil
	}
	wide, high, ok := sheet.LeastPage(bare, f.sheet)
	if !ok {
		return nil
	}
	if _, _, err := png.Size(&ink.Page{Width: wide, Height: high}, png.Options{DPI: f.output.dpi}); err != nil {
		return fmt.Errorf("--dpi %g is too much for a sheet of %.0f by %.0f mm: ask for less, or for smaller paper", f.output.dpi, wide, high)
	}
	return nil
}

// unlitSheet is what will be drawn, without its light: the plan, or the wall that was asked for.
func unlitSheet(s *plan.Setup, flags *workFlags) (sheet.Input, error) {
	in := sheet.Input{Setup: s}
	planes, err := planesOf(s, flags.plane)
	for _, p := range planes {
		if room, wall, isWall := strings.Cut(p.Wall, "."); isWall {
			in.Elevation = &sheet.Elevation{Room: room, Wall: wall}
		}
	}
	return in, err
}

// check returns the outputs and reads the flags whose values are not words that the sheet knows.
func (f *drawFlags) check(ctx context.Context, in *input) (paths []string, err error) {
	if paths, err = f.output.check(in.name, drawFormats...); err != nil {
		return nil, err
	}
	if err := in.refuseOverwrite(paths); err != nil {
		return nil, err
	}
	if f.work.plane != "" && f.sheet.Field == string(term.FaceMap) {
		return nil, fmt.Errorf("--plane %s and --field face: a sheet has one map; leave one of them out", f.work.plane)
	}
	f.sheet.Notes, f.pair = splitNotes(f.notes)
	if f.sheet.Font, err = typeface(ctx, f.font); err != nil {
		return nil, err
	}
	f.sheet.Date, err = dateOf(f.sheet.Date, in.document.Env.Today)
	return paths, err
}

// reportOmittedPages says that standard output holds one page where there are more.
func (d *drawing) reportOmittedPages(std streams, form, name string) {
	if pages := len(d.document.Pages); pages > 1 && onePage(form) {
		fmt.Fprintf(std.err, "standard output holds the first of %d pages; for all of them: --format pdf, or -o %s.%s\n", pages, name, form)
	}
}

// dateOf is the date that the sheets print where the scene gives none: none unless one is asked
// for, so that the same scene gives the same bytes on any day.
func dateOf(asked string, epoch time.Time) (string, error) {
	switch {
	case asked == "today":
		return time.Now().Format(time.DateOnly), nil
	case asked != "":
		date, err := unit.ParseDate(asked)
		if err != nil {
			return "", fmt.Errorf("--date %s: write today, or a date like 2031-05-14", asked)
		}
		return date, nil
	case epoch.IsZero():
		return "", nil
	}
	return epoch.Format(time.DateOnly), nil
}

// typeface reads the font a flag names, or returns the built-in one.
func typeface(ctx context.Context, path string) (*font.Family, error) {
	if path == "" {
		return font.Default()
	}
	regular, err := readNamed(ctx, path, "typeface")
	if err != nil {
		return nil, err
	}
	family, err := font.Load(regular, nil)
	if err != nil {
		return nil, fmt.Errorf("--font %s: %w", path, err)
	}
	return family, nil
}
