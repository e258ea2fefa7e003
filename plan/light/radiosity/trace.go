package radiosity

import (
	"context"

	"scrimshaw/plan/light/receptor"
	"scrimshaw/plan/solid"
)

// Trace follows rays through a set from receptors and lattices on, and from what they see.
func Trace(ctx context.Context, set *solid.Set, bvh *solid.BVH, q Quality, workers int, points []receptor.Receptor, lattices []receptor.Lattice) (*Transport, error) {
	return traceMesh(ctx, &Transport{mesh: newMesh(set, bvh, q.Patch), workers: workers, quality: q, receptors: points}, lattices)
}

// Trace is the function Trace for the set of the memory, by what that knows.
func (m *Memory) Trace(ctx context.Context, set *solid.Set, bvh *solid.BVH, q Quality, workers int, points []receptor.Receptor, lattices []receptor.Lattice) (*Transport, error) {
	if m.mesh == nil {
		m.mesh = newMesh(set, bvh, q.Patch)
		m.linked, m.lamps = make([]*linked, m.mesh.count), map[Lamp]*knownLamp{}
	}
	return traceMesh(ctx, &Transport{mesh: m.mesh, memory: m, workers: workers, quality: q, receptors: points}, lattices)
}

// traceMesh is Trace for a transport whose set has been cut into patches.
func traceMesh(ctx context.Context, t *Transport, lattices []receptor.Lattice) (*Transport, error) {
	if !t.mesh.reflects {
		return t, nil
	}
	t.group()
	if err := t.traceFromPlaces(ctx); err != nil {
		return nil, err
	}
	for i := range lattices {
		t.points += lattices[i].NU * lattices[i].NV
	}
	for i := range lattices {
		l := &lattices[i]
		f := t.memory.frameOf(l, raysOn(t, l))
		if f == nil {
			var err error
			if f, err = t.traceFromLattice(ctx, l); err != nil {
				return nil, err
			}
			t.memory.keepFrame(f)
		}
		t.lattices = append(t.lattices, f)
	}
	if err := t.linkAllSeen(ctx); err != nil {
		return nil, err
	}
	t.number()
	t.cloth = findTwins(t.mesh, t.patches, t.slots)
	t.throughPanes = listFiltered(t.filtered, len(t.patches))
	return t, nil
}
