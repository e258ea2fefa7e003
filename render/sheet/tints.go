package sheet

import (
	"fmt"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/render/carto"
	"scrimshaw/render/tint"
)

// TintNames lists the grounds that a map can have, the default first.
func TintNames() []string { return []string{"bands", "smooth"} }

func (w *wish) readTint(word string, log *faults) {
	names := TintNames()
	if word != "" && !slices.Contains(names, word) {
		unknown(log, said{word: word}, "tint", names)
	}
	w.smooth = word == names[1]
}

// drawTints paints the ground of the maps: bands, each a flat tint, or one continuous tint.
func (c maps) drawTints(p pad, v view, reliefs []relief) {
	if !c.smooth {
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
		maps = append(maps, tint.Map{Grid: reliefs[i].grid, Steps: reliefs[i].steps})
	}
	m, ok := tint.Smooth(maps, c.tintScale(levels), tint.Frame{Scale: v.scale, Shift: v.shift, Panel: v.panel, Paper: p.look.Paper})
	if ok {
		p.of("tint", c.tintAlt(levels)).canvas.Image(m)
	}
}

func (c maps) tintScale(levels []carto.Level) tint.Scale {
	return tint.NewScale(carto.Values(levels), c.p.look.Ramp)
}

// tintAlt says a continuous tint in a sentence.
func (c maps) tintAlt(levels []carto.Level) string {
	if len(levels) == 0 {
		return "Illuminance as a continuous tint."
	}
	return fmt.Sprintf("Illuminance as a continuous tint, lighter where there is more: from under %s to over %s, %s.",
		c.label(levels[0]), c.label(levels[len(levels)-1]), c.levelSays())
}

// keyTints paints into the bar of a key the tints about the levels that it shows.
func (c maps) keyTints(p pad, bar r2.Box, k key) {
	if c.smooth {
		p.canvas.Image(c.tintScale(k.all).Key(bar, k.from, k.to+1))
		return
	}
	tints := p.look.Ramp.Tints(len(k.all) + 1)[k.from : k.to+1]
	step := width(bar) / float64(len(tints))
	for i := range tints {
		p.rect(box(bar.Min.X+step*float64(i), bar.Min.Y, bar.Min.X+step*float64(i+1), bar.Max.Y), 0, p.look.Ink, &tints[i])
	}
}
