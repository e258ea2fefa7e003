package radiosity

import (
	"context"
	"slices"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/light/internal/parallel"
	"scrimshaw/plan/solid"
)

// read reads all receptors, place by place.
func (s *Solution) read(ctx context.Context, lamps []Lamp) error {
	t := s.t
	if err := s.addHalfDifferences(ctx); err != nil {
		return err
	}
	s.readings = make([]reading, len(t.receptors))
	gatherers := make([]*gatherer, parallel.Workers(t.workers, len(t.places)))
	return parallel.For(ctx, t.workers, len(t.places), func(worker, n int) {
		if gatherers[worker] == nil {
			size := 4 * (len(t.patches) + len(t.filtered))
			gatherers[worker] = &gatherer{s: s, lamps: lamps, worker: worker, view: solid.Viewer{BVH: t.mesh.bvh},
				shares: make([]float64, size), known: make([]bool, size), exact: make([]float64, size), whole: make([]bool, size)}
		}
		g := gatherers[worker]
		g.local = make([]map[int]colour.RGB, len(lamps))
		for lamp := range g.local {
			g.local[lamp] = map[int]colour.RGB{}
		}
		for _, i := range t.places[n].receptors {
			s.readings[i] = g.reading(i)
		}
	})
}

// reading reads one receptor.
func (g *gatherer) reading(i int) reading {
	t := g.s.t
	p := &t.places[t.placeOf[i]]
	g.met, g.fixed, g.through = g.met[:0], g.fixed[:0], g.through[:0]
	g.groups, g.keys = nil, nil
	g.rays = t.rayWeights(i, g.rays)
	g.addShares(p)
	g.chooseExact(i)
	out := reading{values: make([][]colour.RGB, g.s.lamps), spread: make([]float64, g.s.lamps)}
	for lamp := range out.values {
		out.values[lamp] = g.sum(i, p, lamp)
		out.spread[lamp] = g.spread(p, lamp)
	}
	for _, h := range g.met {
		g.shares[h] = 0
	}
	for _, h := range g.fixed {
		g.known[h] = false
	}
	out.keys = g.keys
	for lamp, v := range out.values {
		out.values[lamp] = append(v, make([]colour.RGB, len(out.keys)-len(v))...)
	}
	return out
}

// addShares adds up the shares of the elements that the rays of a place have met, cells left out.
func (g *gatherer) addShares(p *place) {
	for r, h := range p.hits {
		if h < 4 || g.rays[r] == 0 || p.cellOf != nil && p.cellOf[r] >= 0 {
			continue
		}
		if g.shares[h] == 0 {
			g.met = append(g.met, h)
		}
		g.shares[h] += g.rays[r]
	}
	slices.Sort(g.met)
}
