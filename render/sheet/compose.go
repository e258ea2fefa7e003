package sheet

import (
	"fmt"
	"slices"

	"scrimshaw/plan"
	"scrimshaw/plan/source"
	"scrimshaw/render/font"
	"scrimshaw/symbols/ink"
)

// Compose draws the sheet of one set-up: the plan with its collar, and as many pages of lists as
// the collar does not hold. There are no pages where an error was found. The same input gives the
// same ink.
func Compose(in Input, o Options) (ink.Document, []source.Diagnostic) {
	return ComposeAll([]Input{in}, o)
}

// ComposeAll draws the sheets of several set-ups of one scene in order, numbered through.
func ComposeAll(ins []Input, o Options) (ink.Document, []source.Diagnostic) {
	log := &faults{}
	if o.Font == nil {
		family, err := font.Default()
		if err != nil {
			log.add(source.Diagnostic{Severity: source.Error, Code: "no-font", Message: err.Error()})
			return ink.Document{}, log.all
		}
		o.Font = family
	}
	var sheets []*sheet
	for _, in := range ins {
		if s := newComposer(in, o, log).lay(); s != nil {
			sheets = append(sheets, s)
		}
	}
	if log.failed() || len(sheets) == 0 {
		return ink.Document{}, log.all
	}
	onOnePaper(sheets)
	pages := 0
	for _, s := range sheets {
		s.draw()
		pages += len(s.pages)
	}
	doc := ink.Document{Title: sheets[0].c.title(), Language: "en-GB", Author: sheets[0].c.sheet().by,
		Subject: "Lighting plan", Date: sheets[0].c.sheet().date}
	namePages(sheets)
	for i, s := range sheets {
		s.number(folio{drawing: drawingOf(s.c.in.Setup, i+1), sheet: len(doc.Pages) + 1, sheets: pages})
		doc.Pages = append(doc.Pages, s.pages...)
	}
	missing(doc.Pages, o.Font, log)
	return doc, log.all
}

// drawingOf is the number of a set-up's drawing: its place in the file, so that it keeps it in a run of some;
// else its place in the run.
func drawingOf(s *plan.Setup, place int) int {
	if s.Scene == nil {
		return place
	}
	for i := range s.Scene.Setups {
		if s.Scene.Setups[i].Name == s.Name {
			return i + 1
		}
	}
	return place
}

// missing warns of the characters that the typeface has no glyphs for.
func missing(pages []ink.Page, f *font.Family, log *faults) {
	var lacks []rune
	for i := range pages {
		for j := range pages[i].Items {
			if t := pages[i].Items[j].Text; t != nil {
				lacks = append(lacks, f.Missing(t.S)...)
			}
		}
	}
	slices.Sort(lacks)
	for _, r := range slices.Compact(lacks) {
		log.warn("missing-glyph", "letter with another typeface: --font FILE.ttf", "the typeface %s has no glyph for %q (%U)", f.Name(), r, r)
	}
}

// sheet is a set-up's pages before they are numbered.
type sheet struct {
	c      *composer
	fitter *fitter
	layout layout
	pages  []ink.Page
}

// lay finds the layout of one set-up; nil where it cannot be drawn.
func (c *composer) lay() *sheet {
	if c.log.failed() {
		return nil
	}
	s := &sheet{c: c, fitter: c.fitterOf(c.blocks())}
	var ok bool
	if s.layout, ok = c.choose(s.fitter); !ok {
		return nil
	}
	s.fitInset()
	return s
}

// fitInset makes the second map smaller where that spares a page of its own.
func (s *sheet) fitInset() {
	c, first := s.c, s.layout
	if c.in.Inset == nil || first.tiles.parts() > 1 {
		return
	}
	blocks := s.fitter.blocks
	for _, c.insetMost = range insetHeights[1:] {
		if s.layout.all() {
			return
		}
		s.fitter.blocks = c.blocks()
		if l, ok := s.fitter.best(first.paper); ok && l.times == first.times && l.all() {
			s.layout = l
			return
		}
	}
	c.insetMost, s.fitter.blocks = insetHeights[0], blocks
}

