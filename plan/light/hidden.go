package light

import (
	"math/bits"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/solid"
)

// Points that see little of an opening are those that its points tell too little of. There what is seen is found exactly, point by
// point.

// tileSide is how many points of a row are traced together, in all rows of a band: a part of a word.
const tileSide = 16

// traceLittleSeen lights those points, and takes them off the others that see a part.
func (d *bandSummer) traceLittleSeen(from, to int) {
	g := d.f.g
	little := d.littleSeen[:(to-from)*g.words]
	for first := 0; first < g.nu; first += tileSide {
		w, tile := first>>6, (uint64(1)<<tileSide-1)<<(first&63)
		any := uint64(0)
		for at := w; at < len(little); at += g.words {
			any |= little[at] & tile
		}
		if any == 0 {
			continue
		}
		d.tracer.among = d.betweenTile(rows{first, min(first+tileSide, g.nu)}, rows{from, to})
		for j := from; j < to; j++ {
			d.trace(little[(j-from)*g.words+w]&tile, j, w, from)
		}
	}
	for at, word := range little {
		d.partly[at] &^= word
	}
}

// betweenTile is what may stand between the lamp and some columns of a band; nil where that is not known.
func (d *bandSummer) betweenTile(columns, band rows) []int32 {
	l, lat := d.f.l, d.f.g.lattice
	if isRound(l.opening) {
		return nil
	}
	right, top := columns.last-1, band.last-1
	corners := []r3.Vec{lat.At(columns.first, band.first), lat.At(right, band.first), lat.At(right, top), lat.At(columns.first, top)}
	s := solid.NewShaft(corners, l.bound(corners[0]))
	if lat.Response == Cosine {
		s.Bound(facing(lat.Origin, lat.Normal))
	}
	if l.onesided {
		s.Bound(facing(l.at, l.axis))
	}
	d.between = d.f.w.bvh.Between(&s, lat.Skip, d.between[:0])
	return d.between
}

// trace lights points of word w of row j.
func (d *bandSummer) trace(points uint64, j, w, from int) {
	lat := d.f.g.lattice
	for ; points != 0; points &= points - 1 {
		i := w<<6 + bits.TrailingZeros64(points)
		r := lat.Receptor(i, j)
		for _, s := range d.tracer.light(d.f.l, &r) {
			for c := range d.channels {
				d.line(d.sums[c], j-from)[i] += s.filter[c] * s.value
			}
		}
	}
}
