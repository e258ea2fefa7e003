package sheet

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/draw"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols/ink"
)

// StripWide is the width of a strip, mm: one column of text with a margin. On a phone held upright
// it is a little wider than in life, so that lettering of 1.8 mm reads as on paper.
const StripWide = layout.Measure + 2*layout.Pads

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
// reported here: Compose does that; where it fails there are no pages.
func Strips(ins []Input, o Options, sheets int) ink.Document {
	r := NewStripRun(o, len(ins))
	for _, in := range ins {
		r.Add(in)
	}
	return open(r.Document(sheets))
}

// StripRun draws strips of set-ups that come one after the other, as Strips does, and keeps them folded.
type StripRun struct {
	options  Options
	setups   int
	log      faults
	first    *sheet
	cautions []section.Caution // of the set-up before
	columns  []ink.Page
}

// NewStripRun begins a run of a number of set-ups.
func NewStripRun(o Options, setups int) *StripRun { return &StripRun{options: o, setups: setups} }

// Add draws the next set-up of the run.
func (r *StripRun) Add(in Input) {
	if r.options.Font == nil || r.log.failed() {
		return
	}
	cautions := in.Cautions
	if r.first != nil && section.SameCautions(cautions, r.cautions) {
		in.Cautions = []section.Caution{{Text: "as for the set-up before"}}
	}
	r.cautions = cautions
	s := newSheet(in, r.options, &r.log)
	if r.log.failed() {
		return
	}
	column := strip{s.d}.column(fmt.Sprintf("%d / %d", len(r.columns)+1, r.setups))
	column.Fold()
	r.columns = append(r.columns, column)
	if r.first == nil {
		s.release()
		r.first = s
	}
}

// Document gives the title and the strips. sheets is how many the sheets of the run are.
func (r *StripRun) Document(sheets int) ink.Document {
	if r.first == nil || r.log.failed() {
		return ink.Document{}
	}
	doc := ink.Document{Title: r.first.title, Language: "en-GB", Pages: []ink.Page{strip{r.first.d}.masthead(r.first.title, r.first.fields, r.setups, sheets)}}
	doc.Pages = append(doc.Pages, r.columns...)
	return doc
}

// Look is the look that options name, the default where there is none of that name.
func (o Options) Look() draw.Theme {
	t, _ := draw.ThemeNamed(o.Theme)
	return t
}

// stripPage is a page of the width of a strip in the making: rows from the top down.
type stripPage struct {
	title string
	rows  []draw.Row
}

// page draws the rows on a page as long as they are.
func (s stripPage) page(d *draw.Drawing) ink.Page {
	page := &ink.Page{Title: s.title, Width: StripWide, Height: math.Ceil(draw.HeightOf(s.rows) + 2*stripEnds - draw.RowAir)}
	p := d.Pad.With(page)
	p.On(ink.Ground).Rect(box.Of(0, 0, page.Width, page.Height), 0, p.Look.Paper, &p.Look.Paper)
	draw.DrawRows(p, s.rows, layout.Pads, page.Height-stripEnds)
	return *page
}

// strip draws a set-up in one column.
type strip struct{ *draw.Drawing }

// masthead says what the run is: title, production, place, revision, date.
func (c strip) masthead(words string, f section.Fields, setups, sheets int) ink.Page {
	title := c.Pad.Style(stripTitle, c.Pad.Look.Ink).Strong()
	s := stripPage{title: words}
	for _, l := range c.Set(words, title, layout.Measure, 4) {
		s.rows = append(s.rows, draw.Lettered(l, title, title.Cap*1.75))
	}
	s.rows = append(s.rows, draw.Space(0.6))
	for i, words := range []string{
		section.Joined(", ", f.Production, f.Location),
		section.Joined(", ", section.Count(setups, "set-up")+" on "+section.Count(sheets, "sheet"), section.Prefixed("revision ", f.Revision), f.Date, section.Prefixed("by ", f.By)),
		section.Prefixed("for ", f.Crew),
	} {
		st := c.Pad.Quiet()
		if i == 0 {
			st = c.Pad.Small()
		}
		for _, l := range c.Set(words, st, layout.Measure, 2) {
			s.rows = append(s.rows, draw.Lettered(l, st, st.Leading()))
		}
	}
	return s.page(c.Drawing)
}

