package radiosity

import (
	"context"
	"iter"
	"slices"

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
	tracers := t.mesh.tracers(t.workers, (f.NV+side-1)/side)
	for lamp := range s.hot {
		hot := &s.hot[lamp]
		if hot.share() < hotShare {
			continue
		}
		own := planes[lamp*s.channels() : (lamp+1)*s.channels()]
		all := f.looks(t.quality, hot)
		err := parallel.For(ctx, t.workers, (f.NV+side-1)/side, func(worker, band int) {
			choice := &tracers[worker].choice
			choice.of = nil // it may not hang on what band this worker had before
			for n := range f.inBand(band) {
				i, j := n%f.NU, n/f.NU
				if f.shared && turnOf(i, j, lamp) >= all && choice.hasNoneClose(hot, f.At(i, j)) {
					continue
				}
				from := t.ofPoint(f, i, j, lamp, all)
				t.sampleHot(&tracers[worker], hot, &from, func(g hotSample) {
					for c := range own {
						own[c][n] += float32(g.gain[c] * g.part.own[c])
					}
				})
			}
		})
		if err != nil {
			return err
		}
	}
	return nil
}

// inBand goes through the points of a few rows that have data, column by column: from one to the next it is not far.
func (f *frame) inBand(band int) iter.Seq[int] {
	return func(yield func(int) bool) {
		for i := range f.NU {
			for j := band * side; j < min(f.NV, (band+1)*side); j++ {
				if n := j*f.NU + i; !f.blankAt(n) && !yield(n) {
					return
				}
			}
		}
	}
}

// isolatedSamples is how many times as often as a patch a point of a lattice looks that is alone. Where neighbours lend each
// other what they see, it is sharedSamples for all of them.
const (
	isolatedSamples = 8
	sharedSamples   = sets / 2
)

// looks is how often a point of a lattice looks at what a lamp makes hot, or all do together that lend each other what
// they see.
func (f *frame) looks(q Quality, hot *hotParts) int {
	if f.shared {
		return some(sharedSamples*q.HotSamples, hot.looks)
	}
	return some(isolatedSamples*q.HotSamples, hot.looks)
}

// turnOf is the place of a point among those that look in turn at what a lamp makes hot.
func turnOf(i, j, lamp int) int { return (bayer[j%side*side+i%side] + lamp) % sets }

// ofPoint is the viewpoint of a point of a lattice. Neighbours that lend each other what they see look in turn, as their rays
// do; where there are fewer looks than neighbours, who looks stands for all, and is another one for each lamp.
func (t *Transport) ofPoint(f *frame, i, j, lamp, looks int) viewpoint {
	at := f.At(i, j)
	v := viewpoint{middle: at, normal: f.Axis(at), response: f.Response, skip: f.Skip, closeSamples: 1, turns: 1, standsFor: 1}
	if !f.shared {
		v.samples, v.shift = looks, sobol.Shift(uint32((lamp*f.NV+j)*f.NU+i))
		v.offset = offsetOf(v.shift)
		return v
	}
	v.turn, v.turns, v.samples = turnOf(i, j, lamp), min(sets, looks), looks/sets
	if looks < sets {
		v.standsFor = sets / float64(looks)
		if v.turn < looks {
			v.samples = 1
		}
	}
	half := uint32(1<<31) / uint32(looks)
	v.offset, v.shift = 0.5, sobol.Sample{half, half, half, half}
	return v
}
