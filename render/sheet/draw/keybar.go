package draw

import (
	"math"

	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols/ink"
)

// keyBar is a strip of the tints with the contours across it. Where figures would touch, every
// other one is left out, never the working stop's.
func (c maps) keyBar(k section.Key) Row {
	const barHigh, lift = 4.6, 1.0
	levels := k.Shown()
	st := c.Pad.Small().inked(c.Pad.Look.Contour)
	return Row{Height: barHigh + 2*lift + st.Cap + 4.4, Draw: func(p Pad, x, top float64) {
		bar := box.Of(x, top-barHigh-lift, x+layout.Measure, top-lift)
		step := layout.Measure / float64(len(levels)+1)
		c.keyTints(p, bar, k)
		p.Rect(bar, Hair, p.Look.Quiet, nil)
		every := c.keyPitch(levels, step)
		for i, l := range levels {
			at1 := x + step*float64(i+1)
			p.Line(p.contourPen(mark{heavy: l.Working}).Width, st.colour, box.At(at1, top-barHigh-2*lift), box.At(at1, top))
			if keepsFigure(levels, i, every) {
				lettered := st
				lettered.bold = l.Working
				p.Text(box.At(at1, top-barHigh-2*lift-1.2-st.Cap), c.Label(l), lettered, ink.Centre)
			}
		}
	}}
}

// keyPitch is how many lines share a figure.
func (c maps) keyPitch(levels []carto.Level, step float64) int {
	widest := 0.0
	for _, l := range levels {
		widest = math.Max(widest, c.Pad.Small().Strong().Width(c.Label(l)))
	}
	return max(1, int(math.Ceil((widest+1.2)/step)))
}

// keepsFigure says whether level i keeps its figure: every so many, counted from the working stop.
func keepsFigure(levels []carto.Level, i, every int) bool {
	return levels[i].Stop%every == 0
}
