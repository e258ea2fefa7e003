package draw

import (
	"fmt"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/render/sheet/section"
	"scrimshaw/render/tint"
)

// drawTints paints the ground of the maps: bands, each a flat tint, or one continuous tint.
func (c maps) drawTints(p Pad, v layout.View, reliefs []relief) {
	hued := section.IsOfColours(c.In) && len(reliefs) == len(c.In.Maps())
	if p.Look.Plain || !c.how.Smooth && !hued {
		for i := range reliefs {
			reliefs[i].drawBands(p, v)
		}
		return
	}
	if len(reliefs) == 0 {
		return
	}
	levels := reliefs[0].levels
	var maps []tint.Map
	for i := range reliefs {
		m := tint.Map{Grid: reliefs[i].grid, Steps: reliefs[i].steps}
		if hued {
			m = c.hued(m, c.In.Maps()[i])
		}
		maps = append(maps, m)
	}
	m, ok := tint.Smooth(maps, c.tintScale(levels), tint.Frame{Scale: v.Scale, Shift: v.Shift, Panel: v.Panel, Paper: p.Look.Paper})
	if ok {
		p.of("tint", c.tintAlt(levels)).canvas.Image(m)
	}
}

func (c maps) tintScale(levels []carto.Level) tint.Scale {
	return tint.NewScale(levels, c.Pad.Look.Ramp)
}

// tintAlt says a continuous tint in a sentence.
func (c maps) tintAlt(levels []carto.Level) string {
	if len(levels) == 0 {
		return "Illuminance as a continuous tint."
	}
	return fmt.Sprintf("Illuminance as a continuous tint, lighter where there is more: from under %s to over %s, %s.",
		c.Label(levels[0]), c.Label(levels[len(levels)-1]), c.LevelMeasure())
}

// keyDots draws the screens of the bands into the bar of a key.
func (c maps) keyDots(p Pad, bar r2.Box, k section.Key) {
	r, n := relief{levels: k.All}, k.To+1-k.From
	step := box.Width(bar) / float64(n)
	for i := range n {
		p.dots(dotAcross(r.bandStop(k.From+i)), [][]r2.Vec{box.Corners(box.Of(bar.Min.X+step*float64(i), bar.Min.Y, bar.Min.X+step*float64(i+1), bar.Max.Y))})
	}
}

// keyTints paints into the bar of a key the tints about the levels that it shows.
func (c maps) keyTints(p Pad, bar r2.Box, k section.Key) {
	if p.Look.Plain {
		c.keyDots(p, bar, k)
		return
	}
	if section.IsOfColours(c.In) {
		p.canvas.Image(c.tintScale(k.All).Grey(bar, k.From, k.To+1))
		return
	}
	if c.how.Smooth {
		p.canvas.Image(c.tintScale(k.All).Key(bar, k.From, k.To+1))
		return
	}
	tints := p.Look.Ramp.Bands(k.All)[k.From : k.To+1]
	step := box.Width(bar) / float64(len(tints))
	for i := range tints {
		p.Rect(box.Of(bar.Min.X+step*float64(i), bar.Min.Y, bar.Min.X+step*float64(i+1), bar.Max.Y), 0, p.Look.Ink, &tints[i])
	}
}
