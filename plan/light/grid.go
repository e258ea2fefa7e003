package light

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/photometry/row"
)

// grid is a lattice made ready for shadows. Its masks have whole words a row.
type grid struct {
	lattice       *Lattice
	nu, nv, words int
	level         bool      // whether the plane is
	n             r3.Vec    // of the plane, unit; up where it is level
	toU, toV      r3.Vec    // u = toU·(p - origin), v = toV·(p - origin)
	blank         []uint64  // no data, and the bits beyond each row's end
	lean          []float64 // by point of whole words a row, or of one word for all: what the fall is multiplied by
	epsilon       float64   // m
	above, below  *side     // what shades from lamps over and under the plane; made when asked for
}

// side is one side of the plane: the shapes on it, in the lattice's coordinates.
type side struct {
	sign   float64 // of the height
	shapes []shape
	panes  []shape
}

// drawable says whether shadows can be drawn on a lattice: it is one, and its receptors' planes, if they
// have any, lie in it.
func drawable(l *Lattice) bool {
	square := r3.Cross(l.U, l.V)
	size := r3.Norm(square)
	if !(size > 0) {
		return false
	}
	return l.Response == Dome || r3.Norm(r3.Cross(square, l.Normal)) <= 1e-9*size
}

func newGrid(l *Lattice, epsilon float64) *grid {
	g := &grid{
		lattice: l, nu: l.NU, nv: l.NV, words: (l.NU + 63) / 64, epsilon: epsilon,
		level: l.U.Z == 0 && l.V.Z == 0, n: r3.Unit(r3.Cross(l.U, l.V)),
	}
	if g.level {
		g.n = r3.Vec{Z: 1}
	}
	alongU, alongV := r3.Cross(l.V, g.n), r3.Cross(g.n, l.U)
	g.toU = r3.Scale(1/r3.Dot(l.U, alongU), alongU)
	g.toV = r3.Scale(1/r3.Dot(l.V, alongV), alongV)
	g.lean = inverseDistances(l, g.words)
	g.blank = make([]uint64, g.nv*g.words)
	for j := range g.nv {
		bits := g.row(g.blank, j)
		for i := range g.words * 64 {
			if i >= g.nu || l.Masked(i, j) {
				bits[i>>6] |= 1 << (i & 63)
			}
		}
	}
	return g
}

// inverseDistances are what makes a distance against the axis of each dome of what is one against the way to the place that
// it is turned to: one over the length of the way. All are 1 where the receptors have one axis.
func inverseDistances(l *Lattice, words int) []float64 {
	if l.Toward == nil {
		return slices.Repeat([]float64{1}, row.Word)
	}
	all := make([]float64, l.NV*words*64)
	for n := range all {
		all[n] = l.InverseDistance(l.At(n%(words*64), n/(words*64)))
	}
	return all
}

// leanOfRow is what the words of row j are multiplied by.
func (g *grid) leanOfRow(j int) []float64 {
	if len(g.lean) == row.Word {
		return g.lean
	}
	return g.lean[j*g.words*row.Word : (j+1)*g.words*row.Word]
}

// row is row j of a mask.
func (g *grid) row(mask []uint64, j int) []uint64 { return mask[j*g.words : (j+1)*g.words] }

// anywhere is a solid that shades and may do so anywhere.
func (g *grid) anywhere(s *shape) shading {
	return shading{s, r2.Vec{}, r2.Vec{X: float64(g.nu), Y: float64(g.nv)}}
}

// band is how many rows are summed together.
const band = 8

// bands is how many bands of rows there are.
func (g *grid) bands() int { return (g.nv + band - 1) / band }

// rows are those from first up to last.
type rows struct{ first, last int }

// litRows are the rows among which all points lie that are not in a mask.
func (g *grid) litRows(mask []uint64) (lit rows) {
	for j := range g.nv {
		if slices.ContainsFunc(g.row(mask, j), func(w uint64) bool { return ^w != 0 }) {
			if lit.last == 0 {
				lit.first = j
			}
			lit.last = j + 1
		}
	}
	return lit
}

// of are the words of the rows in a mask.
func (g *grid) of(r rows, mask []uint64) []uint64 { return mask[r.first*g.words : r.last*g.words] }

// height is that of a point over the plane.
func (g *grid) height(p r3.Vec) float64 { return r3.Dot(g.n, r3.Sub(p, g.lattice.Origin)) }

// place gives a point in the lattice's coordinates, with the height as sign says.
func (g *grid) place(p r3.Vec, sign float64) r3.Vec {
	way := r3.Sub(p, g.lattice.Origin)
	return r3.Vec{X: r3.Dot(g.toU, way), Y: r3.Dot(g.toV, way), Z: sign * r3.Dot(g.n, way)}
}

// facing returns the side of the plane that a point is on.
func (g *grid) facing(w *World, p r3.Vec) *side {
	if g.height(p) >= 0 {
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
	casters := w.casters
	if !g.level {
		casters = w.sides
	}
	s.shapes, s.panes = keep(nil, casters), keep(nil, w.panes)
	return s
}

// shape places a caster.
func (g *grid) shape(c *caster, sign float64) shape {
	s := shape{caster: c, base: make([]r3.Vec, len(c.base)), z0: math.Inf(1), z1: math.Inf(-1)}
	for i, p := range c.base {
		s.base[i] = g.place(p, sign)
		s.z0, s.z1 = min(s.z0, s.base[i].Z), max(s.z1, s.base[i].Z)
	}
	if !c.flat { // and the plane is level
		z := g.lattice.Origin.Z
		s.z0, s.z1 = sign*(c.z0-z), sign*(c.z1-z)
		if sign < 0 {
			s.z0, s.z1 = s.z1, s.z0
		}
		if g.toU.X*g.toV.Y-g.toU.Y*g.toV.X < 0 {
			slices.Reverse(s.base)
		}
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
