package carto

import (
	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/plane"
)

// contours are the lines of equal value of g at each of the levels.
func contours(g Grid, levels []float64, opts Options) []Line { return Trace(g, levels, opts).Lines }

// bands are the regions between the levels, lowest first, one more than there are levels: each apart, while Steps
// gives them one inside the other.
func (r *Relief) bands() []Band {
	all := make([]Band, 0, len(r.Levels)+1)
	for c := range len(r.Levels) + 1 {
		low, high := r.limits(c)
		all = append(all, Band{Low: low, High: high, Rings: r.region(c, c)})
	}
	return all
}

// bands are the regions between the levels of g.
func bands(g Grid, levels []float64, opts Options) []Band { return Trace(g, levels, opts).bands() }

// area is that of the band, in square units of the lattice.
func (b Band) area() float64 {
	sum := 0.0
	for _, ring := range b.Rings {
		sum += plane.Area(ring)
	}
	return sum
}

// spotReading is the label of a spot reading: a mark of a given size and its figures beside it, without a leader,
// widest first.
func spotReading(at r2.Vec, mark float64, figures ...r2.Vec) Label {
	l := Label{Anchor: at, Body: boxAround(at, r2.Vec{X: mark, Y: mark})}
	for _, size := range figures {
		l.Forms = append(l.Forms, Form{Size: size})
	}
	return l
}
