package draw

import (
	"strings"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/render/sheet/box"
	"scrimshaw/symbols/ink"
)

// A figure that a key could change which nothing computes yet is struck through: it stays to be read and found,
// and nobody takes it for what the meter will show. Plain text has a mark before it instead.

// strikeOver is how far the line goes over the ends of a figure, mm.
const strikeOver = 0.4

// strike draws a line through the part of a lettering that runs so far from its anchor, mm.
func (p Pad) strike(anchor r2.Vec, st style, from, to float64) {
	y := anchor.Y + st.Cap/2
	p.Line(Thin, p.Look.Alarm, box.At(anchor.X+from-strikeOver, y), box.At(anchor.X+to+strikeOver, y))
}

// struckText letters s as text does, struck through.
func (p Pad) struckText(anchor r2.Vec, s string, st style, a ink.Align) {
	p.Text(anchor, s, st, a)
	from, wide := 0.0, st.Width(s)
	switch a {
	case ink.Right:
		from = -wide
	case ink.Centre:
		from = -wide / 2
	}
	p.strike(anchor, st, from, from+wide)
}

// strikeFigures draws a line through each of some figures in a lettering that starts at an anchor.
func (p Pad) strikeFigures(anchor r2.Vec, s string, st style, figures []string) {
	for _, figure := range figures {
		if before, _, found := strings.Cut(s, figure); found && figure != "" {
			from := st.Width(before)
			p.strike(anchor, st, from, from+st.Width(figure))
		}
	}
}
