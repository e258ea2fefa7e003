package light

import (
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/photometry"
	"scrimshaw/plan/solid"
)

// visibleSums sums what is seen of openings. It keeps its memory from one to the next.
type visibleSums struct {
	solid.Viewer
	found []int32
}

func newVisibleSums(bvh *solid.BVH) visibleSums { return visibleSums{Viewer: solid.Viewer{BVH: bvh}} }

// facing is the half-space before a plane through a point.
func facing(at, axis r3.Vec) solid.Plane {
	back := r3.Scale(-1, axis)
	return solid.Plane{N: back, C: r3.Dot(back, at)}
}

// counting is the part of a figure whose light counts at a receptor: of a plane what lies before it, of a dome all; nil where nothing does.
func (v *visibleSums) counting(figure []r3.Vec, r *Receptor) []r3.Vec {
	if r.Response != Cosine {
		return figure
	}
	before := facing(r.At, r.Axis)
	return v.Clip(figure, &before, -1)
}

// runsThrough says whether the plane of a receptor runs through the face of a lamp without a closed form: what lies behind it gives nothing, and a rule for the whole
// face, which is smooth nowhere near there, misses that.
func runsThrough(r *Receptor, l *lamp) bool {
	flat := l.opening.Form == photometry.Rectangle || l.opening.Form == photometry.Disc
	if r.Response != Cosine || l.lambertian || !flat {
		return false
	}
	before := facing(r.At, r.Axis)
	behind := 0
	for _, c := range l.corners {
		if before.Over(c) > 0 {
			behind++
		}
	}
	return behind > 0 && behind < len(l.corners)
}

// wayFrom is the place on what a receptor sees of an opening that stands for the ways between them: the middle of what
// lies before the receptor's plane, for what comes to its own surface from behind gives a plane nothing.
func (v *visibleSums) wayFrom(figure []r3.Vec, r *Receptor) r3.Vec {
	if counts := v.counting(figure, r); counts != nil {
		figure = counts
	}
	return solid.Centre(figure)
}
