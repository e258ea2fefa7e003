package radiosity

import (
	"context"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/light/crew"
)

// What a single receptor sees close by is not read off elements, over which light is the same: there each element is
// split into cells, and the light of a cell that a ray has met is found where it was met, straight from the lamps
// and from other surfaces by rays of its own. Receptors share cells.

// cellsAcross is how many cells an element has each way.
const cellsAcross = 3

// landing is where a ray of a receptor has met something close by.
type landing struct {
	ray     int32
	element uint32
	at      r3.Vec
}

// cell is a part of an element where a ray has met it.
type cell struct {
	element uint32 // in the mesh, or among those seen through clear sheets; later its number
	at      r3.Vec
	normal  r3.Vec
	face    int32
	hits    []uint32 // elements that it sees

	met    int     // places that are yet to be settled among
	middle r3.Vec  // of all places met
	off    float64 // how far at lies from it, m²
}

// cellKey tells cells apart.
type cellKey struct {
	element uint32
	part    int32
}

// near sorts what rays of a place have met close by into cells. The order is that of places and their rays.
func (t *Transport) near(known map[cellKey]int32, p *place, some []landing) {
	if len(some) > 0 && p.cellOf == nil {
		p.cellOf = make([]int32, len(p.hits))
		for k := range p.cellOf {
			p.cellOf[k] = -1
		}
	}
	for _, l := range some {
		face := t.mesh.face(t.patchOf(l.element))
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

// settle gives each cell the place among those met that is nearest to their middle: it stands for them best, and
// lies in the air as the middle itself need not.
func (t *Transport) settle(p *place, some []landing) {
	for _, l := range some {
		c := &t.cells[p.cellOf[l.ray]]
		if off := r3.Norm2(r3.Sub(l.at, c.middle)); c.met > 0 || off < c.off {
			c.at, c.off, c.met = l.at, off, 0
		}
	}
}

// lookFromCells follows the rays of the cells.
func (t *Transport) lookFromCells(ctx context.Context) error {
	eyes := t.eyes(len(t.cells))
	return crew.Each(ctx, t.workers, len(t.cells), func(worker, i int) {
		c := &t.cells[i]
		frame := about(c.normal)
		c.hits = make([]uint32, t.quality.Cell)
		turn := turns(uint32(i))
		for k := range c.hits {
			x, y := net(uint32(k), turn[0], turn[1])
			c.hits[k], _ = eyes[worker].look(c.at, frame.direction(Cosine, x, y), nil)
		}
	})
}

// part is the cell of its element that a place falls on.
func (f *face) part(at r3.Vec) int32 {
	way := r3.Sub(at, f.origin)
	_, x := math.Modf(2 * r3.Dot(way, f.u) / f.du)
	_, y := math.Modf(2 * r3.Dot(way, f.v) / f.dv)
	within := func(x float64) int32 { return min(max(int32(x*cellsAcross), 0), cellsAcross-1) }
	return within(y)*cellsAcross + within(x)
}

// cellLight is what a cell returns of a lamp's light.
type cellLight struct {
	exitance colour.RGB // lm/m²
	off      float64    // what half of its rays and looks put that off by, lm/m²
}

// nearby is the light of the cells, by lamp and cell.
func (s *Solution) nearby(ctx context.Context, lamps []Lamp) ([][]cellLight, error) {
	t := s.t
	out := make([][]cellLight, len(lamps))
	for i := range out {
		out[i] = make([]cellLight, len(t.cells))
	}
	eyes := t.eyes(len(t.cells))
	err := crew.Each(ctx, t.workers, len(t.cells), func(worker, i int) {
		c := &t.cells[i]
		reflect := t.mesh.faces[c.face].reflect.Times(t.factor(c.element))
		for k, lamp := range lamps {
			e := s.ontoCell(lamp, worker, i, k)
			back, off := s.gathered(&eyes[worker], i, k)
			out[k][i] = cellLight{reflect.Times(e.Add(back)), off * reflect.Y()}
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
		return lamp.Light(worker, c.at, c.normal)
	}
	p := &t.patches[slot]
	f := &t.mesh.faces[p.face]
	corners := f.rectangle(p.x, p.y, f.du, f.dv)
	if lamp.Aim(worker, corners[:], f.n) == Dark {
		return colour.RGB{}
	}
	var flux colour.RGB
	size := 0.0
	for _, figure := range f.cellInAir(p, int(element&3), f.part(c.at)) {
		flux, size = flux.Add(lamp.Flux(worker, figure, false)), size+areaOf(figure)
	}
	if size < leastPart*f.du*f.dv {
		return lamp.Light(worker, c.at, c.normal)
	}
	return flux.Scale(1 / size)
}

// cellInAir are the parts of a cell of element k of a patch on the face that lie in the air.
func (f *face) cellInAir(p *patch, k int, cell int32) (figures [][]r3.Vec) {
	du, dv := f.du/(2*cellsAcross), f.dv/(2*cellsAcross)
	x := r3.Dot(f.u, f.origin) + p.x + f.du/2*float64(k&1) + du*float64(cell%cellsAcross)
	y := r3.Dot(f.v, f.origin) + p.y + f.dv/2*float64(k>>1) + dv*float64(cell/cellsAcross)
	for _, part := range p.inAir(f, k) {
		if column := strip(part, f.u, x, x+du); column != nil {
			if figure := strip(column, f.v, y, y+dv); figure != nil {
				figures = append(figures, figure)
			}
		}
	}
	return figures
}

// behind is the element itself of one that may be seen through clear sheets.
func (t *Transport) behind(element uint32) uint32 {
	if end := uint32(4 * len(t.patches)); element >= end {
		return t.veils[(element-end)/4].element + element&3
	}
	return element
}

// factor is what clear sheets leave of what is seen of an element.
func (t *Transport) factor(element uint32) colour.RGB {
	if end := uint32(4 * len(t.patches)); element >= end {
		return t.veils[(element-end)/4].factor
	}
	return colour.RGB{1, 1, 1}
}

// gathered is what a cell gets of a lamp's light from other surfaces, lx, and what half of its rays and looks put that
// off by. What hot elements return of the lamp's own light it gets by looks.
func (s *Solution) gathered(e *eye, i, lamp int) (sum colour.RGB, off float64) {
	t, hot := s.t, &s.hot[lamp]
	hits := t.cells[i].hits
	var halves [2]colour.RGB
	share := 1 / float64(len(hits))
	for r, h := range hits {
		halves[r&1] = halves[r&1].Add(s.exitance(h, lamp).Add(s.ownHot(h, lamp).Scale(-1)).Scale(share))
	}
	if len(hot.parts) > 0 {
		from := t.ofCell(i)
		t.glances(e, hot, &from, func(g glance) {
			halves[g.look&1] = halves[g.look&1].Add(g.gain.Times(g.part.own))
		})
	}
	return halves[0].Add(halves[1]), math.Abs(halves[0].Y() - halves[1].Y())
}

// ownHot is what a hot element returns of what comes straight from the lamp, lm/m², as it is seen; nought of any other.
func (s *Solution) ownHot(element uint32, lamp int) colour.RGB {
	hot := s.hot[lamp].of
	if len(hot) == 0 {
		return colour.RGB{}
	}
	e := s.t.behind(element)
	if _, is := hot[e]; !is {
		return colour.RGB{}
	}
	return s.straight(e, lamp).Times(s.t.factor(element))
}

// straight is what an element returns of what comes straight from a lamp, lm/m².
func (s *Solution) straight(element uint32, lamp int) (e colour.RGB) {
	channels := s.t.Channels()
	for c := range e {
		e[c] = float64(s.firsts[lamp][int(element)*channels+c%channels])
	}
	return s.t.mesh.faces[s.t.patches[element/4].face].reflect.Times(e)
}
