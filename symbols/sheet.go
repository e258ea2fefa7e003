package symbols

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/symbols/ink"
)

// The symbol sheet: the borders of ISO 5457, with columns of cells under headings.
const (
	sheetLeft, sheetRim = 20, 10 // the left border is for filing
	sheetScale          = 20     // 1:50
	sheetHead           = 20     // of the title
	cellText            = 12     // of a cell, for its name and words
	lettering           = 2.6    // the least: its capitals are 1.87 mm high
	headingSpace        = 7.5
	leastGap            = 4 // between rows: closer ones are not told apart
)

// paper is what a symbol sheet is drawn on.
type paper struct {
	width, height float64 // mm
	columns       int     // of cells, wide enough for names
}

// papers are A3, and A2 for when that no longer holds the catalogue.
var papers = [...]paper{{420, 297, 14}, {594, 420, 20}}

// printLook is black on white, as the sheet is.
func printLook() Look {
	return Look{Ink: ink.Colour{R: 24, G: 24, B: 28}, Paper: ink.Colour{R: 255, G: 255, B: 255}}
}

// Sheet draws the whole catalogue with names on one page, at 1:50.
func Sheet(m ink.Measure) ink.Page { return SheetIn(m, printLook()) }

// SheetIn is Sheet in the inks of a theme.
func SheetIn(m ink.Measure, k Look) ink.Page { return sheetOf(Catalogue(), m, k) }

// sheetOf draws some entries.
func sheetOf(all []Entry, m ink.Measure, k Look) ink.Page {
	on, rows := fitted(groups(all))
	page := ink.Page{
		Title:       "Symbols",
		Description: "Every symbol of a lighting plan with its name, drawn at 1:50.",
		Width:       on.width, Height: on.height,
	}
	s := symbolSheet{brush: brush{ink.NewCanvas(&page, ink.Collar), k}, m: m, paper: on}
	s.frame()
	s.cells(rows)
	return page
}

// group is the entries under one heading.
type group struct {
	name    string
	entries []Entry
}

// groups gathers neighbours of one group.
func groups(all []Entry) (out []group) {
	for _, e := range all {
		if n := len(out); n == 0 || out[n-1].name != e.Group {
			out = append(out, group{name: e.Group})
		}
		last := &out[len(out)-1]
		last.entries = append(last.entries, e)
	}
	return out
}

// symbolSheet is a symbol sheet being drawn.
type symbolSheet struct {
	brush
	paper
	m ink.Measure
}

// frame draws ground, border and title.
func (s symbolSheet) frame() {
	s.on(ink.Ground).Rect(ink.Solid(s.look.Paper), vec(0, 0), vec(s.width, s.height))
	s.Rect(s.pen(Heavy), vec(sheetLeft, sheetRim), vec(s.width-sheetRim, s.height-sheetRim))
	top := s.height - sheetRim - 11.0
	s.text(vec(sheetLeft+6, top), "Symbols", 6.5, true, ink.Left)
	s.text(vec(s.width-sheetRim-6, top), "drawn at 1 : 50", 3.2, false, ink.Right)
	s.text(vec(sheetLeft+6, top-6), "A body tells how light leaves it. The emitting edge has its true width and the light's own colour. What carries it shows the ground it takes.", 3.2, false, ink.Left)
}

func (s symbolSheet) text(at r2.Vec, words string, size float64, bold bool, align ink.Align) {
	s.Text(ink.Text{At: at, S: words, Size: size, Bold: bold, Align: align, Colour: s.look.Ink})
}

// cells draws rows of groups one under the other: each is as high as its tallest symbol.
func (s symbolSheet) cells(rows []row) {
	wide := (s.width - sheetLeft - sheetRim - 6) / float64(s.columns)
	gap := float64(s.spare(rows)) / float64(len(rows)+1)
	y := s.height - sheetRim - sheetHead - gap/2
	for _, r := range rows {
		for i, g := range r.groups {
			x := sheetLeft + 3 + wide*float64(r.from[i])
			if g.name != "" {
				s.heading(x, y, wide*float64(len(g.entries)), g.name)
			}
			for j, e := range g.entries {
				s.cell(vec(x+wide*(float64(j)+0.5), y-r.head()), r.tall, wide, e)
			}
		}
		y -= r.height() + gap
	}
}

