package radiosity

import (
	"context"
	"math"

	"scrimshaw/plan/light/internal/parallel"
)

// directLight asks each lamp what it gives to every patch, by lamp; and once more, closely, where the edge of a shadow runs over one
// and shows in the whole.
func (t *Transport) directLight(ctx context.Context, lamps []Lamp) (all []directLux, uneven [][]bool, err error) {
	solvers := make(directSolvers, len(lamps))
	for i, lamp := range lamps {
		solvers[i] = newDirectSolver(t, lamp)
	}
	if err = solvers.lightRows(ctx, t); err != nil {
		return nil, nil, err
	}
	if err = solvers.lightEdges(ctx, t); err != nil {
		return nil, nil, err
	}
	all, uneven = make([]directLux, len(lamps)), make([][]bool, len(lamps))
	err = parallel.For(ctx, t.workers, len(lamps), func(_, i int) {
		d := &solvers[i]
		d.balance()
		d.throughCloth()
		all[i], uneven[i] = d.lux, d.uneven()
	})
	return all, uneven, err
}

// directSolvers are those of all lamps, which are asked side by side.
type directSolvers []directSolver

// lightRows asks all lamps for the light of all patches.
func (solvers directSolvers) lightRows(ctx context.Context, t *Transport) error {
	chunks := (len(t.patches) + chunk - 1) / chunk
	err := parallel.For(ctx, t.workers, chunks*len(solvers), func(worker, i int) {
		d, c := &solvers[i/chunks], i%chunks
		end := min((c+1)*chunk, len(t.patches))
		for s := max(1, c*chunk); s < end; {
			s = d.lightRow(worker, s, end)
		}
	})
	for i := range solvers {
		d := &solvers[i]
		for s := 1; s < len(t.patches) && d.known != nil; s++ {
			t.memory.remember(d.known, t.patches[s].number, false, d.luxOf(s), d.edges[s])
		}
	}
	return err
}

// edgePatch is a patch that a lamp is asked about closely.
type edgePatch struct {
	of   *directSolver
	slot int
}

// lightEdges asks all lamps closely for the light of the patches that the edges of their shadows run over.
func (solvers directSolvers) lightEdges(ctx context.Context, t *Transport) error {
	again := make([][]int, len(solvers))
	err := parallel.For(ctx, t.workers, len(solvers), func(_, i int) { again[i] = solvers[i].shadowEdges() })
	if err != nil {
		return err
	}
	var all []edgePatch
	for i := range solvers {
		for _, s := range again[i] {
			all = append(all, edgePatch{&solvers[i], s})
		}
	}
	err = parallel.For(ctx, t.workers, len(all), func(worker, i int) { all[i].of.lightPatch(worker, all[i].slot, true, false) })
	for _, p := range all {
		t.memory.remember(p.of.known, t.patches[p.slot].number, true, p.of.luxOf(p.slot), p.of.edges[p.slot])
	}
	return err
}

func newDirectSolver(t *Transport, lamp Lamp) directSolver {
	open, _ := lamp.(OpenLamp)
	d := directSolver{t, lamp, open, t.memory.lampOf(lamp), t.Channels(), make(directLux, 4*len(t.patches)*t.Channels()), make([]float64, len(t.patches)), nil}
	for worker := range parallel.Workers(t.workers, math.MaxInt) { // patches that shadows cross come one by one
		d.lit = append(d.lit, &aimed{lamp: lamp, worker: worker})
	}
	return d
}
