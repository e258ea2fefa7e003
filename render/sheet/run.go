package sheet

import (
	"cmp"

	"scrimshaw/plan/source"
	"scrimshaw/render/font"
	"scrimshaw/render/sheet/draw"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/symbols/ink"
)

// Compose draws the sheets of the set-ups of a scene in order, numbered through: of each the plan with its collar, and
// as many pages of lists as the collar does not hold. There are no pages where an error was found. The same input gives
// the same ink. A Run does the same for set-ups that come one after the other, and keeps its pages folded; here all lie open.
func Compose(ins []Input, o Options) (ink.Document, []source.Diagnostic) {
	r := NewRun(o)
	for _, in := range ins {
		r.Add(in)
	}
	for i := range ins {
		if r.Misfit(i) {
			r.Redraw(i, ins[i])
		}
	}
	doc, found := r.Document()
	return open(doc), found
}

// open is a document none of whose pages is folded.
func open(doc ink.Document) ink.Document {
	for i := range doc.Pages {
		doc.Pages[i] = *doc.Pages[i].Unfolded()
	}
	return doc
}

// Run draws the sheets of set-ups that come one after the other, and keeps of each its pages alone: light and set can
// be let go as soon as their sheet is drawn.
type Run struct {
	options Options
	log     faults // of what has no sheet
	sheets  []*sheet
	largest layout.Paper
	day     *packet // what the pages before and behind those of the set-ups are made from; nil where there are none
}

// NewRun begins a run.
func NewRun(o Options) *Run {
	r := &Run{options: o}
	if o.Packet || o.For != "" {
		r.day = newPacket(o.Since)
	}
	if o.Font != nil {
		return r
	}
	family, err := font.Default()
	if err != nil {
		r.log.add(source.Diagnostic{Severity: source.Error, Code: "no-font", Message: err.Error()})
	}
	r.options.Font = family
	return r
}

// Add draws the next set-up of the run. After an error it only looks for more of them.
func (r *Run) Add(in Input) {
	if r.options.Font == nil {
		return
	}
	if s := r.drawn(in); s != nil {
		s.fold()
		r.sheets = append(r.sheets, s)
	}
	if r.day != nil {
		r.day.add(&in)
	}
}

// drawn is the sheet of a set-up; nil after an error.
func (r *Run) drawn(in Input) *sheet {
	s := newSheet(in, r.options, &faults{})
	if s.log.failed() || r.log.failed() || s.request.reader.plans && s.lay() == nil {
		r.log.join(s.log)
		return nil
	}
	if s.request.reader.plans {
		r.finish(s)
	} else {
		s.release()
	}
	return s
}

// finish draws a sheet on the run's paper and lets go of what only its drawing needed.
func (r *Run) finish(s *sheet) {
	if s.layout.Paper.Width > r.largest.Width {
		r.largest = s.layout.Paper
	}
	s.onPaper(r.largest)
	s.enlargeLists()
	s.draw()
	s.release()
}

// Misfit says whether the set-up that was added as number i, from 0, lies on smaller paper than one that came later
// needs: a run comes out of one tray. Redraw draws it again.
func (r *Run) Misfit(i int) bool {
	return i < len(r.sheets) && !r.log.failed() && r.sheets[i].movable && r.sheets[i].paper != r.largest
}

// Redraw draws the set-up that was added as number i again, on the run's paper.
func (r *Run) Redraw(i int, in Input) {
	if s := r.drawn(in); s != nil {
		s.movable = false // not even if that paper does not hold it
		s.fold()
		r.sheets[i] = s
	}
}

// Document gives the pages of the run, named and numbered through, and what was found; no pages after an error.
func (r *Run) Document() (ink.Document, []source.Diagnostic) {
	for _, s := range r.sheets {
		r.log.join(s.log)
	}
	if r.log.failed() || len(r.sheets) == 0 {
		return ink.Document{}, r.log.all
	}
	first := r.sheets[0]
	doc := ink.Document{Title: first.title, Language: "en-GB", Author: first.fields.By,
		Subject: "Lighting plan", Date: first.fields.Date}
	sheets := r.sheets
	if r.day != nil {
		sheets = bind(r.day, r.sheets, r.largest, r.options)
	}
	doc.Pages = numbered(sheets)
	if doc.Tagged = r.day != nil; doc.Tagged {
		r.day.foot(doc.Pages, first.d.Pad, r.options.Packet)
	}
	warnMissingGlyphs(doc.Pages, r.options.Font, &r.log)
	return doc, r.log.all
}

// numbered are the pages of all sheets, named and numbered through.
func numbered(sheets []*sheet) (all []ink.Page) {
	namePages(sheets)
	outlinePages(sheets)
	pages, drawing := 0, 0
	for _, s := range sheets {
		pages += len(s.pages)
	}
	for _, s := range sheets {
		f := draw.Folio{Sheet: len(all) + 1, Sheets: pages}
		if !s.ofDay {
			drawing++
			f.Drawing = cmp.Or(s.place, drawing)
		}
		s.number(f)
		all = append(all, s.pages...)
	}
	return all
}

// onPaper lays a sheet for which no paper was asked on the run's.
func (s *sheet) onPaper(p layout.Paper) {
	s.movable = s.request.paper == nil && s.layout.Tiles.Parts() <= 1
	if !s.movable || s.layout.Paper == p {
		return
	}
	if l, ok := s.fitter.Best(p); ok {
		s.layout = l
		return
	}
	s.movable = false
}

// fold keeps the pages in little memory, for the memory of a run is not to grow with its set-ups.
func (s *sheet) fold() {
	for i := range s.pages {
		s.pages[i].Fold()
	}
}

// release drops all but the pages, the names and what the title block says.
func (s *sheet) release() {
	s.paper = s.layout.Paper
	s.fitter, s.texts, s.says, s.layout, s.later, s.left = nil, nil, nil, layout.Layout{}, nil, nil
	s.d.Forget()
}
