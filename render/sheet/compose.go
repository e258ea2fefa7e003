package sheet

import (
	"fmt"
	"slices"

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
	pages := 0
	for _, in := range ins {
		if s := newComposer(in, o, log).sheetOf(); s != nil {
			sheets = append(sheets, s)
			pages += len(s.pages)
		}
	}
	if log.failed() || len(sheets) == 0 {
		return ink.Document{}, log.all
	}
	doc := ink.Document{Title: sheets[0].c.title(), Language: "en-GB", Author: sheets[0].c.sheet().by,
		Subject: "Lighting plan", Date: sheets[0].c.sheet().date}
	for i, s := range sheets {
		for j := range s.pages {
			page := &s.pages[j]
			s.c.titleBlock(s.c.p.with(page), s.layout.block, folio{i + 1, len(doc.Pages) + 1, pages})
			doc.Pages = append(doc.Pages, *page)
		}
	}
	return doc, log.all
}

// sheet is a set-up's pages before they are numbered.
type sheet struct {
	c      *composer
	layout layout
	pages  []ink.Page
}

// sheetOf composes one set-up; nil where it cannot be drawn.
func (c *composer) sheetOf() *sheet {
	if c.log.failed() {
		return nil
	}
	f := &fitter{extent: extentOf(c.in.Setup), blocks: c.blocks(), head: func(grand bool) float64 { return heightOf(c.head(grand)) }}
	l, ok := c.choose(f)
	if !ok {
		return nil
	}
	s := &sheet{c: c, layout: l}
	s.pages = append(s.pages, c.planPage(l, viewOf(f.extent, l.plan, l.times)))
	for left := l.left; len(left) > 0; {
		page, more := c.listPage(&l, left)
		s.pages = append(s.pages, page)
		if sameRest(left, more) {
			break // a row taller than a page; none is made
		}
		left = more
	}
	return s
}

// sameRest says whether nothing of what was left found a place.
func sameRest(a, b []rest) bool { return slices.Equal(a, b) }

// sections are those of the collar in the order of reading.
func (c *composer) sections() []*section {
	return []*section{
		c.levelKey(), c.faces(), c.lights(), c.watch(), c.cautions(), c.legend(),
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
	page := &ink.Page{Width: l.wide, Height: l.high, Title: joined(", ", c.title(), c.setupLine(), what)}
	p := c.p.with(page)
	if p.look.Paper != (ink.Colour{R: 255, G: 255, B: 255}) {
		p.on(ink.Tint).rect(box(0, 0, l.wide, l.high), 0, p.look.Ink, &p.look.Paper)
	}
	return page, p
}

// planPage is the sheet itself.
func (c *composer) planPage(l layout, v view) ink.Page {
	page, p := c.newPage(&l, "")
	page.Description = c.description(&l)
	c.drawPlan(p, v)
	for _, r := range l.rules {
		p.line(medium, p.look.Ink, r[0], r[1])
	}
	p.rect(l.frame, frame, p.look.Ink, nil)
	drawRows(p, c.head(l.grand()), l.head.x, l.head.top)
	drawPieces(p, l.pieces, l.slots)
	c.scaleBar(p, l.bar.x, l.bar.top, l.times, l.paper.Name)
	if c.knowsNorth() {
		const radius = 8
		c.north(p, at(l.bar.x+measure-radius, (l.bar.top+l.bar.bottom)/2))
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
	pieces, more := pour(left, slots)
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
	return fmt.Sprintf("Lighting plan at %s on %s: %s, %s, %s. Working stop %s.",
		scaleWords(l.times, s.Feet), l.paper.Name, count(len(s.Lights), "light"), count(len(s.People), "person"),
		count(len(s.Cameras), "camera"), c.workingStop())
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
