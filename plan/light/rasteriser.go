package light

import (
	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/light/internal/raster"
)

// The shadow that a convex solid throws on a plane from a point of light is convex, and its
// outline needs no hull: of a vertical prism, the edges of the base that face away from the light
// are thrown from the top of the solid, the others from its foot, and two edges join them where
// the base turns from the one to the other. On a lattice the shadow is a run of points in each
// row, so that a solid costs the same whatever it covers.
//
// On a lattice that is not level a prism throws the shadows of those of its sides that look at the lamp.
//
// All of this happens in the coordinates of the lattice: u and v count its points, z is the
// height over the plane on the side of the lamp.

// rasteriser paints shadows into masks. It keeps its memory from one to the next.
type rasteriser struct {
	grid       *grid
	spans      raster.Spans
	outline    []r2.Vec
	cut, spare []r3.Vec
}

func newRasteriser(g *grid) *rasteriser {
	b := &rasteriser{grid: g}
	b.spans.Resize(g.nu, g.nv)
	return b
}

// shadow returns the outline of the shadow of s from a lamp at p, nil where there is none. It
// holds until the next call.
func (b *rasteriser) shadow(s *shape, p r3.Vec) []r2.Vec {
	b.outline = b.outline[:0]
	if s.caster.flat {
		b.sheet(s, p)
	} else {
		b.prism(s, p)
	}
	return b.outline
}

func (b *rasteriser) prism(s *shape, p r3.Vec) {
	foot, top := max(s.z0, 0), min(s.z1, p.Z*(1-grazing))
	if top <= foot {
		return
	}
	near, far := p.Z/(p.Z-foot), p.Z/(p.Z-top)
	last := len(s.base) - 1
	was := away(s.base[last], s.base[0], p)
	for i, c := range s.base {
		next := 0
		if i < last {
			next = i + 1
		}
		is := away(c, s.base[next], p)
		switch {
		case was && is:
			b.project(c, p, far)
		case is:
			b.project(c, p, near)
			b.project(c, p, far)
		case was:
			b.project(c, p, far)
			b.project(c, p, near)
		default:
			b.project(c, p, near)
		}
		was = is
	}
}

// away says whether the edge from a to c of a counter-clockwise base faces away from p.
func away(a, c, p r3.Vec) bool { return (c.X-a.X)*(p.Y-a.Y)-(c.Y-a.Y)*(p.X-a.X) >= 0 }

// project appends the shadow of a corner; times is the height of the lamp over its height above the
// corner.
func (b *rasteriser) project(c, p r3.Vec, times float64) {
	b.outline = append(b.outline, r2.Vec{X: p.X + (c.X-p.X)*times, Y: p.Y + (c.Y-p.Y)*times})
}

func (b *rasteriser) sheet(s *shape, p r3.Vec) {
	foot, top := b.grid.epsilon, p.Z*(1-grazing)
	corners := s.base
	if s.z0 < foot {
		b.cut = clipZ(b.cut[:0], corners, foot, 1)
		corners = b.cut
	}
	if s.z1 > top {
		b.spare = clipZ(b.spare[:0], corners, top, -1)
		corners = b.spare
	}
	for _, c := range corners {
		b.project(c, p, p.Z/(p.Z-c.Z))
	}
}

// clipZ appends to dst the part of a polygon where side z >= side at.
func clipZ(dst, corners []r3.Vec, at, side float64) []r3.Vec {
	for i, c := range corners {
		last := corners[(i+len(corners)-1)%len(corners)]
		in, was := side*(c.Z-at) >= 0, side*(last.Z-at) >= 0
		if in != was {
			k := (at - last.Z) / (c.Z - last.Z)
			dst = append(dst, r3.Vec{X: last.X + k*(c.X-last.X), Y: last.Y + k*(c.Y-last.Y), Z: at})
		}
		if in {
			dst = append(dst, c)
		}
	}
	return dst
}

// paint sets the bits of the points in a convex outline, in the rows from and up to to: those that the mask has.
func (b *rasteriser) paint(mask []uint64, outline []r2.Vec, from, to int) {
	first, last := b.spans.Scan(outline, from, to)
	words := b.grid.words
	left, right := b.spans.Left[first:last], b.spans.Right[first:last]
	row := mask[max(0, first-from)*words:]
	for j, i0 := range left {
		if i1 := right[j]; i0 < i1 {
			fill(row[j*words:(j+1)*words], int(i0), int(i1))
		}
	}
}

// fill sets bits i0 up to i1 of a row.
func fill(row []uint64, i0, i1 int) {
	w0, w1 := i0>>6, (i1-1)>>6
	low, high := ^uint64(0)<<(i0&63), ^uint64(0)>>(63-(i1-1)&63)
	if w0 == w1 {
		row[w0] |= low & high
		return
	}
	row[w0] |= low
	for w := w0 + 1; w < w1; w++ {
		row[w] = ^uint64(0)
	}
	row[w1] |= high
}

// covered says whether all points in an upright box are in the mask already.
func (b *rasteriser) covered(mask []uint64, low, high r2.Vec) bool {
	g := b.grid
	i0, i1 := raster.Ceil(low.X, g.nu), raster.Ceil(high.X, g.nu)
	j0, j1 := raster.Ceil(low.Y, g.nv), raster.Ceil(high.Y, g.nv)
	if i0 >= i1 {
		return true
	}
	w0, w1 := i0>>6, (i1-1)>>6
	first, last := ^uint64(0)<<(i0&63), ^uint64(0)>>(63-(i1-1)&63)
	if w0 == w1 {
		return dark(mask[w0:], first&last, j0, j1, g.words)
	}
	if !dark(mask[w0:], first, j0, j1, g.words) || !dark(mask[w1:], last, j0, j1, g.words) {
		return false
	}
	for w := w0 + 1; w < w1; w++ {
		if !dark(mask[w:], ^uint64(0), j0, j1, g.words) {
			return false
		}
	}
	return true
}

// shows says whether the shadow of s from a lamp at p may fall, where it counts, on points that are not in the mask yet.
func (b *rasteriser) shows(mask []uint64, s *shading, p r3.Vec) bool {
	lo, hi, any := s.reach(p)
	if !any {
		return false
	}
	lo, hi = r2.Vec{X: max(lo.X, s.lo.X), Y: max(lo.Y, s.lo.Y)}, r2.Vec{X: min(hi.X, s.hi.X), Y: min(hi.Y, s.hi.Y)}
	return !b.covered(mask, lo, hi)
}

// dark says whether a set of bits is set in one word of all rows from j0 up to j1.
func dark(column []uint64, need uint64, j0, j1, words int) bool {
	for n := j0 * words; n < j1*words; n += words {
		if need&^column[n] != 0 {
			return false
		}
	}
	return true
}
