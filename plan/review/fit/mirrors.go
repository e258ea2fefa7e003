package fit

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/solid"
)

// onceMirrored reports a lamp before one of two mirrors that face each other: of its light one mirror is followed.
func (r *checker) onceMirrored(l *plan.Light) bool {
	mirrors := r.out.Set.Mirrors()
	for i := range mirrors {
		for k := range mirrors[:i] {
			a, b := &mirrors[k], &mirrors[i]
			if (before(a, l.Frame.At) || before(b, l.Frame.At)) && r.faceEachOther(a, b) {
				r.Infof(l.Span, CodeTwoMirrors, "turn one of the two away from the other where that light matters",
					"the light of %s over %s and %s, one after the other, is not counted: of lamps one mirror is", l.Numbered(), r.out.Names[a.ID], r.out.Names[b.ID])
				return true
			}
		}
	}
	return true
}

// faceEachOther says whether some of each of two mirrors lies before the other and no wall hides all of one from the other.
func (r *checker) faceEachOther(a, b *solid.Mirror) bool {
	facing := func(m *solid.Mirror) func(r3.Vec) bool { return func(p r3.Vec) bool { return before(m, p) } }
	if a.ID == b.ID || !slices.ContainsFunc(a.Corners, facing(b)) || !slices.ContainsFunc(b.Corners, facing(a)) {
		return false
	}
	ends := spotsOn(b)
	return slices.ContainsFunc(spotsOn(a), func(from r3.Vec) bool {
		return slices.ContainsFunc(ends, func(to r3.Vec) bool { return r.wallBetween(from, to) == "" })
	})
}

// spotsOn are places on a mirror by which it is seen: its middle, and half way from there to each corner, for the corners
// themselves may lie on the edge of a wall.
func spotsOn(m *solid.Mirror) []r3.Vec {
	middle := solid.Centre(m.Corners)
	spots := []r3.Vec{middle}
	for _, corner := range m.Corners {
		spots = append(spots, r3.Scale(0.5, r3.Add(middle, corner)))
	}
	return spots
}

// beforeMirror is how far before a mirror a place lies that it shows, m.
const beforeMirror = 1e-6

// before says whether a place lies before a mirror.
func before(m *solid.Mirror, p r3.Vec) bool { return m.Plane.Over(p) > beforeMirror }
