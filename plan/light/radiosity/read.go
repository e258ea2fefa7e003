package radiosity

import (
	"cmp"
	"context"
	"slices"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/light/crew"
	"scrimshaw/plan/solid"
)

// Key is the way that light came back: the thing that it left last, by its first solid, and the clear
// sheets that it passed from there, in order.
type Key struct {
	From solid.ID
	Via  []solid.ID
}

// pointShares is how the rays of a receptor part into keys.
type pointShares struct {
	keys  []Key
	which []int32 // by ray, -1 for those that see nothing
}

// sortShares finds the keys of all receptors.
func (t *Transport) sortShares() {
	t.shares = make([]pointShares, len(t.points))
	for i, hits := range t.points {
		t.shares[i] = t.sharesOf(hits)
	}
}

// keyOf is the key of an element, and its place among others.
func (t *Transport) keyOf(element uint32) (k Key, group int32) {
	if end := uint32(4 * len(t.patches)); element >= end {
		v := &t.veils[(element-end)/4]
		k.Via, element = v.via, v.element
	}
	group = t.mesh.faces[t.patches[element/4].face].group
	k.From = t.mesh.groups[group]
	return k, group
}

func (t *Transport) sharesOf(hits []uint32) pointShares {
	type entry struct {
		key   Key
		group int32
	}
	var found []entry
	index := func(element uint32) int {
		k, group := t.keyOf(element)
		return slices.IndexFunc(found, func(e entry) bool { return e.group == group && slices.Equal(e.key.Via, k.Via) })
	}
	s := pointShares{which: make([]int32, len(hits))}
	for _, h := range hits {
		if h >= 4 && index(h) < 0 {
			k, group := t.keyOf(h)
			found = append(found, entry{k, group})
		}
	}
	slices.SortFunc(found, func(a, b entry) int {
		return cmp.Or(cmp.Compare(a.group, b.group), slices.Compare(a.key.Via, b.key.Via))
	})
	for _, e := range found {
		s.keys = append(s.keys, e.key)
	}
	for r, h := range hits {
		s.which[r] = -1
		if h >= 4 {
			s.which[r] = int32(index(h))
		}
	}
	return s
}

// Keys returns the ways that light comes back to a receptor.
func (t *Transport) Keys(receptor int) []Key {
	if len(t.shares) == 0 {
		return nil
	}
	return t.shares[receptor].keys
}

// Point is what a receptor gets of a lamp's light, lx, by the ways of Keys.
func (s *Solution) Point(receptor, lamp int) []colour.RGB {
	t := s.t
	out := make([]colour.RGB, len(t.Keys(receptor)))
	if len(s.blocks) == 0 {
		return out
	}
	hits, which := t.points[receptor], t.shares[receptor].which
	share := t.weights[receptor] / float64(len(hits))
	for c := range t.Channels() {
		b, k := s.column(lamp, c)
		exitance := s.blocks[b].exitance
		for r, h := range hits {
			if which[r] >= 0 {
				out[which[r]][c] += float64(exitance[h][k]) * share
			}
		}
	}
	if t.Channels() == 1 {
		for i := range out {
			out[i][1], out[i][2] = out[i][0], out[i][0]
		}
	}
	return out
}

// Lattice is what the points of a lattice get of each lamp's light, lx: for each lamp a plane of
// values, row by row, or three, channel by channel. Nil where nothing comes back.
func (s *Solution) Lattice(ctx context.Context, lattice int) ([][]float32, error) {
	if len(s.blocks) == 0 {
		return make([][]float32, s.lamps), nil
	}
	t, f := s.t, s.t.lattices[lattice]
	channels, size := t.Channels(), f.NU*f.NV
	out := make([][]float32, s.lamps)
	for i := range out {
		out[i] = make([]float32, channels*size)
	}
	plane := func(column int) []float32 {
		lamp, c := column/channels, column%channels
		return out[lamp][c*size : (c+1)*size]
	}
	workers := crew.Size(t.workers, sets*len(s.blocks))
	sums, near := make([][]shining, workers), make([][]shining, workers)
	err := crew.Each(ctx, t.workers, sets*len(s.blocks), func(worker, i int) {
		b := i / sets
		q := &f.pictures[i%sets]
		sums[worker], near[worker] = q.sum(sums[worker], near[worker], len(q.points), f.rays, s.blocks[b].exitance)
		for c := range min(width, s.lamps*channels-b*width) {
			f.place(plane(b*width+c), sums[worker], i%sets, c)
		}
	})
	if err != nil || !f.shared {
		return out, err
	}
	spare := make([][]float32, crew.Size(t.workers, s.lamps*channels))
	err = crew.Each(ctx, t.workers, s.lamps*channels, func(worker, i int) {
		spare[worker] = f.smooth(plane(i), spare[worker])
	})
	return out, err
}

// place writes one column of the sums of a set to a plane.
func (f *frame) place(plane []float32, sums []shining, set, column int) {
	nu, _ := f.size(set)
	share := float32(f.Pattern.weight() / float64(f.rays))
	for at, n := range f.pictures[set].points {
		i, j := int(n)%nu*side+set%side, int(n)/nu*side+set/side
		plane[j*f.NU+i] = sums[at][column] * share
	}
}
