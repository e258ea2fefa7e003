package light

import (
	"context"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/light/internal/parallel"
)

// computeFields computes the fresh lights on the lattices.
func (w *World) computeFields(ctx context.Context, b *Basis, lamps []*readyLamp, fresh []int, p *progress) error {
	masks, _ := w.masks.Get().(*[]uint64)
	if masks == nil {
		masks = new([]uint64)
	}
	defer w.masks.Put(masks)
	for k := range b.targets.Lattices {
		seen := newSeenLattice(w, &b.targets.Lattices[k])
		for _, i := range fresh {
			if b.mix != nil && b.targets.Fixed[b.Lights[i]] == (colour.RGB{}) {
				p.step(1) // it is off, and stays so
				continue
			}
			values := w.memory.fieldOn(lamps[i], seen.Lattice)
			if values == nil {
				var err error
				if values, err = w.fieldOf(ctx, seen, lamps[i].lamp, masks); err != nil {
					return err
				}
				w.memory.keepField(lamps[i], seen.Lattice, values)
			}
			if b.mix != nil {
				b.mix.add(sumOf(lamps[i].lamp), k, seen.NU*seen.NV, values, b.targets.Fixed[b.Lights[i]])
			} else {
				b.columns[i].fields = append(b.columns[i].fields, values)
			}
			p.step(1)
		}
	}
	return nil
}

// seenLattice is a lattice, and the images of it in mirrors that have been asked for.
type seenLattice struct {
	*Lattice
	grid   *grid // nil where no shadows can be drawn on it
	images map[*mirror]*seenLattice
}

func newSeenLattice(w *World, l *Lattice) *seenLattice {
	s := &seenLattice{Lattice: l, images: map[*mirror]*seenLattice{}}
	if drawable(l) {
		s.grid = newGrid(l, w.bvh.Epsilon())
	}
	return s
}

// in is the image of the lattice in a mirror.
func (s *seenLattice) in(m *mirror) *seenLattice {
	if s.images[m] == nil {
		s.images[m] = newSeenLattice(m.w, m.lattice(s.Lattice))
	}
	return s.images[m]
}

// fieldOf is what a lamp gives to a lattice, straight and by mirrors. masks is memory to use again.
func (w *World) fieldOf(ctx context.Context, seen *seenLattice, l *lamp, masks *[]uint64) (values []float32, err error) {
	if seen.grid != nil && l.shade == nil && l.screened == nil && l.before == nil {
		values, *masks, err = w.drawnField(ctx, seen.grid, l, *masks)
	} else {
		values, err = w.tracedField(ctx, seen.Lattice, l)
	}
	for i := range l.images {
		m := &l.images[i]
		if err != nil {
			return nil, err
		}
		var more []float32
		if more, err = m.w.fieldOf(ctx, seen.in(m.mirror), m.l, masks); err == nil {
			values = addPlanes(values, more, m.Factor, seen.NU*seen.NV)
		}
	}
	if err != nil || len(l.boards) == 0 {
		return values, err
	}
	more, err := w.boardField(ctx, seen.Lattice, l)
	return addPlanes(values, more, colour.RGB{1, 1, 1}, seen.NU*seen.NV), err
}

// drawnField draws shadows. It gives back the memory of the masks.
func (w *World) drawnField(ctx context.Context, g *grid, l *lamp, masks []uint64) ([]float32, []uint64, error) {
	f := w.newField(g, l, masks)
	if err := f.shadows(ctx, w.workers); err != nil {
		return nil, nil, err
	}
	values, err := f.sum(ctx, w.workers)
	return values, f.masks, err
}

// tracedField traces every point of a lattice: of one whose receptors do not lie in its plane, and where the lamp is no
// opening that is as bright from all of its points, or its own screens hide a part of it from most of the lattice.
func (w *World) tracedField(ctx context.Context, lat *Lattice, l *lamp) ([]float32, error) {
	channels := 1
	if w.tinted {
		channels = 3
	}
	quick := l.shade != nil || l.screened != nil || l.before != nil
	seen := w.newSurfaceLamp(l)
	return w.eachPoint(ctx, lat, channels, quick, seen.hides, func(t *tracer, r *Receptor) colour.RGB { return t.total(l, r) })
}

// boardField traces what comes by boards.
func (w *World) boardField(ctx context.Context, lat *Lattice, l *lamp) ([]float32, error) {
	channels := 1
	if w.tinted || slices.ContainsFunc(l.boards, func(b litBoard) bool { return coloured(b.Factor) }) {
		channels = 3
	}
	return w.eachPoint(ctx, lat, channels, true, nil, func(t *tracer, r *Receptor) (sum colour.RGB) {
		t.gathered = t.byBoards(l, r, t.gathered[:0])
		return totalOf(t.gathered)
	})
}

// together is how many points of a row are asked at once whether anything comes to them: those of a large set behind a wall get
// nothing, and to find that of each costs as much as to find what others get.
const together = 16

// eachPoint traces every point of a lattice, quickly or closely, but those of a stretch of a row that all of the light is hidden from.
func (w *World) eachPoint(ctx context.Context, lat *Lattice, channels int, quick bool, hidden func(worker int, stretch []r3.Vec) bool, light func(t *tracer, r *Receptor) colour.RGB) ([]float32, error) {
	size := lat.NU * lat.NV
	out := make([]float32, channels*size)
	tracers := make([]tracer, parallel.Workers(w.workers, lat.NV))
	err := parallel.For(ctx, w.workers, lat.NV, func(worker, j int) {
		t := &tracers[worker]
		t.BVH, t.quick = w.bvh, quick
		known, dark := -1, false // the last stretch that was asked about
		for i := range lat.NU {
			if lat.Masked(i, j) {
				continue
			}
			if n := i / together; hidden != nil && n != known {
				known, dark = n, hidden(worker, []r3.Vec{lat.At(n*together, j), lat.At(min(lat.NU, (n+1)*together)-1, j)})
			}
			if dark {
				continue
			}
			r := lat.Receptor(i, j)
			sum := light(t, &r)
			for c := range channels {
				out[c*size+j*lat.NU+i] = float32(sum[c])
			}
		}
	})
	return out, err
}
