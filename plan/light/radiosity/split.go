package radiosity

import (
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/solid"
)

// A sheet that ends on a face parts it: a wall stands up beyond a sloping ceiling, and what is over the ceiling sees
// nothing of the room; the sill of a window lies before its pane and behind it, with other light on either side. A
// patch on both sides would be lit by half and pass that on to the other, so faces are split where sheets run across
// them.

// touching is how near, m, a sheet must come to a face to end on it, and how much of a face must lie to either
// side for a split: sets are drawn to a millionth.
const touching = 1e-5

// splitPlane is a sheet as it parts faces.
type splitPlane struct {
	at, n   r3.Vec // of its plane
	corners []r3.Vec
}

// splitPlanesOf are those of a set.
func splitPlanesOf(set *solid.Set) (all []splitPlane) {
	for i := range set.Sheets {
		s := &set.Sheets[i]
		if n := area(s.Corners); r3.Norm(n) > 0 {
			all = append(all, splitPlane{s.Corners[0], r3.Unit(n), s.Corners})
		}
	}
	return all
}

// split parts faces by the planes of sheets.
func split(faces []face, blades []splitPlane) []face {
	for i := range blades {
		var parted []face
		for k := range faces {
			parted = append(parted, blades[i].part(&faces[k])...)
		}
		faces = parted
	}
	return faces
}

// part is a face, or its two parts where the sheet runs across it from rim to rim.
func (b *splitPlane) part(f *face) []face {
	above, below, rim := b.halves(f.corners)
	if len(rim) != 2 || !b.covers(rim[0]) || !b.covers(rim[1]) {
		return []face{*f}
	}
	one, ok := newFace(above)
	other, also := newFace(below)
	if !ok || !also {
		return []face{*f}
	}
	one.parted, other.parted = true, true
	return []face{one, other}
}

// halves cuts a convex polygon by the plane of a sheet. The rim is where the plane crosses it, none where hardly
// anything lies to one side.
func (b *splitPlane) halves(corners []r3.Vec) (above, below, rim []r3.Vec) {
	highest, lowest := 0.0, 0.0
	last := corners[len(corners)-1]
	was := r3.Dot(b.n, r3.Sub(last, b.at))
	for _, c := range corners {
		is := r3.Dot(b.n, r3.Sub(c, b.at))
		if was > 0 != (is > 0) {
			on := r3.Add(last, r3.Scale(was/(was-is), r3.Sub(c, last)))
			above, below, rim = append(above, on), append(below, on), append(rim, on)
		}
		if is > 0 {
			above = append(above, c)
		} else {
			below = append(below, c)
		}
		highest, lowest = max(highest, is), min(lowest, is)
		last, was = c, is
	}
	if highest < touching || lowest > -touching {
		rim = nil
	}
	return above, below, rim
}

// covers says whether a place in the plane of a sheet lies on it.
func (b *splitPlane) covers(at r3.Vec) bool {
	for i, c := range b.corners {
		edge := r3.Sub(b.corners[(i+1)%len(b.corners)], c)
		if inward := r3.Cross(b.n, edge); r3.Dot(inward, r3.Sub(at, c)) < -touching*r3.Norm(inward) {
			return false
		}
	}
	return true
}