// onOnePaper lays sheets for which no paper was asked on the largest that one of them needs, so
// that a run comes out of one tray.
func onOnePaper(sheets []*sheet) {
	largest := sheets[0].layout.paper
	for _, s := range sheets[1:] {
		if s.layout.paper.Width > largest.Width {
			largest = s.layout.paper
		}
	}
	for _, s := range sheets {
		if s.c.wish.paper != nil || s.layout.paper == largest || s.layout.tiles.parts() > 1 {
			continue
		}
		if l, ok := s.fitter.best(largest); ok {
			s.layout = l
		}
	}
}

// draw makes the sheet of the plan and the pages of lists.
func (s *sheet) draw() {
	if s.layout.tiles.parts() > 1 {
		s.pages = s.drawParts()
	} else {
		s.pages = []ink.Page{s.drawPlan()}
	}
	c, l := s.c, s.listLayout()
	for left := s.layout.left; len(left) > 0; {
		page, more := c.listPage(&l, left)
		s.pages = append(s.pages, page)
		if slices.Equal(left, more) {
			break // a row taller than a page; none is made
		}
		left = more
	}
}

// listLayout is the paper that lists come on which the sheet of the plan does not hold: a smaller one
// of its series where one sheet of it holds them all, unless a paper was asked for.
func (s *sheet) listLayout() layout {
	own := s.layout
	if s.c.wish.paper != nil || len(own.left) == 0 {
		return own
	}
	for _, p := range papersOf(s.c.in.Setup.Feet) {
		if p.Width >= own.paper.Width {
			break
		}
		for _, upright := range [...]bool{own.high > own.wide, own.high <= own.wide} {
			l := sheetOf(p, upright)
			l.block = l.titleBlock()
			slots, _ := s.c.listSlots(&l)
			if _, more, _ := evenly(own.left, slots); len(more) == 0 {
				return l
			}
		}
	}
	return own
}

// drawPlan draws the sheet of the plan. Where labels had to be shortened to a number, or left out,
// it takes back the corners of the panel that were given to lists, if that helps.
func (s *sheet) drawPlan() ink.Page {
	full, bare := s.layout, s.layout.open()
	page := s.c.planPage(&full, s.fitter.view(&full))
	if s.c.reduced == 0 || len(bare.corners) == len(full.corners) {
		return page
	}
	before := s.c.reduced
	again := s.c.planPage(&bare, s.fitter.view(&bare))
	if s.c.reduced < before {
		s.layout = bare
		return again
	}
	return s.c.planPage(&full, s.fitter.view(&full))
}

// number draws the title block of every page; f is that of the first.
func (s *sheet) number(f folio) {
	for i := range s.pages {
		l := layout{frame: frameOf(s.pages[i].Width, s.pages[i].Height)}
		s.c.titleBlock(s.c.p.with(&s.pages[i]), l.titleBlock(), f)
		f.sheet++
	}
}

// sections are those of the collar in the order of reading.
func (c *composer) sections() []*section {
	if c.in.Elevation != nil {
		return c.elevationSections()
	}
	return []*section{
		c.levelKey(), c.faces(), c.lights(), c.watch(), c.uncomputed(), c.cautions(), c.legend(),
		c.grip(), c.cameras(), c.meters(), c.insetMap(), c.assumed(), c.unchecked(),
	}
}

// blocks are the sections laid out, without the empty ones.
func (c *composer) blocks() []*block {
	var some []*block
	for _, s := range c.sections() {
		if !s.empty() {
			some = append(some, s.block(c))
		}
	}
	return some
}

