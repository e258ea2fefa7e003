package tint

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/render/carto"
	"scrimshaw/symbols/ink"
)

// Scale turns illuminance into tint. A place on it counts bands from the middle of the darkest, so
// that place i is the tint of band i, and half a stop on either side leads to its edges.
type Scale struct {
	levels []float64    // lx, lowest first, one a stop
	tints  []ink.Colour // fine to a band, and one more
	fine   int
}

// shades is how many colours a scale has at most. With the paper they go into a palette of 256, and
// they lie closer than any of the ramps has colours of 8 bits.
const shades = 255

// NewScale is the scale on which a ramp runs through the bands between levels, which lie a stop apart.
// Beyond the middle of the darkest and of the lightest band it stays as it is there.
func NewScale(levels []carto.Level, ramp carto.Ramp) Scale {
	last := len(levels)
	s := Scale{levels: carto.Values(levels), fine: max(1, (shades-1)/max(1, last))}
	darkest := 0.0
	if last > 0 {
		darkest = float64(levels[0].Stop) - 0.5
	}
	for i := range s.fine*last + 1 {
		s.tints = append(s.tints, ramp.At(darkest+float64(i)/float64(s.fine)))
	}
	return s
}

// tint is the colour at a place, those beyond the ends being as the ends.
func (s Scale) tint(place float64) ink.Colour {
	i := math.Round(place * float64(s.fine))
	return s.tints[int(min(max(i, 0), float64(len(s.tints)-1)))]
}

// place is where an illuminance lies on the scale; no light lies a stop beyond the dark end.
func (s Scale) place(lux float64) float64 {
	if len(s.levels) == 0 {
		return 0
	}
	place := math.Log2(lux/s.levels[0]) + 0.5
	if !(place > -1) {
		return -1
	}
	return min(place, float64(len(s.levels))+1)
}

// Grey is Key for maps that have a hue of their own: the tones without any, as light as they have it.
func (s Scale) Grey(box r2.Box, from, to int) ink.Image {
	m := s.Key(box, from, to)
	h := hued{scale: s, tones: map[ink.Colour]int8{}, known: map[[3]int8]ink.Colour{}}
	for i := range m.Width {
		c := h.at((float64(i)+0.5)/32-0.5+float64(from), func(r2.Vec) (a, b float64) { return 0, 0 }, r2.Vec{})
		copy(m.RGB[3*i:], []byte{c.R, c.G, c.B})
	}
	return m
}

// Key is a strip of the scale into a box, mm, from one band up to another, not with it, the darker at
// the left: each band as wide as the next, so that the levels lie where the edges of bands would.
func (s Scale) Key(box r2.Box, from, to int) ink.Image {
	m := ink.Image{Min: box.Min, Max: box.Max, Width: 32 * (to - from), Height: 1}
	for i := range m.Width {
		c := s.tint((float64(i)+0.5)/32 - 0.5 + float64(from))
		m.RGB = append(m.RGB, c.R, c.G, c.B)
	}
	return m
}
