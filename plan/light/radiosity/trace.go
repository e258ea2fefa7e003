package radiosity

import (
	"context"

	"scrimshaw/plan/light/receptor"
	"scrimshaw/plan/solid"
)

// Trace follows rays through a set from receptors and lattices on, and from what they see.
func Trace(ctx context.Context, set *solid.Set, bvh *solid.BVH, q Quality, workers int, points []receptor.Receptor, lattices []receptor.Lattice) (*Transport, error) {
	return traceMesh(ctx, newMesh(set, bvh, q.Patch), q, workers, points, lattices)
}

// traceMesh is Trace for a set that has been cut into patches.
func traceMesh(ctx context.Context, m *mesh, q Quality, workers int, points []receptor.Receptor, lattices []receptor.Lattice) (*Transport, error) {
	t := &Transport{mesh: m, workers: workers, quality: q, receptors: points}
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
		f, err := t.traceFromLattice(ctx, &lattices[i])
		if err != nil {
			return nil, err
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
