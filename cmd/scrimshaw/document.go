package main

import (
	"bytes"
	"cmp"
	"context"
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"scrimshaw/render/font"
	"scrimshaw/render/page"
	"scrimshaw/render/pdf"
	"scrimshaw/render/png"
	"scrimshaw/render/svg"
	"scrimshaw/symbols/ink"
)

// The formats a document can be written in, by the ending of a name.
var formats = []string{"pdf", "svg", "png", "html"}

// onePage says whether a format holds a single page.
func onePage(format string) bool { return format == "svg" || format == "png" }

// contactSheet is the format of all pages of a run on one picture for a phone.
const contactSheet = "contact.png"

// The resolutions that --dpi takes.
const (
	minDPI = 36
	maxDPI = 1100 // the most that a picture of A4 or letter can have
)

// outputFlags say where a drawing goes and in which form.
type outputFlags struct {
	outputs []string
	format  string // of standard output; "" is the default
	dpi     float64
}

// addOutputFlags adds the flags of every command that draws. more are the forms that this one writes beside the
// common ones.
func addOutputFlags(cmd *cobra.Command, flags *outputFlags, more ...string) {
	formats := append(append([]string{}, formats...), more...)
	cmd.Flags().StringArrayVarP(&flags.outputs, "output", "o", nil,
		"a file to write, its format by its ending: ."+strings.Join(formats, " .")+"; repeat it for more files; - is standard output")
	cmd.Flags().StringVar(&flags.format, "format", "", "the format of -o -: "+strings.Join(formats, ", ")+" (default svg)")
	cmd.Flags().Float64Var(&flags.dpi, "dpi", 150, "resolution of .png, pixels to the inch")
	completeWith(cmd, "format", formats...)
}

// check returns the outputs, or the fault of the flags.
func (f *outputFlags) check(name string, more ...string) ([]string, error) {
	if !(f.dpi >= minDPI && f.dpi <= maxDPI) {
		return nil, fmt.Errorf("--dpi %g: write a resolution from %d to %d", f.dpi, minDPI, maxDPI)
	}
	outputs := f.outputs
	if len(outputs) == 0 {
		outputs = []string{name + ".pdf"}
	}
	if f.format != "" && !slices.Contains(outputs, "-") {
		return nil, fmt.Errorf("--format %s is for standard output: add -o -, or write -o %s.%s", f.format, name, f.format)
	}
	known := append(slices.Clone(formats), more...)
	for _, path := range outputs {
		if err := f.checkName(path, name, known); err != nil {
			return nil, err
		}
	}
	return outputs, givenOnce(outputs)
}

// givenOnce refuses two outputs that are one file.
func givenOnce(outputs []string) error {
	taken := map[string]string{}
	for _, path := range outputs {
		first, twice := taken[canonicalPath(path)]
		switch {
		case twice && first == path:
			return fmt.Errorf("-o %s is given twice", path)
		case twice:
			return fmt.Errorf("-o %s is given twice: -o %s is the same file", path, first)
		}
		taken[canonicalPath(path)] = path
	}
	return nil
}

// checkName refuses an output whose format is unknown, or that has no name.
func (f *outputFlags) checkName(path, name string, known []string) error {
	form := f.formOf(path)
	switch {
	case path == "-" && !slices.Contains(known, form):
		return fmt.Errorf("--format %s: the formats are %s", form, strings.Join(known, ", "))
	case !slices.Contains(known, form):
		return fmt.Errorf("-o %s: the endings are .%s", path, strings.Join(known, " ."))
	case strings.EqualFold(filepath.Base(path), "."+form):
		return fmt.Errorf("-o %s has an ending and no name: write -o %s.%s", path, name, form)
	}
	return nil
}

// formOf is the format of an output, by its ending or by --format for standard output.
func (f *outputFlags) formOf(path string) string {
	if path == "-" {
		return cmp.Or(f.format, "svg")
	}
	if strings.HasSuffix(strings.ToLower(path), "."+contactSheet) {
		return contactSheet
	}
	return strings.ToLower(strings.TrimPrefix(filepath.Ext(path), "."))
}

// writeDocument writes a document to every output.
func writeDocument(ctx context.Context, std streams, d ink.Document, family *font.Family, flags *outputFlags, name string) error {
	paths, err := flags.check(name)
	if err != nil {
		return err
	}
	return writeOutputs(ctx, std, paths, func(path string, put func(output) error) error { return encode(d, path, family, flags, put) })
}

// writeOutputs makes the files of every path, and puts them in place when all are made.
func writeOutputs(ctx context.Context, std streams, paths []string, made func(path string, put func(output) error) error) error {
	return writeAndReport(ctx, std, func(put func(output) error) error {
		return inBackground(ctx, func() error {
			for _, path := range paths {
				if err := made(path, put); err != nil {
					return err
				}
			}
			return nil
		})
	})
}

// encode turns a document into the files of one output: one, or one a page where the format
// holds a single page.
func encode(d ink.Document, path string, family *font.Family, flags *outputFlags, put func(output) error) error {
	form := flags.formOf(path)
	switch form {
	case "pdf":
		return single(path, put, func(b *bytes.Buffer) error { return pdf.Write(b, d, pdf.Options{Font: family}) })
	case "html":
		return single(path, put, func(b *bytes.Buffer) error { return page.Write(b, d, page.Options{Font: family}) })
	}
	writePage := func(b *bytes.Buffer, i int) error { return svg.Write(b, d, i, svg.Options{Font: family}) }
	if form == "png" {
		writePage = func(b *bytes.Buffer, i int) error {
			return png.Write(b, d, i, png.Options{Font: family, DPI: flags.dpi})
		}
	}
	for i := range d.Pages {
		if path == "-" && i > 0 {
			break // a stream holds one picture; the plan comes first
		}
		named := func(o output) error {
			o.path, o.page = pagePath(path, i, d.Pages), d.Pages[i].Title
			return put(o)
		}
		if err := single(path, named, func(b *bytes.Buffer) error { return writePage(b, i) }); err != nil {
			return err
		}
	}
	return nil
}

// single makes the one file of an output.
func single(path string, put func(output) error, write func(*bytes.Buffer) error) error {
	var b bytes.Buffer
	if err := write(&b); err != nil {
		return fmt.Errorf("cannot draw %s: %w", path, err)
	}
	return put(output{path: path, asked: path, data: b.Bytes()})
}

// pagePath names the file of one page: the path itself for the first, for it was asked for, and else by the
// page's own name: "plan-close.svg", "plan-close.face.svg" or, of an only set-up, "plan.face.svg". Further
// pages without a name are numbered.
func pagePath(path string, i int, pages []ink.Page) string {
	ext := filepath.Ext(path)
	stem, name := strings.TrimSuffix(path, ext), pages[i].Name
	switch {
	case path == "-" || i == 0:
		return path
	case name == "":
		name = fmt.Sprint("-", i+1)
	case !strings.HasPrefix(name, "."):
		name = "-" + name
	}
	return stem + name + ext
}
