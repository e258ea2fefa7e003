package draw

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/colour"
	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/render/sheet/section"
	"scrimshaw/render/tint"
	"scrimshaw/symbols/ink"
)

// greenDash is of the lines beyond which light is green or magenta, mm.
var greenDash = []float64{2, 1.2}

// The colours of a map are drawn stronger than they are, the more so the closer they are to white, for tints are pale: so
// strong at most, and half of that at such a chroma of the light itself.
const (
	hueMost = 42.0
	hueRise = 24.0
)

// hueReliefs are the contours of the colours of the maps: of mired, and of green and magenta.
func (c maps) hueReliefs(v layout.View) []relief {
	var all []relief
	levels := section.MiredLevels(c.In)
	var marks []mark
	for _, m := range levels {
		marks = append(marks, mark{words: section.MiredLabel(m), heavy: m == 0})
	}
	greens := []mark{{words: "−green", dash: greenDash}, {words: "+green", dash: greenDash}}
	for _, f := range c.In.Maps() {
		if h, ok := section.HuesOf(c.In, f); ok {
			all = append(all, linear(h.Mired, levels, marks, v), linear(h.Green, []float64{-section.GreenStep, section.GreenStep}, greens, v))
		}
	}
	return all
}

// linear finds the contours of a field that is no light.
func linear(g carto.Grid, levels []float64, marks []mark, v layout.View) relief {
	o := carto.Paper(v.Scale)
	o.Measure, o.Smoothing = carto.Linear, 0.4
	traced := carto.Trace(carto.Extrapolate(rimmed(g), 1), levels, o)
	r := relief{marks: marks}
	r.lines, r.cliffs = carto.Cliffs(carto.OnPaper(traced.Lines, v.Paper), carto.CliffOptions{})
	return r
}

// hueAt is the colour of light against the camera's white, as CIELAB a and b of a tint.
func (c maps) hueAt(light colour.RGB) (a, b float64) {
	lch := colour.Display(light, c.Pad.White, c.Pad.Look.Lamp).LCH()
	chroma := hueMost * -math.Expm1(-lch.C/hueRise)
	sin, cos := math.Sincos(lch.H * math.Pi / 180)
	return chroma * cos, chroma * sin
}

// hueOf is the hue at any point of a map: between the four points of the lattice about it that have light.
func (c maps) hueOf(f *section.Field) func(r2.Vec) (a, b float64) {
	g := &f.Grid
	hues := make([][2]float64, len(f.Colour))
	for n, light := range f.Colour {
		hues[n][0], hues[n][1] = c.hueAt(light)
	}
	return func(p r2.Vec) (a, b float64) {
		x, y := (p.X-g.Origin.X)/g.Step, (p.Y-g.Origin.Y)/g.Step
		i, j := int(math.Floor(x)), int(math.Floor(y))
		x, y = x-float64(i), y-float64(j)
		sum := 0.0
		for k, w := range [4]float64{(1 - x) * (1 - y), x * (1 - y), (1 - x) * y, x * y} {
			u, v := min(max(i+k&1, 0), g.NX-1), min(max(j+k>>1, 0), g.NY-1)
			if n := v*g.NX + u; !g.Masked(u, v) && f.Colour[n].Y() > 0 {
				a, b, sum = a+w*hues[n][0], b+w*hues[n][1], sum+w
			}
		}
		if sum == 0 {
			return 0, 0
		}
		return a / sum, b / sum
	}
}

// hueBar is a strip of the colours of light by mired from the camera's white, with the contours across it.
func (c maps) hueBar() Row {
	const barHigh, lift = 4.6, 1.0
	levels := section.MiredLevels(c.In)
	st := c.Pad.Small().inked(c.Pad.Look.Contour)
	return Row{Height: barHigh + 2*lift + st.Cap + 4.4, Draw: func(p Pad, x, top float64) {
		if len(levels) == 0 {
			return
		}
		bar := box.Of(x, top-barHigh-lift, x+layout.Measure, top-lift)
		from, to := levels[0]-section.MiredStep/2, levels[len(levels)-1]+section.MiredStep/2
		p.canvas.Image(c.hueStrip(bar, from, to))
		p.Rect(bar, Hair, p.Look.Quiet, nil)
		for _, m := range levels {
			at := x + (m-from)/(to-from)*layout.Measure
			lettered := st
			lettered.bold = m == 0
			p.Line(p.contourPen(mark{heavy: m == 0}).Width, st.colour, box.At(at, top-barHigh-2*lift), box.At(at, top))
			p.Text(box.At(at, top-barHigh-2*lift-1.2-st.Cap), section.MiredLabel(m), lettered, ink.Centre)
		}
	}}
}

// hueStrip is the colours of black bodies from so many mired from the camera's white to so many.
func (c maps) hueStrip(bar r2.Box, from, to float64) ink.Image {
	const shades, lightness, warmest = 160, 74.0, 1e6 / 1100
	white, _ := colour.CCT(c.Pad.White)
	m := ink.Image{Min: bar.Min, Max: bar.Max, Width: shades, Height: 1}
	for i := range shades {
		mired := colour.Mired(white) + from + (to-from)*(float64(i)+0.5)/shades
		kelvin := 1e6 / math.Min(math.Max(mired, 20), warmest)
		a, b := c.hueAt(colour.White{Kelvin: kelvin}.RGB())
		q := colour.LCH{L: lightness, C: math.Hypot(a, b), H: math.Atan2(b, a) * 180 / math.Pi}.Pixel()
		m.RGB = append(m.RGB, q.R, q.G, q.B)
	}
	return m
}

// hued gives a map its hues.
func (c maps) hued(m tint.Map, f *section.Field) tint.Map {
	if len(f.Colour) > 0 {
		m.Hue = c.hueOf(f)
	}
	return m
}
