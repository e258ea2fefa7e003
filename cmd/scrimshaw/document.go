package main

import (
	"bytes"
	"fmt"
	"path/filepath"
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

// contactSheet is the format of all pages of a run on one picture for a phone.
const contactSheet = "contact.png"

// The resolutions that --dpi takes.
const (
	leastDPI = 36
	mostDPI  = 1200
)

// outputFlags say where a drawing goes and in which form.
type outputFlags struct {
	outputs []string
	format  string // of standard output
	dpi     float64
}

func addOutputFlags(cmd *cobra.Command, flags *outputFlags) {
	cmd.Flags().StringArrayVarP(&flags.outputs, "output", "o", nil,
		"a file to write, its form by its ending: .pdf .svg .png .html; again for another; - is standard output")
	cmd.Flags().StringVar(&flags.format, "format", "svg", "the form of -o -: svg, pdf, png, html")
	cmd.Flags().Float64Var(&flags.dpi, "dpi", 150, "resolution of .png")
	completeWith(cmd, "format", formats...)
}

// check returns the outputs, or the fault of the flags.
func (f *outputFlags) check(name string, more ...string) ([]string, error) {
	if !(f.dpi >= leastDPI && f.dpi <= mostDPI) {
		return nil, fmt.Errorf("--dpi %g: a resolution lies from %d to %d", f.dpi, leastDPI, mostDPI)
	}
	outputs := f.outputs
	if len(outputs) == 0 {
		outputs = []string{name + ".pdf"}
	}
	known := append(append([]string{}, formats...), more...)
	seen := map[string]bool{}
	for _, path := range outputs {
		if seen[filepath.Clean(path)] {
			return nil, fmt.Errorf("-o %s is given twice", path)
		}
		seen[filepath.Clean(path)] = true
		form := f.formOf(path)
		if !contains(known, form) {
			return nil, fmt.Errorf("-o %s: the endings are .%s", path, strings.Join(known, " ."))
		}
		if strings.EqualFold(filepath.Base(path), "."+form) {
			return nil, fmt.Errorf("-o %s has an ending and no name: write -o %s.%s", path, name, form)
		}
	}
	return outputs, nil
}

// formOf is the format of an output, by its ending or by --format for standard output.
func (f *outputFlags) formOf(path string) string {
	if path == "-" {
		return f.format
	}
	if strings.HasSuffix(strings.ToLower(path), "."+contactSheet) {
		return contactSheet
	}
	return strings.ToLower(strings.TrimPrefix(filepath.Ext(path), "."))
}

// writeDocument writes a document to every output.
func writeDocument(std streams, d ink.Document, family *font.Family, flags *outputFlags, name string) error {
	paths, err := flags.check(name)
	if err != nil {
		return err
	}
	var files []output
	for _, path := range paths {
		made, err := encode(d, path, family, flags)
		if err != nil {
			return err
		}
		files = append(files, made...)
	}
	return finish(std, files)
}

// finish writes the files and says where they are.
func finish(std streams, files []output) error {
	if err := writeAll(std, files); err != nil {
		return err
	}
	for _, f := range files {
		if f.path != "-" {
			fmt.Fprintf(std.err, "wrote %s\n", f.path)
		}
	}
	return nil
}

// encode turns a document into the files of one output: one, or one a page where the format
// holds a single page.
func encode(d ink.Document, path string, family *font.Family, flags *outputFlags) ([]output, error) {
	form := flags.formOf(path)
	switch form {
	case "pdf":
		return single(path, func(b *bytes.Buffer) error { return pdf.Write(b, d, pdf.Options{Font: family}) })
	case "html":
		return single(path, func(b *bytes.Buffer) error { return page.Write(b, d, page.Options{Font: family}) })
	}
	var files []output
	for i := range d.Pages {
		if path == "-" && i > 0 {
			break // a stream holds one picture; the plan comes first
		}
		made, err := single(pagePath(path, i, d.Pages), func(b *bytes.Buffer) error {
			if form == "png" {
				return png.Write(b, d, i, png.Options{Font: family, DPI: flags.dpi})
			}
			return svg.Write(b, d, i, svg.Options{Font: family})
		})
		if err != nil {
			return nil, err
		}
		files = append(files, made...)
	}
	return files, nil
}

func single(path string, write func(*bytes.Buffer) error) ([]output, error) {
	var b bytes.Buffer
	if err := write(&b); err != nil {
		return nil, fmt.Errorf("cannot draw %s: %w", path, err)
	}
	return []output{{path: path, data: b.Bytes()}}, nil
}

// pagePath names the file of one page: the path itself for the first, "plan-close.svg" for others
// by their own names, "plan-2.svg" where a page has none to itself.
func pagePath(path string, i int, pages []ink.Page) string {
	if i == 0 {
		return path
	}
	word := pages[i].Name
	for j := range pages {
		if word == "" || j != i && pages[j].Name == word {
			word = fmt.Sprint(i + 1)
			break
		}
	}
	ext := filepath.Ext(path)
	return strings.TrimSuffix(path, ext) + "-" + word + ext
}

func contains(list []string, s string) bool {
	for _, x := range list {
		if x == s {
			return true
		}
	}
	return false
}
