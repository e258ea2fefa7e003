package light

import (
	"scrimshaw/plan/colour"
	"scrimshaw/plan/photometry"
)

// What fields at fixed levels are the sums of, by the names that Field takes for lights: what comes straight from point
// sources, what comes straight from those with an extent, and what surfaces send back.
const (
	FromPoints   = "point sources"
	FromFaces    = "luminous faces"
	FromSurfaces = "surfaces"
)

// mixOf is the place of a sum among those of a mix.
var mixOf = map[string]int{FromPoints: 0, FromFaces: 1, FromSurfaces: 2}

// mix is the sums of fields at fixed levels: by what they are of and by lattice, a plane a channel; nil where nothing is.
type mix [3][][]float32

// newMix makes room for the sums on lattices.
func newMix(lattices int) *mix {
	m := &mix{}
	for i := range m {
		m[i] = make([][]float32, lattices)
	}
	return m
}

// sumOf is what a lamp's direct light is added to.
func sumOf(l *lamp) string {
	if l.opening.Form == photometry.Point {
		return FromPoints
	}
	return FromFaces
}

// add adds values of a lattice, in one plane or in three, at a level.
func (m *mix) add(of string, lattice, size int, values []float32, level colour.RGB) {
	if len(values) == 0 || level == (colour.RGB{}) {
		return
	}
	to := &m[mixOf[of]][lattice]
	if *to == nil {
		*to = make([]float32, len(level)*size)
	}
	for c, gain := range level {
		from := values[:size]
		if len(values) > size {
			from = values[c*size : (c+1)*size]
		}
		gain, plane := float32(gain), (*to)[c*size:(c+1)*size]
		for n, v := range from {
			plane[n] += gain * v
		}
	}
}
