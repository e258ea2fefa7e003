package fit

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/solid"
)

// onceMirrored reports a lamp between two mirrors that see each other: of its light one mirror is followed.
func (r *checker) onceMirrored(l *plan.Light) bool {
	mirrors := r.out.Set.Mirrors()
	for i := range mirrors {
		for k := range mirrors[:i] {
			a, b := &mirrors[k], &mirrors[i]
			if a.ID != b.ID && sees(a, b.Corners) && sees(b, a.Corners) && (sees(a, []r3.Vec{l.Frame.At}) || sees(b, []r3.Vec{l.Frame.At})) {
				r.Infof(l.Span, CodeTwoMirrors, "turn one of the two away from the other where that light matters",
					"the light of %s over %s and %s, one after the other, is not counted: of lamps one mirror is", l.Numbered(), r.out.Names[a.ID], r.out.Names[b.ID])
				return true
			}
		}
	}
	return true
}

// beforeMirror is how far before a mirror a place lies that it shows, m.
const beforeMirror = 1e-6

// sees says whether any of some places lies before a mirror.
func sees(m *solid.Mirror, places []r3.Vec) bool {
	return slices.ContainsFunc(places, func(p r3.Vec) bool { return m.Plane.Over(p) > beforeMirror })
}
