package light

import (
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/solid"
)

// visibleSums sums what is seen of openings. It keeps its memory from one to the next.
type visibleSums struct {
	solid.Viewer
	found []int32
}

func viewerOf(bvh *solid.BVH) visibleSums { return visibleSums{Viewer: solid.Viewer{BVH: bvh}} }

// facing is the half-space before a plane through a point.
func facing(at, axis r3.Vec) solid.Plane {
	back := r3.Scale(-1, axis)
	return solid.Plane{N: back, C: r3.Dot(back, at)}
}

// wayFrom is the place on what a receptor sees of an opening that stands for the ways between them: the middle of what
// lies before the receptor's plane, for what comes to its own surface from behind gives a plane nothing.
func (v *visibleSums) wayFrom(figure []r3.Vec, r *Receptor) r3.Vec {
	if r.Response == Cosine {
		before := facing(r.At, r.Axis)
		if counts := v.Clip(figure, &before, -1); counts != nil {
			figure = counts
		}
	}
	return solid.Centre(figure)
}
