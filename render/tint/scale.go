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

// NewScale is the scale on which a ramp runs evenly through the bands between levels, lx, that lie
// a stop apart: even in CIELAB lightness by the stop, as the ramp is. Beyond the middle of the
// darkest and of the lightest band it stays as it is there.
func NewScale(levels []float64, ramp carto.Ramp) Scale {
	last := len(levels)
	s := Scale{levels: levels, fine: max(1, (shades-1)/max(1, last))}
	shared := max(last+1-ramp.MaxTints(), 0) // bands that have the darkest tint, as carto gives it
	for i := range s.fine*last + 1 {
		share := 1.0
		if last > shared {
			share = max(float64(i)/float64(s.fine)-float64(shared), 0) / float64(last-shared)
		}
		s.tints = append(s.tints, ramp.At(share))
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
