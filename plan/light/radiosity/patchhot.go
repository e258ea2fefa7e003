package radiosity

import (
	"context"
	"math"

	"scrimshaw/plan/light/internal/parallel"
)

// lightFromHot lets patches look at what each lamp makes hot, face by face.
func (s *Solution) lightFromHot(ctx context.Context) error {
	t := s.t
	s.fromHot, s.halfDifferences = make([][]float32, s.lamps), make([][]float32, s.lamps)
	for lamp := range s.fromHot {
		s.halfDifferences[lamp] = make([]float32, len(t.patches))
		if len(s.hot[lamp].parts) > 0 {
			s.fromHot[lamp] = make([]float32, t.Channels()*len(t.patches))
		}
	}
	faces := len(t.mesh.faces)
	tracers := t.mesh.tracers(t.workers, faces*s.lamps)
	return parallel.For(ctx, t.workers, faces*s.lamps, func(worker, i int) {
		if lamp := i / faces; s.fromHot[lamp] != nil {
			l := patchesLook{t, &tracers[worker], &s.hot[lamp], s.fromHot[lamp], s.halfDifferences[lamp]}
			l.fromFace(&t.mesh.faces[i%faces])
		}
	})
}

// patchesLook is how patches look at what a lamp makes hot.
type patchesLook struct {
	*Transport
	tracer *tracer
	hot    *hotParts
	lux    []float32 // by slot and channel: what they get of it
	half   []float32 // by slot: what half of the looks put the exitance off by, lm/m²
}

// A choice of what is looked at costs about as much as choiceLooks looks: patches that look a few times each share it in squares until they
// take as many together, but in none wider than mostSquare, m, for what is a good choice for one end is a poor one for the other. leastSquare
// is how many patches each way share it anyhow.
const (
	choiceLooks = 64
	mostSquare  = 1.1
	leastSquare = 2
)

// squareSide is how many patches, so far apart, m, and so many looks each, make a row of a square that shares a choice.
func (s *hotParts) squareSide(apart float64, looks int) int {
	side := min(math.Ceil(math.Sqrt(choiceLooks/float64(max(looks, 1)))), math.Floor(mostSquare/apart))
	return max(leastSquare, int(side), s.tileSide(apart))
}

// fromFace lets the patches of a face look, square by square.
func (l *patchesLook) fromFace(f *face) {
	side := l.hot.squareSide(max(f.du, f.dv), l.quality.HotSamples)
	for y := 0; y < f.nv; y += side {
		for x := 0; x < f.nu; x += side {
			l.fromSquare(f, x, y, min(x+side, f.nu), min(y+side, f.nv))
		}
	}
}

// fromSquare lets the patches of a face look from column x up to toX and from row y up to toY.
func (l *patchesLook) fromSquare(f *face, x, y, toX, toY int) {
	chosen := false
	for j := y; j < toY; j++ {
		row := int(f.first) + j*f.nu
		for _, slot := range l.slots[row+x : row+toX] {
			if slot == 0 {
				continue
			}
			if !chosen {
				l.choose(f, int(slot), float64(x+toX)/2, float64(y+toY)/2, float64(toX-x), float64(toY-y))
				chosen = true
			}
			l.fromPatch(int(slot))
		}
	}
}

// choose makes the choice of a rectangle of patches, some by some with its middle at (x, y) in patches, one of which is at slot.
func (l *patchesLook) choose(f *face, slot int, x, y, nu, nv float64) {
	around := l.ofPatch(slot)
	around.middle = f.at(x*f.du, y*f.dv)
	l.tracer.choice.choose(l.hot, &around, math.Hypot((nu-1)/2*f.du, (nv-1)/2*f.dv))
}

// fromPatch lets one patch look.
func (l *patchesLook) fromPatch(slot int) {
	channels := l.Channels()
	from, reflect := l.ofPatch(slot), &l.mesh.faces[l.patches[slot].face].reflect
	from.samples = some(from.samples, l.hot.looks)
	l.sampleHot(l.tracer, l.hot, &from, func(g hotSample) {
		for c := range channels {
			l.lux[slot*channels+c] += float32(g.gain[c] * g.part.own[c])
		}
		c := channels / 2
		l.half[slot] += float32(g.gain[c] * g.part.own[c] * (1 - 2*float64(g.number&1)) * reflect[c])
	})
}
