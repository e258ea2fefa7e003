package light

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/photometry"
)

// How many sides a round of the shade has for receptors, and for what falls on surfaces and lattices; and how many of its
// bands are one there.
const (
	shadeSides    = 32
	fewShadeSides = 20
	bandsTogether = 2
)

// newShadeLamp makes a shade ready; nil for all else.
func newShadeLamp(l *lamp) *shadeLamp {
	d, ok := l.shape.(*photometry.Shade)
	if !ok || l.opening.Form != photometry.Lampshade {
		return nil
	}
	form := d.Form()
	bulb := photometry.FromLumens(l.flux*d.BulbFlux(), photometry.Uniform{}, photometry.Opening{Form: photometry.Sphere, Width: form.Bulb})
	s := &shadeLamp{
		at: l.at, axis: l.axis, low: form.Bottom / 2, high: form.Top / 2, half: form.Height / 2,
		bulb: form.Bulb / 2, luminance: bulb.Luminance(),
	}
	s.setBody(l.right, l.up)
	s.fine = newShadeFacets(l, d.Bands(1), shadeSides)
	s.rough = newShadeFacets(l, d.Bands(bandsTogether), fewShadeSides)
	return s
}

// newShadeFacets makes facets of bands. They have a little more surface than the round, and are as much less bright.
func newShadeFacets(l *lamp, bands []photometry.Band, sides int) (f shadeFacets) {
	ring := func(at, radius float64) []r3.Vec {
		c := circle{r3.Add(l.at, r3.Scale(at, l.axis)), l.up, l.right, radius}
		return c.polygon(sides)
	}
	low := ring(bands[0].Low, bands[0].LowRadius)
	f.rings = append(f.rings, low)
	perLumen := l.flux / math.Pi
	for i := range bands {
		b := &bands[i]
		high := ring(b.High, b.HighRadius)
		area := (&triangle{low[0], low[1], high[1]}).area() + (&triangle{low[0], high[1], high[0]}).area()
		f.bands = append(f.bands, facetBand{b.Outside * perLumen * b.Area() / (area * float64(sides)), b.Inside * perLumen})
		f.rings = append(f.rings, high)
		low = high
	}
	return f
}
