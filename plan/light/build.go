package light

import (
	"context"
	"fmt"
	"sync"

	"scrimshaw/plan/solid"
)

// Build makes a World of a set, which must not change afterwards.
func Build(ctx context.Context, set *solid.Set, o Options) (*World, error) {
	if o.Quality > Fine {
		return nil, fmt.Errorf("light: no quality %d", o.Quality)
	}
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	if m := o.Memory; m == nil || !m.next(set, o) {
		w := newWorld(set, o)
		if m == nil {
			return worldFor(w, o), nil
		}
		m.world = w
	}
	return worldFor(o.Memory.world, o), nil
}

// newWorld makes a set ready, without what set-ups of the same solids differ by.
func newWorld(set *solid.Set, o Options) *World {
	w := &World{set: set, bvh: solid.NewBVH(set), workers: o.Workers, direct: o.Direct || !reflects(set), radiosity: o.Quality.radiosity(),
		masks: &sync.Pool{}, scattering: map[solid.ID]bool{}}
	w.faces, w.tubes, w.bundle = o.Quality.points()
	w.little = o.Quality.little()
	w.errorModel, w.allowedRayError = o.Quality.errorModel(), o.Quality.allowedRayError()
	w.sortSet(set)
	w.findMirrors(set)
	return w
}

// worldFor is the World of one set-up of its solids.
func worldFor(w *World, o Options) *World {
	own, bodies := *w, o.Bodies
	if bodies == nil {
		bodies = &solid.Set{}
	}
	own.report, own.slender, own.bodies, own.memory = o.Progress, o.Slender, solid.NewBVH(bodies), o.Memory
	return &own
}
