package light

import (
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/light/radiosity"
	"scrimshaw/plan/solid"
)

// surfaceBoard is a board as the surfaces of the set see it, lit by a lamp.
type surfaceBoard struct {
	*litBoard
	lamp *surfaceLamp
}

// setPatch makes ready for a patch.
func (b *surfaceBoard) setPatch(worker int, corners []r3.Vec, normal r3.Vec) radiosity.Visibility {
	a := &b.lamp.patches[worker]
	a.normal = normal
	before := facing(corners[0], normal)
	if outside(&before, b.Corners) || outside(&solid.Plane{N: r3.Scale(-1, b.Plane.N), C: -b.Plane.C}, corners) || !b.mayReach(corners) {
		return radiosity.Hidden
	}
	s := solid.NewShaft(corners, b.Corners)
	s.Bound(facing(b.Corners[0], b.Plane.N))
	s.Bound(before)
	a.found = a.BVH.Between(&s, nil, a.found[:0])
	for _, number := range a.found {
		if a.BVH.Opaque(number, solid.Centre(b.Corners), false) && a.Hides(number, corners, b.Corners) {
			return radiosity.Hidden
		}
	}
	if len(a.found) == 0 && len(b.between) == 0 {
		return radiosity.Unoccluded
	}
	return radiosity.PartlyOccluded
}

// mayReach says whether any place of a patch may lie in the lobe.
func (b *surfaceBoard) mayReach(corners []r3.Vec) bool {
	middle := solid.Centre(corners)
	return b.reaches(b.lamp.l, middle, r3.Norm(r3.Sub(corners[0], middle)))
}

// light is what a place gets by the board, lx.
func (b *surfaceBoard) light(worker int, r *Receptor) (sum colour.RGB) {
	a := &b.lamp.patches[worker]
	return b.Factor.Times(totalOf(a.byBoard(b.lamp.l, b.litBoard, r)))
}

// flux is what falls on a figure by the board, lm: by places that lie closer together than the lobe is wide there.
func (b *surfaceBoard) flux(worker int, figure []r3.Vec, closely bool) colour.RGB {
	near := b.distance(solid.Centre(figure))
	s := surfaceSum{r: Receptor{Axis: b.lamp.patches[worker].normal}, grain: b.halfWidth() * near / 2, near: near, closely: closely,
		light: func(r *Receptor) colour.RGB { return b.light(worker, r) }}
	s.figure(figure)
	return s.sum
}
