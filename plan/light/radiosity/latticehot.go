package radiosity

import (
	"context"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/light/internal/parallel"
	"scrimshaw/plan/light/internal/sobol"
)

// The rays of a lattice's points miss a hot spot, or take it for more than it is, as those of patches do: the points look at
// hot elements, too, and their rays leave out what these return of a lamp's own light. Neighbours share that as they share
// rays.

// hotShare is the share of a lamp's returned light from which on the points of lattices look at what is hot by it: looks cost
// as much as rays, and of less than that rays do not miss what would show.
const hotShare = 0.25

// setWithoutHot sets the exitance that the rays of lattices meet.
func (s *Solution) setWithoutHot() {
	t := s.t
	if len(t.lattices) == 0 {
		return
	}
	s.withoutHot = make([][]columns32, len(s.blocks))
	for b := range s.blocks {
		s.withoutHot[b] = s.blocks[b].exitance
	}
	cloned := make([]bool, len(s.blocks))
	end := uint32(4 * len(t.patches))
	for lamp := range s.hot {
		if s.hot[lamp].share() < hotShare {
			continue
		}
		hot := s.hot[lamp].of
		for element := range hot {
			s.takeOut(cloned, element, element, lamp)
		}
		for i := range t.filtered {
			if _, is := hot[t.filtered[i].element]; is && !t.filtered[i].mirror {
				s.takeOut(cloned, end+4*uint32(i), t.filtered[i].element, lamp)
			}
		}
	}
}

// takeOut takes what a hot element returns of a lamp's own light out of what is seen as element seen. The blocks that
// were not cloned yet are.
func (s *Solution) takeOut(cloned []bool, seen, element uint32, lamp int) {
	own := s.ofLamp(element, lamp).Times(s.t.factor(seen))
	for c := range s.t.Channels() {
		b, k := s.column(lamp, c)
		if !cloned[b] {
			s.withoutHot[b], cloned[b] = slices.Clone(s.withoutHot[b]), true
		}
		s.withoutHot[b][seen][k] -= float32(own[c])
	}
}

// addHotTo adds what hot elements return of the lamps' own light to the points of a lattice.
func (s *Solution) addHotTo(ctx context.Context, f *frame, planes [][]float32) error {
	t := s.t
	tracers := t.mesh.tracers(t.workers, f.NV)
	for lamp := range s.hot {
		hot := &s.hot[lamp]
		if hot.share() < hotShare {
			continue
		}
		own := planes[lamp*t.Channels() : (lamp+1)*t.Channels()]
		err := parallel.For(ctx, t.workers, f.NV, func(worker, j int) {
			tracers[worker].choice.of = nil // the choice may not hang on what row this worker had before
			for i := range f.NU {
				if n := j*f.NU + i; !f.blankAt(n) {
					from := t.ofPoint(f, i, j)
					t.sampleHot(&tracers[worker], hot, &from, func(g hotSample) {
						for c := range own {
							own[c][n] += float32(g.gain[c] * g.part.own[c])
						}
					})
				}
			}
		})
		if err != nil {
			return err
		}
	}
	return nil
}

// isolatedSamples is how many times as often as a patch a point of a lattice looks that is alone. Where neighbours lend each
// other what they see, it is sharedSamples for all of them.
const (
	isolatedSamples = 8
	sharedSamples   = sets / 2
)

// ofPoint is the viewpoint of a point of a lattice. Neighbours that lend each other what they see look in turn, as their rays
// do.
func (t *Transport) ofPoint(f *frame, i, j int) viewpoint {
	at := f.At(i, j)
	v := viewpoint{middle: at, normal: f.Axis(at), response: f.Response, skip: f.Skip, closeSamples: 1, turns: 1,
		place: func(_, _ float64) r3.Vec { return at }}
	if f.shared {
		all := t.quality.HotSamples * sharedSamples
		v.turn, v.turns, v.samples = bayer[j%side*side+i%side], sets, all/sets
		half := uint32(1<<31) / uint32(all)
		v.offset, v.shift = 0.5, sobol.Sample{half, half, half, half}
		return v
	}
	v.samples, v.shift = isolatedSamples*t.quality.HotSamples, sobol.Shift(uint32(j*f.NU+i))
	v.offset = offsetOf(v.shift)
	return v
}
