package main

import (
	"context"
	"errors"
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"scrimshaw/plan/photometry"
	"scrimshaw/plan/photometry/files"
	"scrimshaw/plan/source"
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
	if err := s.print(std, flags.json, slices.Contains(drawTo, "-")); err != nil || len(drawTo) == 0 {
		return err
	}
	return s.draw(ctx, std, data, &flags.outputFlags)
}

// print writes the figures of a file to standard output, where its drawing does not go there.
func (s *shown) print(std streams, asJSON, drawn bool) error {
	switch {
	case drawn && asJSON:
		return errors.New("-o - and --json both write to standard output; give one of them")
	case asJSON:
		return writeJSON(std.out, s)
	case drawn:
		return nil
	}
	_, err := std.out.Write([]byte(s.text()))
	return err
}

// draw draws the polar curve of a file.
func (s *shown) draw(ctx context.Context, std streams, data files.Data, flags *outputFlags) error {
	light, err := data.Source()
	if err != nil {
		return err
	}
	family, err := font.Default()
	if err != nil {
		return err
	}
	page := polar.Draw(s.chart(light), family)
	return writeDocument(ctx, std, ink.Document{Title: page.Title, Language: "en", Pages: []ink.Page{page}}, family, flags, "polar")
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
		return nil, nil, &exitError{exitWrong}
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

// shown is what --show says of a file.
type shown struct {
	File   string `json:"file"`
	Format string `json:"format"`
	Name   string `json:"name"`
	*files.Figures
	Warnings []warning `json:"warnings"`
}

type warning struct {
	Line    int    `json:"line"`
	Code    string `json:"code"`
	Message string `json:"message"`
}

// newShown takes the figures of a file.
func newShown(name string, d files.Data, found []source.Diagnostic) (*shown, error) {
	figures, err := files.FiguresOf(d)
	if err != nil {
		return nil, err
	}
	s := &shown{File: filepath.ToSlash(name), Format: d.Format(), Name: d.Name(), Figures: figures, Warnings: []warning{}}
	for _, f := range found {
		s.Warnings = append(s.Warnings, warning{f.Span.Line, f.Code, f.Message})
	}
	return s, nil
}

// title is what the file calls its luminaire, else the file's own name.
func (s *shown) title() string {
	if s.Name != "" {
		return s.Name
	}
	return filepath.Base(s.File)
}

// text is the figures as a table.
func (s *shown) text() string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s\n%s\n", s.title(), s.Format)
	for _, f := range s.Facts() {
		fmt.Fprintf(&b, "  %-14s  %s\n", f[0], f[1])
	}
	return b.String()
}

// chart is the figures as a drawing.
func (s *shown) chart(light photometry.Source) polar.Chart {
	c := polar.Chart{Title: s.title(), Subtitle: filepath.Base(s.File) + ", " + s.Format, Source: light, Facts: s.Facts()}
	for _, w := range s.Warnings {
		c.Notes = append(c.Notes, fmt.Sprintf("Line %d: %s.", w.Line, w.Message))
	}
	return c
}
