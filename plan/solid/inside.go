package solid

import (
	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// Inside returns the first prism of the set that p lies in, deeper than Epsilon: a place on a
// face is not inside.
func (b *BVH) Inside(p r3.Vec) (id ID, ok bool) {
	r := newRay(p, r3.Vec{})
	rank := 0
	w := b.walk()
	for leaf := w.next(&r, 0); leaf != nil; leaf = w.next(&r, 0) {
		for i := range leaf {
			if q := &leaf[i]; q.holds(p, b.epsilon) && (!ok || q.index < rank) {
				id, rank, ok = q.id, q.index, true
			}
		}
	}
	return id, ok
}

// holds says whether point p is in the prism, deeper than eps.
func (p *part) holds(at r3.Vec, eps float64) bool {
	if p.sheet || at.Z <= p.z0+eps || at.Z >= p.z1-eps {
		return false
	}
	for i := range p.sides {
		if s := &p.sides[i]; s.n.X*at.X+s.n.Y*at.Y-s.c >= -eps {
			return false
		}
	}
	return true
}

// Footprint is what a horizontal plane cuts out of a prism. Base, in metres, belongs to the Set.
type Footprint struct {
	ID   ID
	Name string
	Base []r2.Vec
}

// SectionAt returns the prisms that the plane at height z cuts, in the order of the set. A prism
// holds the plane of its underside and not that of its top.
func (s *Set) SectionAt(z float64) []Footprint {
	var cut []Footprint
	for i := range s.Prisms {
		if p := &s.Prisms[i]; p.Z0 <= z && z < p.Z1 {
			cut = append(cut, Footprint{ID: p.ID, Name: p.Name, Base: p.Base})
		}
	}
	return cut
}
