package draw

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/box"
	"scrimshaw/symbols"
	"scrimshaw/symbols/ink"
)

// tag is a number with what belongs beside a thing on the plan. Of its forms
// the first shows all lines, the next shortens the first of them, the next shows that alone, and
// the last the number, which shrinks after everything else; below that it stands in the table of the collar only.
type tag struct {
	object   string
	number   string
	cap      float64     // of the number, mm
	open     bool        // number in ink on paper, not paper on ink
	strip    *ink.Colour // the light's colour, nil for none
	lines    [][]string  // each a row of words with wide spaces between
	short    string      // in place of all of them; empty: the first
	anchor   r2.Vec      // mm
	drawn    symbols.Drawn
	priority float64
	struck   []string // words that are struck through
}

// Sizes of a tag, mm.
const (
	tagPad   = 1.3 // round the lettering
	tagRise  = 1.6 // between lines
	tagWord  = 1.7 // between words
	tagStrip = 1.6
	tagRoom  = 44.0 // the most that a line may run
	tagLeads = 56.0 // the longest leader
)

// tagForm is a tag that shows some lines, with the number of a height, mm.
type tagForm struct {
	lines [][]string
	cap   float64
}

// forms are those of a tag, best first. Every light has the form of its shortened first
// line, even where that is no narrower, so that none loses its figures sooner than another.
func (t *tag) forms() []tagForm {
	var all []tagForm
	if len(t.lines) > 0 {
		all = []tagForm{{t.lines, t.cap}}
		first := t.lines[:1]
		if t.short != "" {
			first = [][]string{{t.short}}
			all = append(all, tagForm{append(first[:1:1], t.lines[1:]...), t.cap})
		}
		if len(t.lines) > 1 || t.short != "" {
			all = append(all, tagForm{first, t.cap})
		}
	}
	for cap := t.cap; ; cap /= math.Sqrt2 {
		if all = append(all, tagForm{nil, cap}); cap < 1.3*capName {
			return all
		}
	}
}

// markCap is the height of the marks of grip and cameras.
func (p Pad) markCap() float64 { return math.Min(p.Ranks.Lamp, CapTitle) }

// size is that of the tag in a form.
func (t *tag) size(p Pad, f tagForm) r2.Vec {
	w := t.blockWide(p, f.cap)
	if t.strip != nil {
		w += tagStrip
	}
	if len(f.lines) > 0 {
		w += textWide(p, f.lines) + 2*tagPad
	}
	number := p.Style(f.cap, p.Look.Ink).Strong().boxOf(t.number).Y
	return r2.Vec{X: w, Y: math.Max(math.Max(number, f.cap+2*tagPad), linesHigh(p, len(f.lines))+2*tagPad)}
}

// linesHigh is the height of some lines.
func linesHigh(p Pad, n int) float64 {
	cap := p.plan().Cap
	return cap + (cap+tagRise)*float64(n-1)
}

func (t *tag) blockWide(p Pad, cap float64) float64 {
	return math.Max(p.Style(cap, p.Look.Ink).Strong().Width(t.number)+2.2, cap+2*tagPad)
}

func textWide(p Pad, lines [][]string) float64 {
	widest := 0.0
	for i, words := range lines {
		widest = math.Max(widest, lineWide(lineStyle(p, i), words))
	}
	return widest
}

// lineStyle is bold for the first line.
func lineStyle(p Pad, i int) style {
	st := p.plan()
	st.bold = st.bold || i == 0
	return st
}

func lineWide(st style, words []string) float64 {
	w := tagWord * float64(len(words)-1)
	for _, s := range words {
		w += st.Width(s)
	}
	return w
}

// label is the tag as the placer of labels sees it.
func (t *tag) label(p Pad) carto.Label {
	l := carto.Label{Anchor: t.anchor, Body: t.drawn.Box(), Priority: t.priority}
	for _, f := range t.forms() {
		l.Forms = append(l.Forms, carto.Form{Size: t.size(p, f), Leader: tagLeads})
	}
	return l
}

func (t *tag) explains(at carto.Placement) bool {
	return at.On && (len(t.lines) == 0 || len(t.forms()[at.Form].lines) > 0)
}

