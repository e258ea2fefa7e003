package radiosity

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// place is where receptors stand: the planes of a face share one, and look at the same.
type place struct {
	receptors  []int
	hits       []uint32 // by ray
	at         []r3.Vec // by ray: where it has met them
	directions []r3.Vec // of the rays, all round; nil where they are spread as the only receptor weighs them
	cellOf     []int32  // by ray: the cell it has met; -1 for none
	seen       []int32  // faces that rays have met, and those that it sees though none has
}

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
	beyond  []uint32 // of a cloth: elements that its other face sees

	met    int     // places that are yet to be settled among
	middle r3.Vec  // of all places met
	off    float64 // how far at lies from it, m²
}

// cellKey tells cells apart.
type cellKey struct {
	element uint32
	part    int32
}

// cellsAcross is how many cells an element has each way.
const cellsAcross = 3

// part is the cell of its element that a place falls on.
func (f *face) part(at r3.Vec) int32 {
	way := r3.Sub(at, f.origin)
	_, x := math.Modf(2 * r3.Dot(way, f.u) / f.du)
	_, y := math.Modf(2 * r3.Dot(way, f.v) / f.dv)
	within := func(x float64) int32 { return min(max(int32(x*cellsAcross), 0), cellsAcross-1) }
	return within(y)*cellsAcross + within(x)
}

// makeRoom makes room for the rays of a place, by those of a receptor that is alone.
func (p *place) makeRoom(rays int) {
	if len(p.receptors) > 1 {
		rays *= allRound
		p.directions = make([]r3.Vec, rays)
	}
	p.hits, p.at = make([]uint32, rays), make([]r3.Vec, rays)
}

// allRound is how many times as many rays go all round as a receptor alone gets.
const allRound = 2

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
