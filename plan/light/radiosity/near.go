package radiosity

import (
	"context"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/light/internal/parallel"
)

// What a single receptor sees close by is not read off elements, over which light is the same: there each element is
// split into cells, and the light of a cell that a ray has met is found where it was met, straight from the lamps
// and from other surfaces by rays of its own. Receptors share cells.

// lightCells is the light of the cells, by lamp and cell.
func (s *Solution) lightCells(ctx context.Context, lamps []Lamp) ([][]cellLight, error) {
	t := s.t
	out := make([][]cellLight, len(lamps))
	for i := range out {
		out[i] = make([]cellLight, len(t.cells))
	}
	tracers := t.mesh.tracers(t.workers, len(t.cells))
	err := parallel.For(ctx, t.workers, len(t.cells), func(worker, i int) {
		c := &t.cells[i]
		reflect := t.mesh.faces[c.face].reflect.Times(t.factor(c.element))
		for k, lamp := range lamps {
			e := s.ontoCell(lamp, worker, i, k)
			back, off := s.ontoCellFromSurfaces(&tracers[worker], c.hits, t.ofCell(i, c.normal), k)
			if c.beyond != nil {
				through := t.mesh.faces[c.face].through
				beyond, offBeyond := s.ontoCellFromSurfaces(&tracers[worker], c.beyond, t.ofCell(i, r3.Scale(-1, c.normal)), k)
				back, off = back.Add(through.Times(beyond)), math.Hypot(off, through.Y()*offBeyond)
			}
			rest := reflect.Times(back)
			out[k][i] = cellLight{reflect.Times(e).Add(rest), rest, off * reflect.Y()}
		}
	})
	return out, err
}

// ontoCell is what a cell gets straight from lamp k, lx: at its place, and where the light is uneven the mean over all of it
// that lies in the air. Else the edge of a shadow that runs straight along a row of cells would put all of them off alike.
func (s *Solution) ontoCell(lamp Lamp, worker, i, k int) colour.RGB {
	t, c := s.t, &s.t.cells[i]
	element := t.behind(c.element)
	slot := element / 4
	if !s.uneven[k][slot] {
		return t.mesh.straightAt(lamp, worker, c.at, int(c.face))
	}
	p := &t.patches[slot]
	f := &t.mesh.faces[p.face]
	lit := t.mesh.aim(lamp, worker, p)
	if lit.sight == Hidden {
		return colour.RGB{}
	}
	var flux colour.RGB
	size := 0.0
	for _, figure := range f.cellInAir(p, int(element&3), f.part(c.at)) {
		flux, size = flux.Add(lit.flux(figure, false)), size+areaOf(figure)
	}
	if size < leastPart*f.du*f.dv {
		return t.mesh.straightAt(lamp, worker, c.at, int(c.face))
	}
	return flux.Scale(1 / size)
}

// ontoCellFromSurfaces is what one face of a cell gets of a lamp's light from other surfaces, lx, by what its rays have met, and what
// half of its rays and samples put that off by. What hot elements return of the lamp's own light it gets by samples.
func (s *Solution) ontoCellFromSurfaces(e *tracer, hits []uint32, from viewpoint, lamp int) (sum colour.RGB, off float64) {
	t, hot := s.t, &s.hot[lamp]
	var halves [2]colour.RGB
	share := 1 / float64(len(hits))
	for r, h := range hits {
		halves[r&1] = halves[r&1].Add(s.exitance(h, lamp).Add(s.ownHot(h, lamp).Scale(-1)).Scale(share))
	}
	if len(hot.parts) > 0 {
		e.choice.choose(hot, &from, 0)
		t.sampleHot(e, hot, &from, func(g hotSample) {
			halves[g.number&1] = halves[g.number&1].Add(g.gain.Times(g.part.own))
		})
	}
	return halves[0].Add(halves[1]), math.Abs(halves[0].Y() - halves[1].Y())
}
