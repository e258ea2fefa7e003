package light

import (
	"math/bits"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/light/internal/raster"
	"scrimshaw/plan/photometry"
)

// The corners of a flat opening tell much of what solids hide of it. What one solid hides from all of them it hides
// from the whole: from a place, a convex solid hides all that lies in a convex cone. And its shadow from any point of the opening lies in the
// hull of its shadows from the corners. What is left of that hull, without what others hide from the whole, is most often a few rows: its shadow
// is drawn from each point of the opening in those alone.

// narrower finds where solids shade from the corners of an opening. It keeps its memory from one to the next.
type narrower struct {
	f            *field
	corners      []lampPoint
	rasteriser   *rasteriser
	hidden, one  []uint64
	points, hull []r2.Vec
}

// narrow adds the points that one solid hides the whole opening from to those without light, and finds where each solid counts.
func (f *field) narrow() {
	corners := f.corners()
	if corners == nil {
		return
	}
	n := narrower{f: f, corners: corners, rasteriser: newRasteriser(f.g), hidden: make([]uint64, len(f.blank)), one: make([]uint64, len(f.blank))}
	side := corners[0].side
	c := f.occluders[side]
	for i := range c.opaque {
		n.hideUmbra(&c.opaque[i])
	}
	kept := c.opaque[:0]
	for _, s := range c.opaque {
		if n.bound(&s) {
			kept = append(kept, s)
		}
	}
	c.opaque = kept
	f.occluders[side] = c
}

// corners are those of a figure that holds the opening, all of them on one side of the plane; nil where there is none.
func (f *field) corners() (all []lampPoint) {
	var at []r3.Vec
	switch f.l.opening.Form {
	case photometry.Rectangle, photometry.Disc:
		at = f.l.corners[:]
	case photometry.Tube:
		at = f.l.ends[:]
	}
	for _, p := range at {
		s := f.g.facing(f.w, p)
		local := f.g.place(p, s.sign)
		if local.Z <= inPlane || len(all) > 0 && s != all[0].side {
			return nil
		}
		all = append(all, lampPoint{at: p, local: local, side: s})
	}
	return all
}

// hideUmbra adds the points that a solid hides all corners from to those without light.
func (n *narrower) hideUmbra(s *shading) {
	f := n.f
	for i := range n.corners {
		p := &n.corners[i]
		if !n.rasteriser.shows(f.blank, s, p.local) {
			return
		}
		clear(n.one)
		n.rasteriser.paint(n.one, n.rasteriser.shadow(s.shape, p.local), 0, f.g.nv)
		if i == 0 {
			n.hidden, n.one = n.one, n.hidden
		} else {
			intersect(n.hidden, n.one)
		}
	}
	union(f.blank, n.hidden)
}

// bound bounds where a solid counts, and says whether it does anywhere.
func (n *narrower) bound(s *shading) bool {
	hulled, none := n.shadowsTogether(s.shape)
	if !hulled || none {
		return !none
	}
	f := n.f
	n.points = n.points[:0]
	for i := range n.corners {
		n.points = append(n.points, n.rasteriser.shadow(s.shape, n.corners[i].local)...)
	}
	n.hull = raster.Hull(n.hull[:0], n.points)
	clear(n.one)
	n.rasteriser.paint(n.one, n.hull, 0, f.g.nv)
	for at, w := range f.blank {
		n.one[at] &^= w
	}
	var any bool
	s.lo, s.hi, any = f.g.box(n.one)
	return any
}

// shadowsTogether says whether the hull of the shadows from the corners holds those from all points between them, and whether there
// is none from any: the top of a solid must be under all of the corners or, where it is upright, over all, and its foot under all.
func (n *narrower) shadowsTogether(s *shape) (hulled, none bool) {
	top, foot := 0, 0
	for i := range n.corners {
		z := n.corners[i].local.Z * (1 - grazing)
		if s.z1 <= z {
			top++
		}
		if max(s.z0, 0) < z {
			foot++
		}
	}
	all := len(n.corners)
	return foot == all && (top == all || top == 0 && !s.caster.flat), foot == 0
}

// box is the least one that holds the points of a mask: from lo up to, not including, hi.
func (g *grid) box(mask []uint64) (lo, hi r2.Vec, any bool) {
	lit := rows{g.nv, 0}
	first, last := g.words*64, 0
	for j := range g.nv {
		for w, word := range g.row(mask, j) {
			if word != 0 {
				lit = rows{min(lit.first, j), j + 1}
				first, last = min(first, w<<6+bits.TrailingZeros64(word)), max(last, (w+1)<<6-bits.LeadingZeros64(word))
			}
		}
	}
	return r2.Vec{X: float64(first), Y: float64(lit.first)}, r2.Vec{X: float64(last), Y: float64(lit.last)}, last > 0
}