// column is one set-up; number is its place in the run.
func (c strip) column(number string) ink.Page {
	c.Clear()
	c.ForPhone()
	s := stripPage{title: section.Joined(", ", section.TitleOf(c.In.Setup), section.SetupLine(c.In)), rows: c.stripHead(number)}
	s.rows = append(s.rows, c.stripPlan()...)
	for _, section := range c.StripSections() {
		if b := c.Block(section); len(b.Rows) > 0 {
			s.rows = append(s.rows, draw.Space(layout.BlockGap), b.Heading())
			s.rows = append(s.rows, b.Rows...)
		}
	}
	return s.page(c.Drawing)
}

// stripHead names the set-up, with its number at the right.
func (c strip) stripHead(number string) []draw.Row {
	st := c.Pad.Style(draw.CapTitle, c.Pad.Look.Ink).Strong()
	name := section.SetupLine(c.In)
	if name == "" {
		name = "Plan"
	}
	var rows []draw.Row
	for i, l := range c.Set(name, st, layout.Measure-c.Pad.Quiet().Width(number)-draw.ColumnGap, 2) {
		r := draw.Lettered(l, st, st.Cap*1.7)
		if i == 0 {
			words := r.Draw
			r.Draw = func(p draw.Pad, x, top float64) {
				words(p, x, top)
				p.Text(box.At(x+layout.Measure, top-st.Cap), number, p.Quiet(), ink.Right)
			}
		}
		rows = append(rows, r)
	}
	for _, line := range section.HeadLines(c.In.Setup) {
		for _, l := range c.Set(line, c.Pad.Quiet(), layout.Measure, 2) {
			rows = append(rows, draw.Lettered(l, c.Pad.Quiet(), c.Pad.Quiet().Leading()))
		}
	}
	return append(rows, draw.Space(2))
}

// stripPlan is the plan as wide as the strip, or the wall that was asked for in its place, and the scale
// bar with north.
func (c strip) stripPlan() []draw.Row {
	stands, beside, plan := draw.Standing(c.In.Setup), stripBeside, func(p draw.Pad, v layout.View) { draw.Plan{Drawing: c.Drawing}.Draw(p, v, nil) }
	wall, onWall := draw.OnWall(c.In)
	if onWall {
		stands, beside, plan = wall.Stands(), stripBesideWall, func(p draw.Pad, v layout.View) { draw.Wall{Drawing: c.Drawing}.Draw(p, v, wall, nil) }
	}
	extent := box.Around(stands)
	times := math.Ceil(math.Max(box.Width(extent)*1000/(StripWide-2*beside), box.Height(extent)*1000/stripTall))
	drawn := func(p draw.Pad, top, above float64) r2.Box {
		panel := box.Of(0, top-box.Height(extent)*1000/times-2*above, StripWide, top)
		plan(p, layout.ViewOf(extent, panel, times))
		return panel
	}
	above := c.bestClearance(drawn)
	return []draw.Row{
		{Height: box.Height(extent)*1000/times + 2*above, Draw: func(p draw.Pad, x, top float64) {
			panel := drawn(p, top, above)
			p.Line(draw.Thin, p.Look.Ink, panel.Min, box.At(panel.Max.X, panel.Min.Y))
			p.Line(draw.Thin, p.Look.Ink, box.At(panel.Min.X, panel.Max.Y), panel.Max)
		}},
		{Height: layout.BarHeight, Draw: func(p draw.Pad, x, top float64) {
			draw.Collar{Drawing: c.Drawing}.Ruler(p, x, top-4.4, times)
			if draw.KnowsNorth(c.In.Setup) && !onWall {
				draw.Collar{Drawing: c.Drawing}.North(p, box.At(x+layout.Measure-8, top-10.5))
			}
		}},
	}
}

// bestClearance tries the plan on pages that are thrown away, and returns the least clear paper above and
// below it with which the fewest labels are lost.
func (c strip) bestClearance(draw func(p draw.Pad, top, above float64) r2.Box) float64 {
	best, fewest := stripAbove[0], math.MaxInt
	for _, above := range stripAbove {
		c.Clear()
		draw(c.Pad.With(&ink.Page{Width: StripWide}), 0, above)
		if c.Reduced < fewest {
			best, fewest = above, c.Reduced
		}
		if fewest == 0 {
			break
		}
	}
	c.Clear()
	return best
}
