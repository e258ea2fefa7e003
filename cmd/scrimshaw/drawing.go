package main

import (
	"bytes"
	"context"
	"slices"
	"strings"

	"scrimshaw/plan/source"
	"scrimshaw/plan/study"
	"scrimshaw/plan/teach"
	"scrimshaw/render/contact"
	"scrimshaw/render/page"
	"scrimshaw/render/sheet"
	"scrimshaw/symbols/ink"
)

// drawing is a run in the making, set-up after set-up, in the forms that were asked for.
type drawing struct {
	options  sheet.Options
	pair     teach.Pair // that notes are about
	run      *sheet.Run
	strips   *sheet.StripRun // nil where no picture for a phone was asked for
	texts    []string        // of the set-ups; none where no text was asked for
	withText bool
	columns  []page.Column // of the set-ups for a narrow screen; none where no web page was asked for
	withHTML bool
	held     map[int]sheet.Input // those at hand still, in case they have to be drawn on other paper
	heldSize int                 // values

	document ink.Document
	faults   []source.Diagnostic
}

// newDrawing begins the drawing of a number of set-ups.
func newDrawing(setups int, paths []string, flags *drawFlags) *drawing {
	asked := func(form string) bool {
		return slices.ContainsFunc(paths, func(p string) bool { return flags.output.formOf(p) == form })
	}
	d := &drawing{options: flags.sheet, pair: flags.pair, run: sheet.NewRun(flags.sheet), withText: asked("txt"), withHTML: asked("html"), held: map[int]sheet.Input{}}
	if asked(contactSheet) {
		d.strips = sheet.NewStripRun(flags.sheet, setups)
	}
	return d
}

// compose lights and draws the set-ups one after the other, and those again that lie on smaller paper than a later one.
func (w *work) compose(ctx context.Context, std streams, d *drawing, flags *workFlags) error {
	err := w.light(ctx, std, flags, d.computed(), func(i int, s *study.Study) error {
		if err := d.teach(ctx, s); err != nil {
			return err
		}
		return inBackground(ctx, func() error { d.add(i, s); return nil })
	})
	if err != nil {
		return err
	}
	err = w.recompose(ctx, std, d, flags)
	d.held = nil
	if bound := inBackground(ctx, func() error { d.document, d.faults = d.run.Document(); return nil }); bound != nil {
		return bound
	}
	if text := d.run.DayText(); d.withText && text != "" {
		d.texts = append(d.texts, text)
	}
	return err
}

// recompose draws the set-ups again that lie on smaller paper than the run's, and lights again those that are let go.
func (w *work) recompose(ctx context.Context, std streams, d *drawing, flags *workFlags) error {
	gone := &work{in: w.in}
	var places []int
	for i, name := range w.names {
		switch in, here := d.held[i]; {
		case !d.run.Misfit(i):
		case here:
			if err := inBackground(ctx, func() error { d.run.Redraw(i, in); return nil }); err != nil {
				return err
			}
		default:
			gone.names, places = append(gone.names, name), append(places, i)
		}
	}
	return gone.light(ctx, std, flags, d.computed(), func(i int, s *study.Study) error {
		if err := d.teach(ctx, s); err != nil {
			return err
		}
		return inBackground(ctx, func() error { d.run.Redraw(places[i], sheet.Of(s, d.options)); return nil })
	})
}

// computed is what of the light the pages need: what lies around faces only where it is to teach, or to match set-ups.
func (d *drawing) computed() study.Options {
	o := d.options
	if !o.PicksPlans() {
		return study.Options{ReadingsOnly: true}
	}
	return study.Options{Fixed: true, Around: o.Teaches(), AroundHeads: o.Matches()}
}

// teach adds a lesson to a study whose sheet is to have one.
func (d *drawing) teach(ctx context.Context, s *study.Study) error {
	if !d.options.Teaches() {
		return nil
	}
	return teach.Add(ctx, s, d.pair)
}

// heldMost is how many values of light are kept in case their sheets have to be drawn again: 8 MB of them. What is
// not kept is computed again.
const heldMost = 2 << 20

// add draws one set-up.
func (d *drawing) add(i int, s *study.Study) {
	in := sheet.Of(s, d.options)
	d.run.Add(in)
	if d.strips != nil {
		d.strips.Add(in)
	}
	if d.withText {
		d.texts = append(d.texts, sheet.Text(d.options, in))
	}
	if d.withHTML {
		d.columns = append(d.columns, phoneColumns(in, d.options)...)
	}
	const perSolid = 100 // values' worth of memory
	if d.heldSize += s.Size() + perSolid*solidsOf(s.Setup); d.heldSize <= heldMost {
		d.held[i] = in
	}
}

// files are the sheets in the form that a path asks for.
func (d *drawing) files(path string, flags *drawFlags, put func(output) error) error {
	switch flags.output.formOf(path) {
	case "txt":
		return put(output{path: path, asked: path, data: []byte(strings.Join(d.texts, "\n\n"))})
	case contactSheet:
		return d.contactFile(path, put)
	case "html":
		return single(path, put, func(b *bytes.Buffer) error {
			return page.Write(b, d.document, page.Options{Font: d.options.Font, Phone: d.columns})
		})
	}
	return encode(d.document, path, d.options.Font, &flags.output, put)
}

// contactFile puts the strips and the sheets into one picture.
func (d *drawing) contactFile(path string, put func(output) error) error {
	strips, look := d.strips.Document(len(d.document.Pages)), d.options.Look()
	return single(path, put, func(b *bytes.Buffer) error {
		return contact.Write(b, strips, d.document, contact.Options{Font: d.options.Font, Paper: look.Paper, Ink: look.Ink})
	})
}
