package sheet

import (
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/symbols/ink"
)

// StripWide is the width of a strip, mm: one column of text with a margin. On a phone held upright
// it is a little wider than in life, so that lettering of 1.8 mm reads as on paper.
const StripWide = measure + 2*pads

// Distances on a strip, mm: above its first line and below its last, clear beside the plan, and
// the most height of that.
const (
	stripEnds   = 4.8
	stripBeside = 3.0
	stripTall   = 92.0
	stripTitle  = 4.2 // the height of the title's capitals

	stripBesideWall = 5.0 // its height is lettered there
)

// stripAbove is the clear paper above and below the plan, mm: the first with which every label finds
// a place. A long low set has little room within it, and a phone is taller than wide.
var stripAbove = [...]float64{6, 13, 20, 28, 38}

// Strips draws a run for a phone: a page with the title, and for each set-up one column as long as
// it needs, with the plan drawn anew for the width and below it the key, what the meters say and
// the lists. What only a reader at a desk wants (the legend, what was assumed and what was not
// checked) stays on the sheets. sheets is how many those are. Faults of the options are not
// reported here: ComposeAll does that; where it fails there are no pages.
func Strips(ins []Input, o Options, sheets int) ink.Document {
	var doc ink.Document
	if len(ins) == 0 || o.Font == nil {
		return doc
	}
	log := &faults{}
	for i, in := range ins {
		if i > 0 && slices.Equal(in.Cautions, ins[i-1].Cautions) {
			in.Cautions = []string{"as for the set-up before"}
		}
		s := newSheet(in, o, log)
		if log.failed() {
			return ink.Document{}
		}
		if i == 0 {
			doc = ink.Document{Title: titleOf(in.Setup), Language: "en-GB", Pages: []ink.Page{strip{s.d}.masthead(s.fields, len(ins), sheets)}}
		}
		doc.Pages = append(doc.Pages, strip{s.d}.column(fmt.Sprintf("%d / %d", i+1, len(ins))))
	}
	return doc
}

// Look is the look that options name, the default where there is none of that name.
func (o Options) Look() Theme {
	t, _ := themeNamed(o.Theme)
	return t
}

// stripRounds is how long labels look for places on the small plan of a strip, in rounds a label.
const stripRounds = 600

// stripPage is a page of the width of a strip in the making: rows from the top down.
type stripPage struct {
	title string
	rows  []row
}

// page draws the rows on a page as long as they are.
func (s stripPage) page(d *drawing) ink.Page {
	page := &ink.Page{Title: s.title, Width: StripWide, Height: math.Ceil(heightOf(s.rows) + 2*stripEnds - rowAir)}
	p := d.p.with(page)
	p.on(ink.Tint).rect(box(0, 0, page.Width, page.Height), 0, p.look.Paper, &p.look.Paper)
	drawRows(p, s.rows, pads, page.Height-stripEnds)
	return *page
}

// strip draws a set-up in one column.
type strip struct{ *drawing }

// masthead says what the run is: title, production, place, revision, date.
func (c strip) masthead(f fields, setups, sheets int) ink.Page {
	title := c.p.style(stripTitle, c.p.look.Ink).strong()
	s := stripPage{title: titleOf(c.in.Setup)}
	for _, l := range c.set(titleOf(c.in.Setup), title, measure, 4) {
		s.rows = append(s.rows, lettered(l, title, title.cap*1.75))
	}
	s.rows = append(s.rows, space(0.6))
	for i, words := range []string{
		joined(", ", f.production, f.location),
		joined(", ", count(setups, "set-up")+" on "+count(sheets, "sheet"), prefixed("revision ", f.revision), f.date, prefixed("by ", f.by)),
		prefixed("for ", f.crew),
	} {
		st := c.p.quiet()
		if i == 0 {
			st = c.p.small()
		}
		for _, l := range c.set(words, st, measure, 2) {
			s.rows = append(s.rows, lettered(l, st, st.leading()))
		}
	}
	return s.page(c.drawing)
}

