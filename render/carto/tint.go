package carto

import (
	"math"

	"scrimshaw/plan/colour"
	"scrimshaw/symbols/ink"
)

// Ramp gives the tint of light by the stops that it lies over or under the working stop: data, to be
// put into a theme. A number of stops has one tint on every map, whatever else the map shows, so that
// sheets can be laid side by side. More light is always the lighter tint, by even steps of CIELAB
// lightness: the order lives through a grey printer and any deficiency of colour vision. Hue says it
// once more: cooler under the working stop, warmer over it.
type Ramp struct {
	Name  string
	Tones []Tone // lowest first; between two the ramp runs straight, beyond the ends it is flat
}

// Tone is the colour of a number of stops from the working stop.
type Tone struct {
	Stop   float64
	Colour colour.LCH // CIELAB lightness, chroma, hue in degrees
}

// The middle of the last band that has a tint of its own, stops from the working stop.
const lastTone = 4.5

// Day is a relief on white paper: slate in the shade, cream in the light. Its darkest tint still lets
// black lettering read.
func Day() Ramp {
	const middle, step = 79.5, 5.12
	at := func(stop, chroma, hue float64) Tone {
		return Tone{stop, colour.LCH{L: middle + step*stop, C: chroma, H: hue}}
	}
	return Ramp{"day", []Tone{
		at(-lastTone, 10, 258), at(-2.5, 6.5, 255), at(-1.5, 3, 245), at(-0.5, 3.5, 96),
		at(0.5, 11, 89), at(1.5, 16, 89), at(2.5, 19, 92),
		{3.5, colour.LCH{L: 95.8, C: 17, H: 97}}, {lastTone, colour.LCH{L: 99.2, C: 7, H: 102}},
	}}
}

// Ink is paper: a look for a copier has no greys, and dots take the place of tints.
func Ink() Ramp { return Ramp{"ink", []Tone{{0, colour.LCH{L: 100}}}} }

// Night is dim reds, which leave the eye used to the dark.
func Night() Ramp {
	return Ramp{"night", []Tone{
		{-lastTone, colour.LCH{L: 1.6, C: 6, H: 20}}, {0, colour.LCH{L: 20.1, C: 16, H: 30}}, {lastTone, colour.LCH{L: 39.2, C: 20, H: 40}},
	}}
}

// At returns the tint of a number of stops from the working stop.
func (r Ramp) At(stop float64) ink.Colour {
	last := len(r.Tones) - 1
	i := 0
	for i < last && r.Tones[i+1].Stop <= stop {
		i++
	}
	low, high := r.Tones[i], r.Tones[min(i+1, last)]
	share := 0.0
	if high.Stop > low.Stop {
		share = min(max((stop-low.Stop)/(high.Stop-low.Stop), 0), 1)
	}
	return ink.Colour(between(low.Colour, high.Colour, share).Pixel())
}

// Bands returns the tints between levels and beyond them, darkest first: each that of its middle. Levels
// lie a stop apart. Without any there is one, that of the working stop.
func (r Ramp) Bands(levels []Level) []ink.Colour {
	if len(levels) == 0 {
		return []ink.Colour{r.At(0)}
	}
	out := []ink.Colour{r.At(float64(levels[0].Stop) - 0.5)}
	for _, l := range levels {
		out = append(out, r.At(float64(l.Stop)+0.5))
	}
	return out
}

// between is the colour at a share of the straight way from a to b in CIELAB: from a cool one to a warm one
// it leads over grey, not round by other hues.
func between(a, b colour.LCH, share float64) colour.LCH {
	mix := func(p, q float64) float64 { return p + share*(q-p) }
	flat := func(c colour.LCH) (x, y float64) {
		sin, cos := math.Sincos(c.H * math.Pi / 180)
		return c.C * cos, c.C * sin
	}
	ax, ay := flat(a)
	bx, by := flat(b)
	x, y := mix(ax, bx), mix(ay, by)
	return colour.LCH{L: mix(a.L, b.L), C: math.Hypot(x, y), H: math.Atan2(y, x) * 180 / math.Pi}
}
