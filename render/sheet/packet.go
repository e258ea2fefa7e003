package sheet

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/render/list"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/draw"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols/ink"
)

// packet is what the pages of a day need of its set-ups: little of each, so that many take no more memory than their pages.
type packet struct {
	digests   []section.Digest
	lists     *list.Day
	unchecked []string
	feet      bool
	since     *Since // nil: nobody asks
}

func newPacket(since *Since) *packet { return &packet{lists: list.New(), since: since} }

// add keeps what the pages of the day need of a set-up.
func (k *packet) add(in *Input) {
	k.digests = append(k.digests, section.DigestOf(in))
	k.lists.Add(in.Setup)
	k.feet = in.Setup.Feet
	for _, line := range in.Unchecked {
		if !slices.Contains(k.unchecked, line) {
			k.unchecked = append(k.unchecked, line)
		}
	}
}

// revised says which set-ups are new, gone, revised and as they were.
func (k *packet) revised() *section.Section {
	if k.since == nil {
		return &section.Section{}
	}
	names := make([]string, len(k.digests))
	for i := range k.digests {
		names[i] = k.digests[i].Name
	}
	return section.DayRevised(k.since.Words, k.digests, k.since.Gone(names))
}

// matching puts the faces of a day side by side, with bars beside what is not as on the sheets before.
func (k *packet) matching() *section.Matches {
	m := section.Matching(k.digests)
	if k.since != nil {
		m.Mark(section.Matching(k.since.looks), func(setup string) bool { return k.since.Named(setup) == nil })
	}
	return m
}

// binder makes the pages of a day. All of them are laid out in the frame of A4 as it lies broad, and made larger with the paper.
type binder struct {
	*packet
	first  *sheet // of the run: its look and the fields of its title block
	paper  layout.Paper
	reader *reader
	by     float64 // how much larger than that
	wide   float64 // mm before that, between the margins of the frame
}

// sheetOf is pages of the day in the making.
func (b *binder) sheetOf(title string) *sheet {
	return &sheet{d: b.first.d, fields: b.first.fields, title: b.first.title, name: "", log: b.first.log, texts: draw.Blocks{}, request: b.first.request, ofDay: true, heading: title}
}

// dayPage is one page of a day in the making.
type dayPage struct {
	page         *ink.Page
	p            draw.Pad
	frame, block r2.Box // before it is made larger
}

// newPage begins a page.
func (b *binder) newPage(s *sheet, name, description string, outline ...string) *dayPage {
	l, by := layout.PageOf(b.paper, false), b.by
	page := &ink.Page{Width: l.Wide, Height: l.High, Name: name, Description: description, Outline: outline, Title: section.Joined(", ", append([]string{s.title}, outline...)...)}
	p := b.first.d.Pad.With(page)
	p.Lists = 0
	if p.Look.Paper != (ink.Colour{R: 255, G: 255, B: 255}) {
		p.On(ink.Ground).Rect(box.Of(0, 0, l.Wide/by, l.High/by), 0, p.Look.Ink, &p.Look.Paper)
	}
	return &dayPage{page: page, p: p, frame: beforeEnlarging(l.Frame, by), block: beforeEnlarging(l.TitleBlock(), by)}
}

// done makes the page as large as its paper, and draws its frame.
func (b *binder) done(d *dayPage) ink.Page {
	d.page.Magnify(0, b.by)
	frame := layout.FrameOf(d.page.Width, d.page.Height)
	d.p.Rect(frame, draw.FrameLine, d.p.Look.Ink, nil)
	l := layout.Layout{Frame: frame}
	d.p.Rect(l.TitleBlock(), draw.Medium, d.p.Look.Ink, nil)
	return *d.page
}

// heading letters what the page is, and returns where that ends.
func (d *dayPage) heading(what, of string) float64 {
	st := d.p.Style(draw.CapTitle, d.p.Look.Ink).Strong()
	x, y := d.frame.Min.X+layout.Pads, d.frame.Max.Y-layout.Pads-st.Cap
	d.p.Text(box.At(x, y), what, st, ink.Left)
	quiet := d.p.Quiet()
	d.p.Text(box.At(x+st.Width(what)+4, y), quiet.Ellipsis(of, box.Width(d.frame)-2*layout.Pads-st.Width(what)-4), quiet, ink.Left)
	return y - layout.Pads
}

// pour fills pages with blocks of the whole width, and writes a note at the foot of each, beside the title block.
func (b *binder) pour(s *sheet, blocks []*draw.Block, note *draw.Block, begin func() (*dayPage, float64)) {
	var left []layout.Remainder
	for _, block := range blocks {
		left = append(left, layout.Whole([]*layout.Block{s.set(block)})...)
	}
	spared := 0.0 // mm, at the foot of each page, so that the last has as much as those before
	for len(left) > 0 {
		d, top := begin()
		low := max(d.block.Max.Y, d.frame.Min.Y+layout.Pads+heightOf(note)) + noteAir
		slots := []layout.Slot{{X: d.frame.Min.X + layout.Pads, Top: top, Bottom: low}}
		if len(s.pages) == 0 {
			spared = layout.Spared(left, slots[0])
		}
		slots[0].Bottom += spared
		pieces, more := layout.Pour(left, slots)
		draw.DrawPieces(d.p, s.texts, pieces, slots)
		s.set(note)
		draw.DrawPieces(d.p, s.texts, layout.Pieces(&note.Sizes), []layout.Slot{{X: d.frame.Min.X + layout.Pads, Top: low - noteAir, Bottom: d.frame.Min.Y}})
		s.pages = append(s.pages, b.done(d))
		if slices.Equal(left, more) {
			return // a row taller than a page; none is made
		}
		left = more
	}
}

// noteAir is clear above a note at the foot and above the title block, mm.
const noteAir = 2.5

// heightOf is the height of a block as a whole, mm.
func heightOf(b *draw.Block) float64 { return b.Sizes.Head + draw.HeightOf(b.Rows) }

// footWide is how wide notes at the foot are, beside the title block, mm.
func (b *binder) footWide() float64 {
	return min(b.wide-(layout.Measure+2*layout.Pads)/b.by-layout.Pads, layout.NoteMeasure)
}

// foot letters what nobody has checked below the frame of every page, and makes the title block lead to the first, which may be a cover.
func (k *packet) foot(pages []ink.Page, pad draw.Pad, covered bool) {
	const under = 4.6 // mm below the frame
	line := section.UncheckedLine(k.unchecked, covered)
	for i := range pages {
		page := &pages[i]
		p := pad.With(page)
		l := layout.Layout{Frame: layout.FrameOf(page.Width, page.Height)}
		st := p.Quiet()
		p.Text(box.At(l.Frame.Min.X, l.Frame.Min.Y-under), st.Ellipsis(line, box.Width(l.Frame)), st, ink.Left)
		if i > 0 {
			b := l.TitleBlock()
			page.Links = append(page.Links, ink.Link{Min: b.Min, Max: b.Max, To: pages[0].Name})
		}
	}
}
