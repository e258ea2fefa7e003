package light

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// grid is a level lattice made ready for shadows. Its masks have whole words a row.
type grid struct {
	lattice       *Lattice
	nu, nv, words int
	z             float64
	toU, toV      r2.Vec   // u = toU·(p - origin), v = toV·(p - origin), in plan
	blank         []uint64 // no data, and the bits beyond each row's end
	epsilon       float64  // m
	above, below  *side    // what shades from lamps over and under the plane; made when asked for
}

// side is one side of the plane: the shapes on it, in the lattice's coordinates.
type side struct {
	sign   float64 // of the height
	shapes []shape
	panes  []shape
}

// level says whether shadows can be drawn on a lattice: it lies level, and its receptors' planes, if
// they have any, lie in it.
func (l *Lattice) level() bool {
	if l.Weight == Flat && (l.Normal.X != 0 || l.Normal.Y != 0) {
		return false
	}
	return l.U.Z == 0 && l.V.Z == 0 && l.U.X*l.V.Y-l.U.Y*l.V.X != 0
}

func newGrid(l *Lattice, epsilon float64) *grid {
	det := l.U.X*l.V.Y - l.U.Y*l.V.X
	g := &grid{
		lattice: l, nu: l.NU, nv: l.NV, words: (l.NU + 63) / 64, z: l.Origin.Z, epsilon: epsilon,
		toU: r2.Vec{X: l.V.Y / det, Y: -l.V.X / det},
		toV: r2.Vec{X: -l.U.Y / det, Y: l.U.X / det},
	}
	g.blank = make([]uint64, g.nv*g.words)
	for j := range g.nv {
		row := g.row(g.blank, j)
		for i := range g.words * 64 {
			if i >= g.nu || l.Masked(i, j) {
				row[i>>6] |= 1 << (i & 63)
			}
		}
	}
	return g
}

// row is row j of a mask.
func (g *grid) row(mask []uint64, j int) []uint64 { return mask[j*g.words : (j+1)*g.words] }

// place gives a point in the lattice's coordinates, with the height as sign says.
func (g *grid) place(p r3.Vec, sign float64) r3.Vec {
	x, y := p.X-g.lattice.Origin.X, p.Y-g.lattice.Origin.Y
	return r3.Vec{X: g.toU.X*x + g.toU.Y*y, Y: g.toV.X*x + g.toV.Y*y, Z: sign * (p.Z - g.z)}
}

// facing returns the side of the plane that a point at height z is on.
func (g *grid) facing(w *World, z float64) *side {
	if z >= g.z {
		if g.above == nil {
			g.above = g.newSide(w, 1)
		}
		return g.above
	}
	if g.below == nil {
		g.below = g.newSide(w, -1)
	}
	return g.below
}

func (g *grid) newSide(w *World, sign float64) *side {
	s := &side{sign: sign}
	keep := func(to []shape, from []caster) []shape {
		for i := range from {
			c := g.shape(&from[i], sign)
			if c.z1 > g.epsilon && !slices.Contains(g.lattice.Skip, c.caster.id) {
				to = append(to, c)
			}
		}
		return to
	}
	s.shapes, s.panes = keep(nil, w.casters), keep(nil, w.panes)
	return s
}

// shape places a caster.
func (g *grid) shape(c *caster, sign float64) shape {
	s := shape{caster: c, base: make([]r3.Vec, len(c.base)), z0: sign * (c.z0 - g.z), z1: sign * (c.z1 - g.z)}
	for i, p := range c.base {
		s.base[i] = g.place(p, sign)
	}
	if sign < 0 {
		s.z0, s.z1 = s.z1, s.z0
	}
	if g.toU.X*g.toV.Y-g.toU.Y*g.toV.X < 0 {
		slices.Reverse(s.base)
	}
	s.lo, s.hi = span(s.base)
	return s
}

// shading picks the shapes that can shade some point of the lattice from some point of the lamp.
func (g *grid) shading(shapes []shape, l *lamp, points []r3.Vec) []*shape {
	lo, hi := span(points)
	lo = r2.Vec{X: min(lo.X, 0), Y: min(lo.Y, 0)}
	hi = r2.Vec{X: max(hi.X, float64(g.nu-1)), Y: max(hi.Y, float64(g.nv-1))}
	height := 0.0
	for _, p := range points {
		height = max(height, p.Z)
	}
	var some []*shape
	for i := range shapes {
		s := &shapes[i]
		apart := s.hi.X < lo.X || s.lo.X > hi.X || s.hi.Y < lo.Y || s.lo.Y > hi.Y
		if !apart && s.z0 < height && !(l.onesided && s.caster.behind(l.at, l.axis)) {
			some = append(some, s)
		}
	}
	return some
}