// fitted lays groups out on the smallest paper that leaves a gap between the rows: whole where they can stay so.
func fitted(all []group) (on paper, rows []row) {
	for _, on = range papers {
		for _, whole := range []bool{true, false} {
			if rows = on.layOut(all, whole); on.spare(rows) >= leastGap*(len(rows)+1) {
				return on, rows
			}
		}
	}
	return on, rows
}

// spare is the height that rows leave of the sheet, mm.
func (p paper) spare(rows []row) int {
	left := int(p.height) - 2*sheetRim - sheetHead
	for _, r := range rows {
		left -= int(r.height())
	}
	return left
}

// row is groups side by side.
type row struct {
	groups []group
	from   []int   // the column each starts in
	tall   float64 // the height of the tallest symbol, mm
}

func (r row) height() float64 { return r.head() + r.tall + cellText }

// head is the space for headings; none where all groups of the row go on from the one before.
func (r row) head() float64 {
	if slices.ContainsFunc(r.groups, func(g group) bool { return g.name != "" }) {
		return headingSpace
	}
	return 0
}

// layOut fills rows of cells with groups, in order. Where they are to stay whole, one goes into the first row
// that has the room; else one too long for a row goes on in the next, without a heading.
func (p paper) layOut(all []group, whole bool) (rows []row) {
	for _, g := range all {
		if whole && len(g.entries) <= p.columns {
			i := slices.IndexFunc(rows, func(r row) bool { return r.used()+len(g.entries) <= p.columns })
			if i < 0 {
				i, rows = len(rows), append(rows, row{})
			}
			rows[i].take(g)
			continue
		}
		for len(g.entries) > 0 {
			if len(rows) == 0 || rows[len(rows)-1].used() == p.columns {
				rows = append(rows, row{})
			}
			last := &rows[len(rows)-1]
			n := min(len(g.entries), p.columns-last.used())
			last.take(group{g.name, g.entries[:n]})
			g = group{"", g.entries[n:]}
		}
	}
	return rows
}

// used is how many columns are taken.
func (r *row) used() (n int) {
	for _, g := range r.groups {
		n += len(g.entries)
	}
	return n
}

// take puts a group after those that are there.
func (r *row) take(g group) {
	r.from = append(r.from, r.used())
	r.groups = append(r.groups, g)
	for _, e := range g.entries {
		b := e.Box(sheetScale)
		r.tall = max(r.tall, b.Max.Y-b.Min.Y)
	}
}

// heading writes a group's name over a hairline as wide as the group.
func (s symbolSheet) heading(x, y, width float64, name string) {
	s.Polyline(s.pen(Hair), vec(x+3, y-1.4), vec(x+width-3, y-1.4))
	s.text(vec(x+3, y), name, 3.5, true, ink.Left)
}

// cell draws an entry in the middle of a space as tall as the row, its name and words under it.
func (s symbolSheet) cell(top r2.Vec, tall, wide float64, e Entry) {
	b := e.Box(sheetScale)
	middle := r2.Scale(0.5, r2.Add(b.Min, b.Max))
	at := r2.Sub(vec(top.X, top.Y-tall/2), middle)
	e.Draw(s.Canvas.At(at, 0, 1).Of("symbol:"+e.Key, ink.Capital(e.Name)+": "+e.Words+"."), s.look, sheetScale)
	y := top.Y - tall - 4.6
	s.text(vec(top.X, y), e.Name, 3, true, ink.Centre)
	for i, line := range ink.Wrap(s.m, e.Words, lettering, wide-3) {
		s.text(vec(top.X, y-3.3-3.1*float64(i)), line, lettering, false, ink.Centre)
	}
}