// column is one set-up; number is its place in the run.
func (c strip) column(number string) ink.Page {
	c.clear()
	c.terse = true
	s := stripPage{title: joined(", ", titleOf(c.in.Setup), setupLine(c.in)), rows: c.stripHead(number)}
	s.rows = append(s.rows, c.stripPlan()...)
	for _, section := range c.stripSections() {
		if b := c.block(section); len(b.rows) > 0 {
			s.rows = append(s.rows, space(blockGap), b.heading())
			s.rows = append(s.rows, b.rows...)
		}
	}
	return s.page(c.drawing)
}

// stripHead names the set-up, with its number at the right.
func (c strip) stripHead(number string) []row {
	st := c.p.style(capTitle, c.p.look.Ink).strong()
	name := setupLine(c.in)
	if name == "" {
		name = "Plan"
	}
	var rows []row
	for i, l := range c.set(name, st, measure-c.p.quiet().width(number)-columnGap, 2) {
		r := lettered(l, st, st.cap*1.7)
		if i == 0 {
			words := r.draw
			r.draw = func(p pad, x, top float64) {
				words(p, x, top)
				p.text(at(x+measure, top-st.cap), number, p.quiet(), ink.Right)
			}
		}
		rows = append(rows, r)
	}
	for _, line := range exposureLines(c.in.Setup) {
		for _, l := range c.set(line, c.p.quiet(), measure, 2) {
			rows = append(rows, lettered(l, c.p.quiet(), c.p.quiet().leading()))
		}
	}
	return append(rows, space(2))
}

// heading is the block's heading, with what repeats below it, as a row.
func (b *textBlock) heading() row {
	return row{height: b.headHeight(), draw: func(p pad, x, top float64) { b.drawHead(p, x, top, false) }}
}

// stripPlan is the plan as wide as the strip, or the wall that was asked for in its place, and the scale
// bar with north.
func (c strip) stripPlan() []row {
	stands, beside, plan := standing(c.in.Setup), stripBeside, func(p pad, v view) { planDrawing{c.drawing}.drawPlan(p, v, nil) }
	wall, onWall := onWall(c.in)
	if onWall {
		stands, beside, plan = wall.stands(), stripBesideWall, func(p pad, v view) { wallDrawing{c.drawing}.drawElevation(p, v, wall, nil) }
	}
	extent := around(stands)
	times := math.Ceil(math.Max(width(extent)*1000/(StripWide-2*beside), height(extent)*1000/stripTall))
	draw := func(p pad, top, above float64) r2.Box {
		panel := box(0, top-height(extent)*1000/times-2*above, StripWide, top)
		plan(p, viewOf(extent, panel, times))
		return panel
	}
	above := c.roomiest(draw)
	return []row{
		{height: height(extent)*1000/times + 2*above, draw: func(p pad, x, top float64) {
			panel := draw(p, top, above)
			p.line(thin, p.look.Ink, panel.Min, at(panel.Max.X, panel.Min.Y))
			p.line(thin, p.look.Ink, at(panel.Min.X, panel.Max.Y), panel.Max)
		}},
		{height: barHeight, draw: func(p pad, x, top float64) {
			collar{c.drawing}.ruler(p, x, top-4.4, times)
			if knowsNorth(c.in.Setup) && !onWall {
				collar{c.drawing}.north(p, at(x+measure-8, top-10.5))
			}
		}},
	}
}

// roomiest tries the plan on pages that are thrown away, and returns the least clear paper above and
// below it with which the fewest labels are lost.
func (c strip) roomiest(draw func(p pad, top, above float64) r2.Box) float64 {
	best, fewest := stripAbove[0], math.MaxInt
	for _, above := range stripAbove {
		c.clear()
		draw(c.p.with(&ink.Page{Width: StripWide}), 0, above)
		if c.reduced < fewest {
			best, fewest = above, c.reduced
		}
		if fewest == 0 {
			break
		}
	}
	c.clear()
	return best
}