// newPage is a page with its paper and frame.
func (c *composer) newPage(l *layout, what string) (*ink.Page, pad) {
	page := &ink.Page{Width: l.wide, Height: l.high, Title: joined(", ", c.title(), c.setupLine(), what),
		Name: what}
	p := c.p.with(page)
	if p.look.Paper != (ink.Colour{R: 255, G: 255, B: 255}) {
		p.on(ink.Tint).rect(box(0, 0, l.wide, l.high), 0, p.look.Ink, &p.look.Paper)
	}
	return page, p
}

// planPage is the sheet itself.
func (c *composer) planPage(l *layout, v view) ink.Page {
	c.clear()
	page, p := c.newPage(l, "")
	page.Description = c.description(l)
	first := len(page.Items)
	if f, ok := c.onWall(); ok {
		c.drawElevation(p, v, f, l.corners)
	} else {
		c.drawPlan(p, v, l.corners)
	}
	cropFrom(page, first, l.plan, c.p.face)
	for _, r := range l.rules {
		p.line(medium, p.look.Ink, r[0], r[1])
	}
	for _, b := range l.corners {
		p.rect(b, medium, p.look.Ink, &p.look.Paper)
	}
	p.rect(l.frame, frame, p.look.Ink, nil)
	drawRows(p, c.head(l.grand()), l.head.x, l.head.top)
	drawPieces(p, l.pieces, l.slots)
	c.scaleBar(p, l.bar.x, l.bar.top, l.times, l.paper.Name)
	if c.knowsNorth() && c.in.Elevation == nil {
		const fromEdge = 5 // of the column: its tip may reach over it, and keeps clear of the bar
		c.north(p, at(l.bar.x+measure-fromEdge, (l.bar.top+l.bar.bottom)/2))
	}
	return *page
}

// listPage is a page of what the sheet of the plan does not hold, and what it does not hold either.
func (c *composer) listPage(l *layout, left []rest) (ink.Page, []rest) {
	page, p := c.newPage(l, "lists")
	page.Description = "Lists of the plan: what the sheet itself has no room for."
	p.rect(l.frame, frame, p.look.Ink, nil)
	p.rect(l.block, medium, p.look.Ink, nil)
	slots, top := c.listSlots(l)
	st := p.name().strong()
	p.text(at(slots[0].x, top-st.cap), st.ellipsis(joined(", ", c.title(), c.setupLine()), width(l.frame)-2*pads), st, ink.Left)
	pieces, more, slots := evenly(left, slots)
	drawPieces(p, pieces, slots)
	return *page, more
}

// listSlots are the columns of a page of lists, the last one over the title block.
func (c *composer) listSlots(l *layout) ([]slot, float64) {
	top := l.frame.Max.Y - pads
	var slots []slot
	for _, x := range columnsIn(l.frame.Min.X, l.frame.Max.X) {
		s := slot{x: x, top: top - 2*pads, bottom: l.frame.Min.Y + pads}
		if x+measure > l.block.Min.X {
			s.bottom = l.block.Max.Y + pads
		}
		slots = append(slots, s)
	}
	return slots, top
}

// description says the page in one paragraph, for a reader who cannot see it.
func (c *composer) description(l *layout) string {
	s := c.in.Setup
	if f, ok := c.onWall(); ok {
		return fmt.Sprintf("Light on the wall %s, seen from inside the room, at %s on %s.", f.name, scaleWords(l.times, s.Feet), l.paper.Name)
	}
	words := fmt.Sprintf("Lighting plan at %s on %s: %s, %s, %s.", scaleWords(l.times, s.Feet), l.paper.Name,
		count(len(s.Lights), "light"), count(len(s.People), "person"), count(len(s.Cameras), "camera"))
	if s.Exposure.Stop.N > 0 {
		words += " Working stop " + c.workingStop() + "."
	}
	return words
}

// count says how many there are of a thing.
func count(n int, thing string) string {
	switch {
	case n == 1:
		return "1 " + thing
	case thing == "person":
		return fmt.Sprintf("%d people", n)
	}
	return fmt.Sprintf("%d %ss", n, thing)
}
