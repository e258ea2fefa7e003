package light

import (
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/solid"
)

// viewer sums what is seen of openings. It keeps its memory from one to the next.
type viewer struct {
	solid.Viewer
	found []int32
}

func viewerOf(bvh *solid.BVH) viewer { return viewer{Viewer: solid.Viewer{BVH: bvh}} }

// facing is the half-space before a plane through a point.
func facing(at, axis r3.Vec) solid.Plane {
	back := r3.Scale(-1, axis)
	return solid.Plane{N: back, C: r3.Dot(back, at)}
}
