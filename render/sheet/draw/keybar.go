package draw

import (
	"math"

	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols/ink"
)

// keyBar is a strip of the tints with the contours across it, each with its figure: where these would touch, in
// further rows below.
func (c maps) keyBar(k section.Key) Row {
	const barHigh, lift = 4.6, 1.0
	levels := k.Shown()
	st := c.Pad.listed(c.Pad.Look.Contour)
	pitch := max(st.Cap+1.4, 1.75*st.Cap) // of the rows of figures: what hangs below one keeps off the next
	every := c.keyPitch(levels, layout.Measure/float64(len(levels)+1))
	return Row{Height: barHigh + 2*lift + st.Cap + 4.4 + pitch*float64(every-1), Draw: func(p Pad, x, top float64) {
		k := c.onTheMap(k)
		levels := k.Shown()
		every := c.keyPitch(levels, layout.Measure/float64(len(levels)+1))
		bar := box.Of(x, top-barHigh-lift, x+layout.Measure, top-lift)
		step := layout.Measure / float64(len(levels)+1)
		c.keyTints(p, bar, k)
		p.Rect(bar, Hair, p.Look.Quiet, nil)
		for i, l := range levels {
			at1 := x + step*float64(i+1)
			down := pitch * float64(keyRow(l, every))
			p.Line(p.contourPen(mark{heavy: l.Working}).Width, st.colour, box.At(at1, top-barHigh-2*lift-down), box.At(at1, top))
			lettered := st
			lettered.bold = l.Working
			p.Text(box.At(at1, top-barHigh-2*lift-1.2-st.Cap-down), c.Label(l), lettered, ink.Centre)
		}
	}}
}

// keyPitch is how many rows the figures take.
func (c maps) keyPitch(levels []carto.Level, step float64) int {
	widest := 0.0
	for _, l := range levels {
		widest = math.Max(widest, c.Pad.listed(c.Pad.Look.Ink).Strong().Width(c.Label(l)))
	}
	return max(1, int(math.Ceil((widest+1.2)/step)))
}

// keyRow is the row of a level's figure below the bar: that of the working stop is the first.
func keyRow(l carto.Level, every int) int { return ((l.Stop % every) + every) % every }
