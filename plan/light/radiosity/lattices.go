package radiosity

import (
	"context"

	"scrimshaw/plan/light/internal/parallel"
	"scrimshaw/plan/solid"
)

// Key is the way that light came back: the thing that it left last, by its first solid, and the clear
// sheets that it passed from there, in order.
type Key struct {
	From solid.ID
	Via  []solid.ID
}

// keyOf is the key of an element, and the number of its group.
func (t *Transport) keyOf(element uint32) (k Key, group int32) {
	if end := uint32(4 * len(t.patches)); element >= end {
		v := &t.filtered[(element-end)/4]
		k.Via, element = v.via, v.element
	}
	group = t.mesh.faces[t.patches[element/4].face].group
	k.From = t.mesh.groups[group]
	return k, group
}

// Lattice is what the points of a lattice get of each lamp's light, lx: for each lamp a plane of
// values, row by row, or three, channel by channel. Nil where nothing comes back.
func (s *Solution) Lattice(ctx context.Context, lattice int) ([][]float32, error) {
	if len(s.blocks) == 0 {
		return make([][]float32, s.lamps), nil
	}
	t, f := s.t, s.t.lattices[lattice]
	columns := s.lamps * s.channels()
	out, planes := s.planes(f.NU * f.NV)
	workers := parallel.Workers(t.workers, sets*len(s.blocks))
	sums, near := make([][]columns32, workers), make([][]columns32, workers)
	err := parallel.For(ctx, t.workers, sets*len(s.blocks), func(worker, i int) {
		b := i / sets
		q := &f.buffers[i%sets]
		sums[worker], near[worker] = q.sum(sums[worker], near[worker], len(q.points), f.rays, s.withoutHot[b])
		for c := range min(width, columns-b*width) {
			f.place(planes[b*width+c], sums[worker], i%sets, c)
		}
	})
	if err == nil {
		err = s.addHotTo(ctx, f, planes)
	}
	if err != nil || !f.shared {
		return out, err
	}
	spare := make([][]float32, parallel.Workers(t.workers, columns))
	err = parallel.For(ctx, t.workers, columns, func(worker, i int) {
		spare[worker] = f.smooth(planes[i], spare[worker])
	})
	return out, err
}

// planes makes room for the values of a lattice: by lamp, and the same by column, plane by plane.
func (s *Solution) planes(size int) (byLamp, byColumn [][]float32) {
	byLamp = make([][]float32, s.lamps)
	for i := range byLamp {
		byLamp[i] = make([]float32, s.channels()*size)
		for c := range s.channels() {
			byColumn = append(byColumn, byLamp[i][c*size:(c+1)*size])
		}
	}
	return byLamp, byColumn
}

// place writes one column of the sums of a set to a plane.
func (f *frame) place(plane []float32, sums []columns32, set, column int) {
	nu, _ := f.size(set)
	share := float32(f.Response.Integral() / float64(f.rays))
	for at, n := range f.buffers[set].points {
		i, j := int(n)%nu*side+set%side, int(n)/nu*side+set/side
		plane[j*f.NU+i] = sums[at][column] * share
	}
}
