package light

import (
	"context"

	"scrimshaw/plan/light/internal/parallel"
)

// computeFields computes the fresh lights on the lattices.
func (w *World) computeFields(ctx context.Context, b *Basis, lamps []*lamp, fresh []int, p *progress) error {
	masks, _ := w.masks.Get().(*[]uint64)
	if masks == nil {
		masks = new([]uint64)
	}
	defer w.masks.Put(masks)
	for k := range b.targets.Lattices {
		lat := &b.targets.Lattices[k]
		var g *grid
		if drawable(lat) {
			g = newGrid(lat, w.bvh.Epsilon())
		}
		for _, i := range fresh {
			var values []float32
			var err error
			if g != nil && lamps[i].shade == nil && lamps[i].screened == nil {
				values, *masks, err = w.drawnField(ctx, g, lamps[i], *masks)
			} else {
				values, err = w.tracedField(ctx, lat, lamps[i])
			}
			if err != nil {
				return err
			}
			if b.mix != nil {
				b.mix.add(sumOf(lamps[i]), k, lat.NU*lat.NV, values, b.targets.Fixed[b.Lights[i]])
			} else {
				b.columns[i].fields = append(b.columns[i].fields, values)
			}
			p.step(1)
		}
	}
	return nil
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
	size := lat.NU * lat.NV
	out := make([]float32, channels*size)
	tracers := make([]tracer, parallel.Workers(w.workers, lat.NV))
	err := parallel.For(ctx, w.workers, lat.NV, func(worker, j int) {
		t := &tracers[worker]
		t.BVH, t.quick = w.bvh, l.shade != nil || l.screened != nil
		for i := range lat.NU {
			if lat.Masked(i, j) {
				continue
			}
			r := lat.Receptor(i, j)
			sum := t.total(l, &r)
			for c := range channels {
				out[c*size+j*lat.NU+i] = float32(sum[c])
			}
		}
	})
	return out, err
}
