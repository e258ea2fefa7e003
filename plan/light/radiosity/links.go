package radiosity

import (
	"context"
	"slices"

	"scrimshaw/plan/light/internal/parallel"
	"scrimshaw/plan/light/internal/sobol"
)

// linkAllSeen follows the rays of all patches that have been seen, and of those that they see, until no
// new ones come up.
func (t *Transport) linkAllSeen(ctx context.Context) error {
	t.slots = t.mesh.slotsOfBlack()
	t.samples = sobol.Samples(max(t.quality.Links, mostTried))
	t.patches = append(t.patches, patch{})
	for i := range t.places {
		t.enqueue(t.places[i].hits)
	}
	for i := range t.cells {
		t.enqueue(t.cells[i].hits)
		t.enqueue(t.cells[i].beyond)
	}
	for _, f := range t.lattices {
		for s := range f.buffers {
			t.enqueue(f.buffers[s].seen)
		}
	}
	if err := t.linkQueue(ctx); err != nil {
		return err
	}
	if err := linkMissed(ctx, t); err != nil {
		return err
	}
	if err := t.addRays(ctx); err != nil {
		return err
	}
	return t.linkQueue(ctx)
}

// linkMissed links the patches that rays have missed, and then all cloth that what is followed sees.
func linkMissed(ctx context.Context, t *Transport) error {
	s := newSearch(t)
	if err := s.fromPlaces(ctx); err != nil {
		return err
	}
	for {
		if err := t.linkQueue(ctx); err != nil {
			return err
		}
		if s.forCloth(newTracer(t.mesh)); len(t.queue) == 0 {
			return nil
		}
	}
}

// linkQueue links fresh patches until none are left.
func (t *Transport) linkQueue(ctx context.Context) error {
	for len(t.queue) > 0 {
		slices.Sort(t.queue)
		round, err := t.linkPatches(ctx, t.queue)
		if err != nil {
			return err
		}
		t.queue = t.queue[:0]
		more := 0
		for i := range round {
			more += len(round[i].links)
		}
		t.links, t.patches = slices.Grow(t.links, more), slices.Grow(t.patches, len(round))
		for i := range round {
			t.enqueue(round[i].links)
			p := round[i].patch
			p.from = int32(len(t.links))
			t.links = append(t.links, round[i].links...)
			p.to = int32(len(t.links))
			t.patches = append(t.patches, p)
		}
	}
	return nil
}

// linkPatches gives patches, which ascend, with what they see.
func (t *Transport) linkPatches(ctx context.Context, patches []uint32) ([]linked, error) {
	if t.memory == nil {
		return linkFresh(ctx, t, patches)
	}
	out, missing := t.memory.linksOf(patches)
	numbers := make([]uint32, len(missing))
	for k, i := range missing {
		numbers[k] = patches[i]
	}
	fresh, err := linkFresh(ctx, t, numbers)
	if err != nil {
		return nil, err
	}
	t.memory.keepLinks(fresh)
	for k, i := range missing {
		out[i] = fresh[k]
	}
	return out, nil
}

// linkFresh follows the rays of patches, which ascend.
func linkFresh(ctx context.Context, t *Transport, patches []uint32) ([]linked, error) {
	out := make([]linked, len(patches))
	drawn, rest := t.mesh.drawings(patches)
	buffers := make([]*depthBuffer, parallel.Workers(t.workers, len(drawn)))
	err := parallel.For(ctx, t.workers, len(drawn), func(worker, i int) {
		if buffers[worker] == nil {
			buffers[worker] = newDepthBuffer(t.mesh, nil)
		}
		buffers[worker].link(t, &drawn[i], patches, out)
	})
	if err != nil {
		return nil, err
	}
	chunks := slices.Collect(slices.Chunk(rest, chunk))
	tracers := t.mesh.tracers(t.workers, len(chunks))
	err = parallel.For(ctx, t.workers, len(chunks), func(worker, c int) {
		for _, i := range chunks[c] {
			out[i] = t.linkOne(&tracers[worker], patches[i])
		}
	})
	return out, err
}
