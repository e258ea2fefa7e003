package main

import (
	"context"
	"errors"
	"fmt"
	"math"
	"path/filepath"
	"slices"
	"strings"

	"scrimshaw/plan/photometry"
	"scrimshaw/plan/photometry/files"
	"scrimshaw/plan/source"
	"scrimshaw/plan/unit"
	"scrimshaw/render/font"
	"scrimshaw/render/polar"
	"scrimshaw/symbols/ink"
)

// showFile says what light a photometric file holds, and draws it where -o asks for it.
func showFile(ctx context.Context, std streams, args []string, flags *kitFlags) error {
	if len(args) > 0 {
		return fmt.Errorf("--show takes one file; %q is one too many", args[0])
	}
	var drawTo []string
	if len(flags.outputs) > 0 {
		var err error
		if drawTo, err = flags.check("polar"); err != nil {
			return err
		}
	}
	data, found, err := openMeasured(ctx, std, flags.show, flags.faults)
	if err != nil {
		return err
	}
	s, err := newShown(flags.show, data, found)
	if err != nil {
		return err
	}
	toStream := slices.Contains(drawTo, "-")
	switch {
	case toStream && flags.json:
		return errors.New("-o - and --json both write to standard output; give one of them")
	case flags.json:
		err = writeJSON(std.out, s)
	case !toStream:
		_, err = std.out.Write([]byte(s.text()))
	}
	if err != nil || len(drawTo) == 0 {
		return err
	}
	family, err := font.Default()
	if err != nil {
		return err
	}
	page := polar.Draw(s.chart(), family)
	return writeDocument(ctx, std, ink.Document{Title: page.Title, Language: "en", Pages: []ink.Page{page}}, family, &flags.outputFlags, "polar")
}

// openMeasured reads a photometric file and prints what is wrong or odd about it.
func openMeasured(ctx context.Context, std streams, name string, form faultForm) (files.Data, []source.Diagnostic, error) {
	text, err := readMeasured(ctx, std, name)
	if err != nil {
		return nil, nil, err
	}
	log := &source.Log{}
	data, ok := files.Read(&source.File{Name: filepath.ToSlash(name), Text: text}, log)
	if err := writeFaults(std, form, log.All()); err != nil {
		return nil, nil, err
	}
	if !ok {
		return nil, nil, &exitError{status: exitWrong}
	}
	return data, log.All(), nil
}

// readMeasured gives the bytes of a photometric file; "-" is standard input.
func readMeasured(ctx context.Context, std streams, name string) ([]byte, error) {
	if name == "-" {
		return readBounded(std.in, "standard input")
	}
	return readNamed(ctx, name, "photometric")
}

// shown is what --show says of a file. Angles are degrees, across (in the plane of C0) and along
// (C90); lengths are metres.
type shown struct {
	File     string     `json:"file"`
	Format   string     `json:"format"`
	Name     string     `json:"name"`
	Type     string     `json:"type"`
	Planes   int        `json:"planes"`
	Angles   [2]float64 `json:"angles"` // the first and the last angle from the axis, or vertical angle
	Flux     float64    `json:"lumens"`
	Peak     float64    `json:"candela"`
	PeakAt   [2]float64 `json:"peakAt"` // gamma and C
	Beam     [2]float64 `json:"beam"`
	Field    [2]float64 `json:"field"`
	Rated    *float64   `json:"lampLumens"` // null: absolute photometry
	Ratio    *float64   `json:"efficiency"`
	Watts    *float64   `json:"watts"`
	Opening  opening    `json:"opening"`
	Warnings []warning  `json:"warnings"`

	source photometry.Source
}

type opening struct {
	Form   string  `json:"form"`
	Width  float64 `json:"width"`
	Height float64 `json:"height"`
}

type warning struct {
	Line    int    `json:"line"`
	Code    string `json:"code"`
	Message string `json:"message"`
}

// newShown takes the figures of a file.
func newShown(name string, d files.Data, found []source.Diagnostic) (*shown, error) {
	s, err := d.Source()
	if err != nil {
		return nil, err
	}
	n, err := d.Nodes()
	if err != nil {
		return nil, err
	}
	out := &shown{
		File: filepath.ToSlash(name), Format: d.Format(), Name: d.Name(), Type: n.System.String(), source: s,
		Planes: len(n.Horizontal), Angles: [2]float64{n.Vertical[0], n.Vertical[len(n.Vertical)-1]},
		Flux: rounded(s.Flux, 3), Peak: rounded(s.Peak(), 3), PeakAt: peakAt(s), Warnings: []warning{},
		Opening: opening{formWords[s.Opening.Form], s.Opening.Width, s.Opening.Height},
	}
	if last := len(n.Horizontal) - 1; n.System == photometry.TypeC && last > 0 && n.Horizontal[last]-n.Horizontal[0] == 360 {
		out.Planes-- // the first, once more
	}
	out.Beam = pairOf(photometry.BeamAngle(s.Distribution))
	out.Field = pairOf(photometry.FieldAngle(s.Distribution))
	if rated := d.Rated(); rated > 0 {
		ratio := rounded(s.Flux/rated, 6)
		out.Rated, out.Ratio = &rated, &ratio
	}
	if watts := d.Power(); watts > 0 {
		out.Watts = &watts
	}
	for _, f := range found {
		out.Warnings = append(out.Warnings, warning{f.Span.Line, f.Code, f.Message})
	}
	return out, nil
}

