package radiosity

import (
	"context"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/light/internal/parallel"
	"scrimshaw/plan/light/internal/sobol"
	"scrimshaw/plan/light/receptor"
)

// sortIntoCells sorts what rays of a place have met close by into cells. The order is that of places and their rays.
func (t *Transport) sortIntoCells(known map[cellKey]int32, p *place, some []landing) {
	if len(some) > 0 && p.cellOf == nil {
		p.cellOf = make([]int32, len(p.hits))
		for k := range p.cellOf {
			p.cellOf[k] = -1
		}
	}
	for _, l := range some {
		face := t.mesh.face(t.mesh.patchOf(l.element))
		key := cellKey{l.element, t.mesh.faces[face].part(l.at)}
		n, ok := known[key]
		if !ok {
			n = int32(len(t.cells))
			known[key] = n
			t.cells = append(t.cells, cell{element: l.element, normal: t.mesh.faces[face].n, face: int32(face)})
		}
		c := &t.cells[n]
		c.met++
		c.middle = r3.Add(c.middle, r3.Scale(1/float64(c.met), r3.Sub(l.at, c.middle)))
		p.cellOf[l.ray] = n
	}
}

// placeCells gives each cell the place among those met that is nearest to their middle: it stands for them best, and
// lies in the air as the middle itself need not.
func (t *Transport) placeCells(p *place, some []landing) {
	for _, l := range some {
		c := &t.cells[p.cellOf[l.ray]]
		if off := r3.Norm2(r3.Sub(l.at, c.middle)); c.met > 0 || off < c.off {
			c.at, c.off, c.met = l.at, off, 0
		}
	}
}

// traceFromCells follows the rays of the cells.
func (t *Transport) traceFromCells(ctx context.Context) error {
	tracers := t.mesh.tracers(t.workers, len(t.cells))
	return parallel.For(ctx, t.workers, len(t.cells), func(worker, i int) {
		c := &t.cells[i]
		c.hits = t.cellRays(&tracers[worker], i, c.normal)
		if t.mesh.faces[c.face].otherSide != 0 {
			c.beyond = t.cellRays(&tracers[worker], i, r3.Scale(-1, c.normal))
		}
	})
}

// cellRays are what the rays of a cell meet before a normal.
func (t *Transport) cellRays(e *tracer, i int, normal r3.Vec) []uint32 {
	frame, hits := basisOf(normal), make([]uint32, t.quality.Cell)
	shift := sobol.Shift(uint32(i))
	for k := range hits {
		x, y := sobol.Point(uint32(k), shift[0], shift[1])
		e.number = k
		hits[k], _ = e.trace(t.cells[i].at, frame.direction(receptor.Cosine, x, y), nil)
	}
	return hits
}
