package sheet

import (
	"math"

	"scrimshaw/render/carto"
	"scrimshaw/symbols/ink"
)

// keyBar is a strip of the tints with the contours across it. Where figures would touch, every
// other one is left out, never the working stop's.
func (c maps) keyBar(k key) row {
	const barHigh, lift = 4.6, 1.0
	levels := k.shown()
	st := c.p.small().inked(c.p.look.Contour)
	return row{height: barHigh + 2*lift + st.cap + 4.4, draw: func(p pad, x, top float64) {
		bar := box(x, top-barHigh-lift, x+measure, top-lift)
		step := measure / float64(len(levels)+1)
		c.keyTints(p, bar, k)
		p.rect(bar, hair, p.look.Quiet, nil)
		every := c.keyPitch(levels, step)
		for i, l := range levels {
			at1 := x + step*float64(i+1)
			p.line(contourWidth(l), st.colour, at(at1, top-barHigh-2*lift), at(at1, top))
			if keepsFigure(levels, i, every) {
				lettered := st
				lettered.bold = l.Working
				p.text(at(at1, top-barHigh-2*lift-1.2-st.cap), c.label(l), lettered, ink.Centre)
			}
		}
	}}
}

// keyPitch is how many lines share a figure.
func (c maps) keyPitch(levels []carto.Level, step float64) int {
	widest := 0.0
	for _, l := range levels {
		widest = math.Max(widest, c.p.small().strong().width(c.label(l)))
	}
	return max(1, int(math.Ceil((widest+1.2)/step)))
}

// keepsFigure says whether level i keeps its figure: every so many, counted from the working stop.
func keepsFigure(levels []carto.Level, i, every int) bool {
	return levels[i].Stop%every == 0
}

// contourWidth is the pen of a contour, mm.
func contourWidth(l carto.Level) float64 {
	if l.Working {
		return thick
	}
	return hair
}
