package study

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// plots are rectangles by their sizes, m.
func plotsOf(sizes ...r2.Vec) (all []plot) {
	for _, size := range sizes {
		all = append(all, plot{Field: Field{right: r3.Vec{X: 1}, up: r3.Vec{Y: 1}}, size: size})
	}
	return all
}

// The points of all fields together, and as many figures as there are lights for each, are bounded: one
// huge field, many, and one under many lights.
func TestPointsAreBounded(t *testing.T) {
	field := r2.Vec{X: 70, Y: 70}
	for name, c := range map[string]struct {
		plots  []plot
		lights int
		coarse bool
	}{
		"a room":              {plotsOf(r2.Vec{X: 10, Y: 8}, r2.Vec{X: 10, Y: 8}), 60, false},
		"a stage":             {plotsOf(r2.Vec{X: 40, Y: 25}, r2.Vec{X: 40, Y: 25}), 24, false},
		"a hangar":            {plotsOf(r2.Vec{X: 150, Y: 150}), 1, true},
		"six large fields":    {plotsOf(field, field, field, field, field, field), 1, true},
		"a camera far off":    {plotsOf(r2.Vec{X: 9000, Y: 6}, r2.Vec{X: 9000, Y: 6}), 1, true},
		"a field, 200 lights": {plotsOf(field), 200, true},
	} {
		step := spacing(c.plots, 0.05, c.lights)
		points := 0
		for i := range c.plots {
			f := c.plots[i].spread(0.05, step)
			points += len(f.Lux)
			if f.Coarse != c.coarse || c.coarse == (r3.Norm(f.Lattice.U) == 0.05) {
				t.Errorf("%s: points are %g m apart; coarse is %v", name, r3.Norm(f.Lattice.U), f.Coarse)
			}
		}
		if points > maxPoints*21/20 || points*2*c.lights > maxFigures*21/20 {
			t.Errorf("%s: %d points under %d lights", name, points, c.lights)
		}
	}
}

// A closet beside a hangar keeps points enough to be drawn.
func TestSmallFieldsKeepTheirPoints(t *testing.T) {
	plots := plotsOf(r2.Vec{X: 900, Y: 900}, r2.Vec{X: 1.2, Y: 2})
	f := plots[1].spread(0.05, spacing(plots, 0.05, 4))
	if got := f.Lattice.NU; got < minAcross || math.IsNaN(r3.Norm(f.Lattice.U)) {
		t.Errorf("%d points across 1.2 m", got)
	}
}
