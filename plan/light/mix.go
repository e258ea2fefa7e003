package light

import (
	"context"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/light/radiosity"
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

// mixReflected reads the lattices at fixed levels.
func (b *Basis) mixReflected(ctx context.Context, solution *radiosity.Solution, p *progress) error {
	levels := make([]colour.RGB, len(b.Lights))
	for i, name := range b.Lights {
		levels[i] = b.targets.Fixed[name]
	}
	mixed := solution.Mix(levels)
	for k := range b.targets.Lattices {
		planes, err := mixed.Lattice(ctx, k)
		if err != nil {
			return err
		}
		l := &b.targets.Lattices[k]
		b.mix.add(FromSurfaces, k, l.NU*l.NV, planes[0], colour.RGB{1, 1, 1})
		p.step(1)
	}
	return nil
}

// useMix makes the sums the fields of a basis.
func (b *Basis) useMix() {
	b.summed = make([]string, len(b.mix))
	for name, i := range mixOf {
		b.summed[i] = name
	}
	b.Fields = [][][]float32{b.mix[0], b.mix[1], make([][]float32, len(b.targets.Lattices))}
	b.Reflected = [][][]float32{nil, nil, b.mix[2]}
}