func (t *tag) whole(at carto.Placement) bool {
	return at.On && len(t.forms()[at.Form].lines) == len(t.lines)
}

func (t *tag) missed(carto.Placement) string { return "" }

func (t *tag) full(at carto.Placement) bool { return at.On && at.Form == 0 }

// draw draws the tag where it was placed, with its leader.
func (t *tag) draw(p Pad, at carto.Placement) {
	if !at.On {
		return
	}
	form := t.forms()[at.Form]
	p = p.On(ink.Tags).of(t.object, "")
	if from, to := t.leader(at); r2.Norm(r2.Sub(to, from)) > minLeader+1 {
		p.Line(Hair, p.Look.Ink, from, to)
	}
	b := at.Box
	p.Rect(b, Thin, p.Look.Ink, &p.Look.Paper)
	x := b.Min.X + t.blockWide(p, form.cap)
	number := p.Style(form.cap, p.Look.Ink).Strong()
	if t.open {
		p.Line(Thin, p.Look.Ink, r2.Vec{X: x, Y: b.Min.Y}, r2.Vec{X: x, Y: b.Max.Y})
	} else {
		p.Rect(box.Of(b.Min.X, b.Min.Y, x, b.Max.Y), 0, p.Look.Ink, &p.Look.Ink)
		number = number.inked(p.Look.Paper)
	}
	middle := (b.Min.Y + b.Max.Y) / 2
	p.Text(r2.Vec{X: (b.Min.X + x) / 2, Y: middle - number.Cap/2}, t.number, number, ink.Centre)
	if t.strip != nil {
		p.Rect(box.Of(x, b.Min.Y+Thin/2, x+tagStrip, b.Max.Y-Thin/2), 0, p.Look.Ink, t.strip)
		x += tagStrip
	}
	drawLines(p, x+tagPad, middle, form.lines, t.struck)
}

// minLeader is how far a tag may be from what it is about without a leader, mm.
const minLeader = 2.6

// leader runs from the tag into the symbol itself. The placer knows of a symbol only the upright box
// round it, and a tag beside the box of something long and slanting may be far from the thing.
func (t *tag) leader(at carto.Placement) (from, to r2.Vec) {
	from, to = at.Leader[0], at.Leader[1]
	if !at.Leads() {
		from = r2.Vec{X: min(max(t.anchor.X, at.Box.Min.X), at.Box.Max.X), Y: min(max(t.anchor.Y, at.Box.Min.Y), at.Box.Max.Y)}
		to = from
	}
	to = touch(from, t.anchor, t.drawn.Body, to)
	return from, box.Interpolate(to, centreOf(t.drawn.Body, to), leaderInset)
}

// leaderInset is how far a leader goes on from the outline of a symbol toward its middle: the outline is of
// straight lines, and what is drawn inside it may not reach its corners.
const leaderInset = 0.4

// centreOf is the middle of the corners of an outline; other where it has none.
func centreOf(outline []r2.Vec, other r2.Vec) r2.Vec {
	if len(outline) == 0 {
		return other
	}
	sum := r2.Vec{}
	for _, p := range outline {
		sum = r2.Add(sum, p)
	}
	return r2.Scale(1/float64(len(outline)), sum)
}

// touch is where the way from a point to an anchor meets an outline; other where it does not.
func touch(from, anchor r2.Vec, outline []r2.Vec, other r2.Vec) r2.Vec {
	if parts := ink.ClipPolyline([]r2.Vec{from, anchor}, outline); len(parts) > 0 {
		return parts[0][0]
	}
	return other
}

// drawLines letters the lines with their block centred on a height, the struck words struck through.
func drawLines(p Pad, x, middle float64, lines [][]string, struck []string) {
	cap := p.plan().Cap
	y := middle + linesHigh(p, len(lines))/2 - cap
	for i, words := range lines {
		st := lineStyle(p, i)
		left := x
		for _, s := range words {
			letter := p.Text
			if slices.Contains(struck, s) {
				letter = p.struckText
			}
			letter(r2.Vec{X: left, Y: y - (cap+tagRise)*float64(i)}, s, st, ink.Left)
			left += st.Width(s) + tagWord
		}
	}
}
