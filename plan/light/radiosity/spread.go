package radiosity

import (
	"context"
	"math"
	"slices"

	"scrimshaw/plan/light/internal/parallel"
)

// The rays of a reading say how far it may be off. Those of the receptor come in runs, each spread all over, and the runs
// differ by what they miss; the two halves of the rays of a patch differ by what these miss.

// runs is how many runs the rays of a place make.
const runs = 8

// addHalfDifferences adds, for each patch, how much the two halves of its rays differ, to what the halves of the samples of
// hot parts put its exitance off by.
func (s *Solution) addHalfDifferences(ctx context.Context) error {
	t := s.t
	return parallel.For(ctx, t.workers, s.lamps, func(_, lamp int) {
		for slot := 1; slot < len(t.patches); slot++ {
			p := &t.patches[slot]
			s.halfDifferences[lamp][slot] += halfDifference(t.links[p.from:p.to], s.rest[lamp]) * float32(t.mesh.faces[p.face].reflect.Y())
		}
		s.passOnHalfDifferences(lamp)
	})
}

// passOnHalfDifferences adds to what a slot of a cloth is off by what it shines off by because of what its other face gets.
func (s *Solution) passOnHalfDifferences(lamp int) {
	t := s.t
	own := slices.Clone(s.halfDifferences[lamp])
	for _, c := range t.cloth {
		f, other := &t.mesh.faces[t.patches[c.slot].face], &t.mesh.faces[t.patches[c.behind].face]
		passed := f.through.Y() * f.reflect.Y() / other.reflect.Y()
		s.halfDifferences[lamp][c.slot] = float32(math.Hypot(float64(own[c.slot]), passed*float64(own[c.behind])))
	}
}

// halfDifference is half the difference between the means of the even and the odd ones of some elements.
func halfDifference(elements []uint32, bright []float32) float32 {
	if len(elements) < 2 {
		return 0
	}
	var sums [2]float32
	for i, e := range elements {
		sums[i&1] += bright[e]
	}
	return (sums[0] - sums[1]) / float32(len(elements))
}

// spread is the standard error of what the receptor gets of a lamp, lx.
func (g *gatherer) spread(p *place, lamp int) float64 {
	t, bright := g.s.t, g.s.bright[lamp]
	var sums [runs]float64
	if len(g.inCells) < len(t.cells) {
		g.inCells = make([]float64, len(t.cells))
	}
	for r, h := range p.hits {
		w := g.rays[r]
		run := r * runs / len(p.hits)
		switch {
		case w == 0:
		case p.cellOf != nil && p.cellOf[r] >= 0:
			n := p.cellOf[r]
			g.inCells[n] += w
			sums[run] += w * g.s.fromCell(n, lamp).Y()
		case h >= 4 && !g.known[h]:
			sums[run] += w * float64(bright[h])
		}
	}
	square := variance(&sums)
	square = g.addCellSpread(square, p, lamp)
	return math.Sqrt(square + g.linkSpread(t, lamp))
}

// addCellSpread adds to a square those of what the rays of cells put a receptor off by.
func (g *gatherer) addCellSpread(square float64, p *place, lamp int) float64 {
	for _, n := range p.cellOf {
		if n >= 0 {
			off := g.inCells[n] * g.s.cells[lamp][n].off
			square += off * off
			g.inCells[n] = 0
		}
	}
	return square
}

// variance is that of the sum of some runs.
func variance(sums *[runs]float64) (square float64) {
	mean := 0.0
	for _, v := range sums {
		mean += v / runs
	}
	for _, v := range sums {
		square += (v - mean) * (v - mean) * runs / (runs - 1)
	}
	return square
}

// linkSpread is the square of what the rays of patches put a receptor off by.
func (g *gatherer) linkSpread(t *Transport, lamp int) (square float64) {
	slot, weight := uint32(0), 0.0
	close := func() {
		off := weight * float64(g.s.halfDifferences[lamp][slot])
		square += off * off
		weight = 0
	}
	for _, h := range g.met {
		e := h
		if h >= uint32(4*len(t.patches)) {
			e = t.filtered[(h-uint32(4*len(t.patches)))/4].element
		}
		if e/4 != slot {
			close()
			slot = e / 4
		}
		weight += g.shares[h]
	}
	close()
	return square
}