// rounded is a figure without digits that nobody measured.
func rounded(v float64, decimals int) float64 {
	power := math.Pow10(decimals)
	return math.Round(v*power) / power
}

func pairOf(across, along float64) [2]float64 {
	return [2]float64{rounded(across, 3), rounded(along, 3)}
}

// formWords are the forms of a luminous opening in words.
var formWords = [...]string{photometry.Point: "point", photometry.Rectangle: "rectangle", photometry.Disc: "disc", photometry.Tube: "tube", photometry.Sphere: "sphere"}

// peakAt looks for the direction of the greatest intensity, to a degree, nearest to the axis.
func peakAt(s photometry.Source) (at [2]float64) {
	most := -1.0
	for gamma := range 181 {
		for c := range 360 {
			v := s.Intensity(photometry.Direction(float64(gamma), float64(c)))
			if v > most*(1+1e-9) {
				most, at = v, [2]float64{float64(gamma), float64(c)}
			}
			if gamma == 0 || gamma == 180 {
				break
			}
		}
	}
	return at
}

// title is what the file calls its luminaire, else the file's own name.
func (s *shown) title() string {
	if s.Name != "" {
		return s.Name
	}
	return filepath.Base(s.File)
}

// facts are the figures as they print.
func (s *shown) facts() [][2]string {
	facts := [][2]string{
		{"flux", unit.Figures(s.Flux) + " lm"},
		{"peak", unit.Figures(s.Peak) + " cd, " + s.peakPlace()},
		{"beam, to 50 %", bothWays(s.Beam)},
		{"field, to 10 %", bothWays(s.Field)},
	}
	if s.Rated != nil {
		facts = append(facts, [2]string{"efficiency", unit.FormatPercent(*s.Ratio) + " of " + unit.Figures(*s.Rated) + " lm"})
	} else {
		facts = append(facts, [2]string{"efficiency", "absolute photometry"})
	}
	if s.Watts != nil {
		facts = append(facts, [2]string{"power", unit.FormatPower(*s.Watts) + ", " + unit.Figures(s.Flux / *s.Watts) + " lm/W"})
	}
	return append(facts, [2]string{"opening", s.Opening.words()}, [2]string{"measured", s.measured()})
}

func (s *shown) peakPlace() string {
	_, axial := s.source.Distribution.(photometry.Axial)
	switch {
	case s.PeakAt[0] == 0:
		return "on the axis"
	case axial, s.PeakAt[0] == 180:
		return unit.FormatAngle(s.PeakAt[0]) + " off the axis"
	}
	return unit.FormatAngle(s.PeakAt[0]) + " off the axis at C" + unit.FormatNumber(s.PeakAt[1])
}

// bothWays prints an angle that may differ between the planes of C0 and of C90.
func bothWays(a [2]float64) string {
	if a[0] == 360 && a[1] == 360 {
		return "none, it goes out behind"
	}
	if math.Abs(a[0]-a[1]) < 0.05 {
		return unit.FormatAngle(a[0])
	}
	return unit.FormatAngle(a[0]) + " at C0, " + unit.FormatAngle(a[1]) + " at C90"
}

func (o opening) words() string {
	switch {
	case o.Width == 0:
		return o.Form
	case o.Height == 0:
		return o.Form + ", " + unit.FormatLength(o.Width, false)
	}
	return fmt.Sprintf("%s, %.2f x %.2f m (C0, C90)", o.Form, o.Width, o.Height)
}

// measured is the system and the reach of the table.
func (s *shown) measured() string {
	planes := "1 plane"
	if s.Planes != 1 {
		planes = fmt.Sprintf("%d planes", s.Planes)
	}
	return fmt.Sprintf("type %s, %s, %s to %s", s.Type, planes, unit.FormatAngle(s.Angles[0]), unit.FormatAngle(s.Angles[1]))
}

// text is the figures as a table.
func (s *shown) text() string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s\n%s\n", s.title(), s.Format)
	for _, f := range s.facts() {
		fmt.Fprintf(&b, "  %-14s  %s\n", f[0], f[1])
	}
	return b.String()
}

// chart is the figures as a drawing.
func (s *shown) chart() polar.Chart {
	c := polar.Chart{Title: s.title(), Subtitle: filepath.Base(s.File) + ", " + s.Format, Source: s.source, Facts: s.facts()}
	for _, w := range s.Warnings {
		c.Notes = append(c.Notes, fmt.Sprintf("Line %d: %s.", w.Line, w.Message))
	}
	return c
}
