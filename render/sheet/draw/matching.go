package draw

import (
	"cmp"
	"slices"

	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols/ink"
)

// What a column of the page that matches set-ups takes, mm: the heads of its rows, its least width, and the height that is kept for a picture.
const (
	matchHeads   = 40.0
	matchColumn  = 34.0
	matchPicture = 18.0
	matchAir     = 0.9 // above and below a figure: two faces fit on a page
)

// Matching is a face in all set-ups side by side, wide mm in all: as many bands one below the other as its columns need. picture is the share of their
// height that is kept for pictures. Every band begins with the set-up that the others are held to.
func (c *Typesetter) Matching(m *section.Matched, wide, picture float64) *Block {
	c.wide = wide
	defer func() { c.wide = 0 }()
	b := &Block{title: c.Set(m.Title(), c.Pad.head(), wide, 1)}
	fit := max(2, int((wide-matchHeads)/matchColumn))
	for from := 1; from < len(m.Columns); from += fit - 1 {
		columns := append([]section.MatchColumn{m.Columns[0]}, m.Columns[from:min(len(m.Columns), from+fit-1)]...)
		b.Rows = append(b.Rows, c.band(columns, picture))
	}
	return b.sized()
}

// matchBand is some columns of a face in the making.
type matchBand struct {
	*Typesetter
	columns []section.MatchColumn
	each    float64 // mm, the width of a column
	picture float64 // mm, the height of a picture
	fixes   [][]string
	high    float64 // mm, of a row
}

// band is a row of columns.
func (c *Typesetter) band(columns []section.MatchColumn, picture float64) Row {
	const widest = 62.0
	st := c.Pad.listed(c.Pad.Look.Ink)
	b := &matchBand{c, columns, min(widest, (c.measure()-matchHeads)/float64(len(columns))), picture * matchPicture, nil, st.Cap + 2*matchAir}
	lines := 0
	for i := range columns {
		var own []string
		for _, f := range columns[i].Fix {
			own = append(own, c.Set(f, st, b.each-ColumnGap, maxLines)...)
		}
		b.fixes = append(b.fixes, own)
		lines = max(lines, len(own))
	}
	foot := 0.0
	if lines > 0 {
		foot = float64(lines)*st.Leading() + RowAir
	}
	head := 2*st.Leading() + RowAir
	if picture > 0 {
		head += b.picture + 2*RowAir
	}
	rows := float64(len(columns[0].Cells)) * b.high
	return Row{Height: head + rows + foot + RowAir, Draw: func(p Pad, x, top float64) {
		b.heads(p, x+matchHeads, top)
		y := b.figures(p, x, top-head)
		b.foot(p, x, y)
	}}
}

// heads letters what the columns are, with the room for their pictures below.
func (b *matchBand) heads(p Pad, x, top float64) {
	st, quiet := p.listed(p.Look.Ink).Strong(), p.listed(p.Look.Quiet)
	for i := range b.columns {
		c, left := &b.columns[i], x+float64(i)*b.each
		linkTo(p, box.Of(left, top-2*st.Leading(), left+b.each-ColumnGap, top), c.Setup)
		p.Text(box.At(left, top-st.Cap), st.Ellipsis(section.Joined(" ", c.Setup, c.Camera), b.each-ColumnGap), st, ink.Left)
		p.Text(box.At(left, top-st.Cap-st.Leading()), quiet.Ellipsis(cmp.Or(c.Shot, "–"), b.each-ColumnGap), quiet, ink.Left)
		if b.picture > 0 && c.Picture > 0 {
			y := top - 2*st.Leading() - RowAir
			p.Rect(box.Of(left, y-b.picture, left+min(b.each-ColumnGap, c.Picture*b.picture), y), Hair, p.Look.Rule, nil)
		}
	}
}

// figures letters the rows, and returns where they end.
func (b *matchBand) figures(p Pad, x, top float64) float64 {
	st := p.listed(p.Look.Ink)
	labels := section.MatchLabels()
	for r, label := range labels {
		y := top - b.high*float64(r)
		base := y - matchAir - st.Cap
		p.Line(Hair, p.Look.Rule, box.At(x, y), box.At(x+matchHeads+b.each*float64(len(b.columns)), y))
		p.Text(box.At(x, base), label, p.listed(p.Look.Quiet), ink.Left)
		for i := range b.columns {
			b.cell(p, &b.columns[i].Cells[r], x+matchHeads+float64(i)*b.each, base)
		}
	}
	return top - b.high*float64(len(labels))
}

// cell letters one figure, in a frame where it does not pass.
func (b *matchBand) cell(p Pad, c *section.MatchCell, left, base float64) {
	st := p.listed(p.Look.Ink)
	if c.Revised {
		b.bar(p, left, base, 1)
	}
	letter := p.Text
	if c.Struck {
		letter = p.struckText
	}
	const air = 0.6 // mm, within the frame
	if c.Off {
		st = st.Strong().inked(p.Look.Alarm)
		words := section.Joined(" ", c.Text, c.Apart)
		p.Rect(box.Of(left-air, base-air, left+st.Width(words)+air, base+st.Cap+air), Thin, p.Look.Alarm, nil)
		letter(box.At(left, base), words, st, ink.Left)
		return
	}
	letter(box.At(left, base), c.Text, st, ink.Left)
}

// bar stands at the left of a figure that is not as on the sheets before, or of some lines.
func (b *matchBand) bar(p Pad, left, base float64, lines int) {
	const off, air = 1.6, 0.6 // mm
	st := p.listed(p.Look.Ink)
	p.of("revised", "").Line(Thick, p.Look.revisionPen().Colour, box.At(left-off, base+st.Cap+air), box.At(left-off, base-float64(lines-1)*st.Leading()-air))
}

// foot letters what brings each column to the first.
func (b *matchBand) foot(p Pad, x, top float64) {
	st := p.listed(p.Look.Ink)
	wide := matchHeads + b.each*float64(len(b.columns))
	p.Line(Thin, p.Look.Ink, box.At(x, top), box.At(x+wide, top))
	if slices.ContainsFunc(b.fixes, func(lines []string) bool { return len(lines) > 0 }) {
		p.Text(box.At(x, top-RowAir-st.Cap), "to match", st.Strong(), ink.Left)
	}
	for i, lines := range b.fixes {
		if b.columns[i].Refixed {
			b.bar(p, x+matchHeads+float64(i)*b.each, top-RowAir-st.Cap, max(1, len(lines)))
		}
		for k, l := range lines {
			p.Text(box.At(x+matchHeads+float64(i)*b.each, top-RowAir-st.Cap-float64(k)*st.Leading()), l, st, ink.Left)
		}
	}
}
