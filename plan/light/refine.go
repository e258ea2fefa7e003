package light

import (
	"context"
	"math"
	"slices"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/light/radiosity"
)

// Few rays meet light that comes round a corner, and it falls off within a patch. Where that leaves receptors off by more than the quality
// allows by their own word, the light is followed once more for them, with smaller patches and more rays. That costs several times as much, by
// receptor: at few places all are read so, at many those alone that need it.

// fewPlacesRead is at how many places all receptors are read more closely as soon as one of them needs it, and as closely as can be.
const fewPlacesRead = 16

// backAtReceptors is what receptors get back from surfaces: some by a closer solution.
type backAtReceptors struct {
	rough, closer *radiosity.Solution
	of            []int // the receptors of the closer one
}

// find gives the solution that a receptor is read from, and its place there.
func (a *backAtReceptors) find(receptor int) (s *radiosity.Solution, i int) {
	if i, is := slices.BinarySearch(a.of, receptor); is {
		return a.closer, i
	}
	return a.rough, receptor
}

// Keys is radiosity.Solution.Keys.
func (a *backAtReceptors) Keys(receptor int) []radiosity.Key {
	s, i := a.find(receptor)
	return s.Keys(i)
}

// Point is radiosity.Solution.Point.
func (a *backAtReceptors) Point(receptor, lamp int) []colour.RGB {
	s, i := a.find(receptor)
	return s.Point(i, lamp)
}

// Spread is radiosity.Solution.Spread.
func (a *backAtReceptors) Spread(receptor, lamp int) float64 {
	s, i := a.find(receptor)
	return s.Spread(i, lamp)
}

// refine solves once more for the receptors that need it.
func (w *World) refine(ctx context.Context, b *Basis, seen []radiosity.Lamp, fresh []int, rough *radiosity.Solution) (*backAtReceptors, error) {
	out := &backAtReceptors{rough: rough}
	if rough.SharesRays() {
		return out, nil
	}
	of := w.refined(b, fresh, rough)
	if len(of) == 0 {
		return out, nil
	}
	if b.finer.transport == nil || !slices.Equal(b.finer.of, of) {
		some := make([]Receptor, len(of))
		for k, i := range of {
			some[k] = b.resolved[i]
		}
		t, err := traceSet(ctx, w, w.radiosity.Closer(b.closeness(rough)), some, nil)
		if err != nil {
			return nil, err
		}
		b.finer = finer{t, of}
	}
	closer, err := b.finer.transport.Solve(ctx, seen)
	out.closer, out.of = closer, of
	return out, err
}

// refined are the receptors that are read more closely: with one that needs it all at its place, and where places are few at all of them.
func (w *World) refined(b *Basis, fresh []int, rough *radiosity.Solution) (all []int) {
	needs := make([]bool, rough.Places())
	for n := range b.resolved {
		if needsRefinement(b, fresh, rough, n, w.allowedRayError) {
			needs[rough.PlaceOf(n)] = true
		}
	}
	everywhere := len(needs) <= fewPlacesRead && slices.Contains(needs, true)
	for n := range b.resolved {
		if everywhere || needs[rough.PlaceOf(n)] {
			all = append(all, n)
		}
	}
	return all
}

// needsRefinement says whether the rays leave receptor n off by more than a share of its light that is allowed, all lights at a level of 1.
func needsRefinement(b *Basis, fresh []int, rough *radiosity.Solution, n int, allowed float64) bool {
	square, all := 0.0, 0.0
	for k, i := range fresh {
		off := rough.Spread(n, k)
		square += off * off
		for _, e := range rough.Point(n, k) {
			all += e.Y()
		}
		for _, points := range b.columns[i].points {
			all += points[n].Y()
		}
	}
	return math.Sqrt(square) > allowed*all
}

// closeness is the share of the way to the closest that receptors are solved. The surfaces of a crowd cost so much the more, as there are more of them:
// past a few places where light is read that falls there it is the less close, so that twice as many cost at most twice. What a camera sees of surfaces
// is not among these.
func (b *Basis) closeness(rough *radiosity.Solution) float64 {
	lit := map[int]bool{}
	for n := range b.resolved {
		if b.targets.Points[n].Response != Radiance {
			lit[rough.PlaceOf(n)] = true
		}
	}
	return fewPlacesRead / float64(max(len(lit), fewPlacesRead))
}

// traceSet finds how the surfaces, receptors and lattices see each other, at the quality of the World or one closer. What is known of surfaces
// serves those that are cut alike.
func traceSet(ctx context.Context, w *World, q radiosity.Quality, points []Receptor, lattices []Lattice) (*radiosity.Transport, error) {
	switch {
	case w.memory == nil:
	case q == w.radiosity:
		return w.memory.rough.Trace(ctx, w.set, w.bvh, q, w.workers, points, lattices)
	case q == w.radiosity.Closer(1):
		return w.memory.closer.Trace(ctx, w.set, w.bvh, q, w.workers, points, lattices)
	}
	return radiosity.Trace(ctx, w.set, w.bvh, q, w.workers, points, lattices)
}
