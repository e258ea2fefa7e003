package radiosity

import (
	"context"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/light/internal/parallel"
	"scrimshaw/plan/light/internal/sobol"
	"scrimshaw/plan/light/receptor"
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
	tracers := s.t.mesh.tracers(s.t.workers, f.NV)
	for lamp := range s.hot {
		hot := &s.hot[lamp]
		if hot.share() < hotShare {
			continue
		}
		side := f.tileSide(hot)
		own := planes[lamp*s.channels() : (lamp+1)*s.channels()]
		err := parallel.For(ctx, s.t.workers, (f.NV+side-1)/side, func(worker, band int) {
			y, toY := band*side, min((band+1)*side, f.NV)
			for x := 0; x < f.NU; x += side {
				l := latticeLook{s.t, f, lamp, hot, own, x, y, min(x+side, f.NU), toY}
				l.look(&tracers[worker])
			}
		})
		if err != nil {
			return err
		}
	}
	return nil
}

// tileSide is how many points each way share a choice of what a lamp makes hot: whole sets where they lend each other what they see.
func (f *frame) tileSide(hot *hotParts) int {
	points := hot.tileSide(max(r3.Norm(f.U), r3.Norm(f.V)))
	if f.shared {
		return max(1, points/side) * side
	}
	return points
}

// latticeLook is how the points of a rectangle of a lattice look at what a lamp makes hot.
type latticeLook struct {
	t        *Transport
	f        *frame
	lamp     int
	hot      *hotParts
	own      [][]float32 // by channel: the light of the points, lx
	x, y     int         // the first column and row
	toX, toY int         // those after the last
}

// look adds what the points get of it.
func (l *latticeLook) look(e *tracer) {
	f := l.f
	all, chosen := f.looks(l.t.quality, l.hot), false
	for j := l.y; j < l.toY; j++ {
		for i := l.x; i < l.toX; i++ {
			n := j*f.NU + i
			if f.blankAt(n) {
				continue
			}
			if !chosen {
				l.choose(e)
				chosen = true
				all = l.some(e, all)
			}
			if f.shared && turnOf(i, j, l.lamp) >= all && len(e.choice.close) == 0 {
				continue
			}
			from := l.t.ofPoint(f, i, j, l.lamp, all)
			l.t.sampleHot(e, l.hot, &from, func(g hotSample) {
				for c := range l.own {
					l.own[c][n] += float32(g.gain[c] * g.part.own[c])
				}
			})
		}
	}
}

// some is how many of the usual looks the points of the rectangle take, once its choice is made: half as many where neighbours lend each other
// what they see and what is hot can be no large share of what rays already gave: what half of the looks are off by, the rest makes small. Domes,
// which look all round at fewer neighbours, take all.
func (l *latticeLook) some(e *tracer, usual int) int {
	spare := l.t.quality.Spare
	if spare == 0 || !l.f.shared || l.f.Response != receptor.Cosine {
		return usual
	}
	rest := 0.0
	for _, plane := range l.own {
		for j := l.y; j < l.toY; j++ {
			for _, lux := range plane[j*l.f.NU+l.x : j*l.f.NU+l.toX] {
				rest += float64(lux)
			}
		}
	}
	rest /= float64((l.toX - l.x) * (l.toY - l.y))
	most := e.choice.chances[len(e.choice.chances)-1] / math.Pi
	if most > spare*rest {
		return usual
	}
	return max(usual/2, min(usual, leastLooks))
}

// choose makes the choice of the rectangle.
func (l *latticeLook) choose(e *tracer) {
	f, u, v := l.f, float64(l.toX-1-l.x)/2, float64(l.toY-1-l.y)/2
	middle := r3.Add(f.At(l.x, l.y), r3.Add(r3.Scale(u, f.U), r3.Scale(v, f.V)))
	around := viewpoint{middle: middle, normal: f.Axis(middle), response: f.Response, skip: f.Skip}
	e.choice.choose(l.hot, &around, u*r3.Norm(f.U)+v*r3.Norm(f.V))
}

// latticeBeside is how many looks of a point each part gets that only its element is close for.
const latticeBeside = 1.0 / 8

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
	v := viewpoint{middle: at, normal: f.Axis(at), response: f.Response, skip: f.Skip, closeSamples: 1, besideSamples: latticeBeside, turns: 1, standsFor: 1}
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
