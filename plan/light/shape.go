package light

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// shape is a caster in the coordinates of a lattice.
type shape struct {
	caster *caster
	base   []r3.Vec // of a prism: counter-clockwise; z of its corners has no meaning
	z0, z1 float64
	lo, hi r2.Vec
}

// shading is a solid that shades, and a box on the lattice: its shadows from the points of the opening count nowhere else.
type shading struct {
	*shape
	lo, hi r2.Vec
}

// reach is an upright box round the shadow of s from a lamp at p: round its own box thrown from its foot
// and from its top. any is false where there is no shadow. It costs less than the outline, and most
// shadows of a full set fall where others have fallen before.
func (s *shape) reach(p r3.Vec) (lo, hi r2.Vec, any bool) {
	foot, top := max(s.z0, 0), min(s.z1, p.Z*(1-grazing))
	if top < foot || top == foot && !s.caster.flat {
		return lo, hi, false
	}
	near, far := p.Z/(p.Z-foot), p.Z/(p.Z-top)
	lo = r2.Vec{X: p.X + min((s.lo.X-p.X)*near, (s.lo.X-p.X)*far), Y: p.Y + min((s.lo.Y-p.Y)*near, (s.lo.Y-p.Y)*far)}
	hi = r2.Vec{X: p.X + max((s.hi.X-p.X)*near, (s.hi.X-p.X)*far), Y: p.Y + max((s.hi.Y-p.Y)*near, (s.hi.Y-p.Y)*far)}
	return lo, hi, true
}

// span is the box of a list of corners.
func span(corners []r3.Vec) (lo, hi r2.Vec) {
	inf := math.Inf(1)
	lo, hi = r2.Vec{X: inf, Y: inf}, r2.Vec{X: -inf, Y: -inf}
	for _, c := range corners {
		lo.X, lo.Y = min(lo.X, c.X), min(lo.Y, c.Y)
		hi.X, hi.Y = max(hi.X, c.X), max(hi.Y, c.Y)
	}
	return lo, hi
}

// grazing is the share of the lamp's height, from the top, in which a solid's shadow is not
// looked for: it falls beyond a million times that height.
const grazing = 1e-6
