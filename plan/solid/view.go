package solid

import "gonum.org/v1/gonum/spatial/r3"

// VisiblePart is a part of a flat convex figure that is seen from a point: of a polygon, or of a line, which has two
// corners.
type VisiblePart struct {
	Corners  []r3.Vec // m
	Cut      bool     // whether something else covers the rest
	Filtered bool     // seen through clear sheets
}

// Viewer finds what of a figure is seen from a point. The shadow of a convex solid from a point is an intersection
// of half-spaces, so that what a solid leaves of a convex polygon is a few convex polygons: the answer is exact, where
// rays would only sample it. It keeps its memory from one figure to the next.
type Viewer struct {
	BVH     *BVH
	planes  []Plane
	cast    []Plane // of shadows, one after the other
	shadows []shadow
	cuts    []cuttingPlane
	seen    []VisiblePart
	next    []VisiblePart
	room    []r3.Vec // where corners are kept
}

// shadow is that of a part of the set from a point: an intersection of half-spaces, the planes from first on up to last.
type shadow struct {
	first, last int
	opaque      bool
}

// cuttingPlane is a plane that cuts a figure, and how far it lies from the middle of the whole.
type cuttingPlane struct {
	plane Plane
	depth float64
}

// sliver is the distance, m, within which a corner counts as lying in a plane.
const sliver = 1e-11

// mostParts bounds the parts that are told apart.
const mostParts = 4096

// Visible returns what is seen of a figure from a point past some parts of the set, by their numbers from Between. Light
// goes to the point (toward) or away from it. The result holds until the next call.
func (v *Viewer) Visible(from r3.Vec, figure []r3.Vec, past []int32, toward bool) []VisiblePart {
	v.LookFrom(from, past, toward)
	return v.See(figure)
}

// LookFrom makes the shadows of some parts of the set from a point ready, so that many figures can be looked at from it. Numbers
// and direction are as of Visible.
func (v *Viewer) LookFrom(from r3.Vec, past []int32, toward bool) {
	v.shadows, v.cast = v.shadows[:0], v.cast[:0]
	for _, number := range past {
		first := len(v.cast)
		var shade Shade
		if v.cast, shade = v.BVH.Shadow(number, from, v.cast); shade == NoShade {
			v.cast = v.cast[:first]
			continue
		}
		v.shadows = append(v.shadows, shadow{first, len(v.cast), v.BVH.Opaque(number, from, toward)})
	}
}

// PassOver leaves out the shadows that miss a convex body, which the corners given hold, and with it all figures in it. It says
// whether one of the others hides all of it.
func (v *Viewer) PassOver(body []r3.Vec) (hidden bool) {
	kept := v.shadows[:0]
	for _, s := range v.shadows {
		over, holds := v.over(&s, body)
		if over {
			continue
		}
		hidden = hidden || holds && s.opaque
		kept = append(kept, s)
	}
	v.shadows = kept
	return hidden
}

// over says whether a body lies over one plane of a shadow, which then misses it, or under all of them.
func (v *Viewer) over(s *shadow, body []r3.Vec) (over, holds bool) {
	holds = true
	for i := s.first; i < s.last; i++ {
		low, high := v.cast[i].span(body)
		if low >= -sliver {
			return true, false
		}
		holds = holds && high < -sliver
	}
	return false, holds
}

// See returns what is seen of a figure past the shadows that LookFrom made ready. The result holds until the next call.
func (v *Viewer) See(figure []r3.Vec) []VisiblePart {
	v.room = v.room[:0]
	v.seen = append(v.seen[:0], VisiblePart{Corners: figure})
	middle := Centre(figure)
	for i := range v.shadows {
		s := &v.shadows[i]
		v.shadeAll(v.cast[s.first:s.last], middle, s.opaque)
		if len(v.seen) == 0 || len(v.seen) > mostParts {
			break
		}
	}
	return v.seen
}

// shadeAll replaces the visible parts by what a shadow leaves of them.
func (v *Viewer) shadeAll(planes []Plane, middle r3.Vec, opaque bool) {
	v.next = v.next[:0]
	for i := range v.seen {
		v.shade(planes, &v.seen[i], middle, opaque)
	}
	v.seen, v.next = v.next, v.seen
}

// Hides says whether one part hides every corner of a figure from every corner of another: then it hides all of
// the one from all of the other, since its shadow from any point is convex.
func (v *Viewer) Hides(number int32, from, figure []r3.Vec) bool {
	for _, p := range from {
		var shade Shade
		v.planes, shade = v.BVH.Shadow(number, p, v.planes[:0])
		if shade == NoShade {
			return false
		}
		for i := range v.planes {
			for _, c := range figure {
				if v.planes[i].Over(c) > 0 {
					return false
				}
			}
		}
	}
	return true
}

// Reset forgets all figures. Clip keeps what it cuts until then, or until the next See, Visible or Exposed.
func (v *Viewer) Reset() { v.room = v.room[:0] }

// Exposed returns what of a figure lies in no prism among some parts of the set. The result holds until the next call.
func (v *Viewer) Exposed(figure []r3.Vec, parts []int32) []VisiblePart {
	v.room = v.room[:0]
	v.seen = append(v.seen[:0], VisiblePart{Corners: figure})
	middle := Centre(figure)
	for _, number := range parts {
		var ok bool
		if v.planes, ok = v.BVH.Body(number, v.planes[:0]); !ok {
			continue
		}
		v.shadeAll(v.planes, middle, true)
	}
	return v.seen
}

// shade appends to next what a shadow, the planes, leaves of a visible part.
func (v *Viewer) shade(planes []Plane, g *VisiblePart, middle r3.Vec, opaque bool) {
	v.cuts = v.cuts[:0]
	for i := range planes {
		h := &planes[i]
		low, high := h.span(g.Corners)
		if low >= -sliver {
			v.next = append(v.next, *g) // wholly outside
			return
		}
		if high > sliver {
			v.cuts = append(v.cuts, cuttingPlane{*h, h.Over(middle)})
		}
	}
	sortCuts(v.cuts)
	first, inside := len(v.next), g.Corners
	for i := range v.cuts {
		outside := v.Clip(inside, &v.cuts[i].plane, 1)
		inside = v.Clip(inside, &v.cuts[i].plane, -1)
		if len(inside) == 0 {
			v.next = append(v.next[:first], *g) // the shadow misses it
			return
		}
		if len(outside) > 0 {
			v.next = append(v.next, VisiblePart{outside, true, g.Filtered})
		}
	}
	if !opaque {
		v.next = append(v.next, VisiblePart{inside, g.Cut || len(v.cuts) > 0, true})
	}
}

// sortCuts puts the plane that is farthest from the middle first. The order depends on distances alone, so that a
// mirrored scene is cut into mirrored parts.
func sortCuts(cuts []cuttingPlane) {
	for i := 1; i < len(cuts); i++ {
		for k := i; k > 0 && cuts[k].depth > cuts[k-1].depth; k-- {
			cuts[k], cuts[k-1] = cuts[k-1], cuts[k]
		}
	}
}

// Clip is the part of a figure on one side of a plane: over it (1) or under it (-1); nil where there is none. It
// holds until Reset.
func (v *Viewer) Clip(corners []r3.Vec, h *Plane, side float64) []r3.Vec {
	first := len(v.room)
	var far float64
	if v.room, far = clip(v.room, corners, h, side); far <= sliver {
		v.room = v.room[:first]
		return nil
	}
	return v.room[first:len(v.room):len(v.room)]
}

// clip appends the part of a figure on one side of a plane, as Viewer.Clip has it, and says how far from the plane it reaches.
func clip(to, corners []r3.Vec, h *Plane, side float64) (all []r3.Vec, far float64) {
	last := corners[len(corners)-1]
	was := side * h.Over(last)
	for i, c := range corners {
		is := side * h.Over(c)
		crosses := was > sliver && is < -sliver || was < -sliver && is > sliver
		if crosses && (i > 0 || len(corners) > 2) { // a line has one edge
			to = append(to, r3.Add(last, r3.Scale(was/(was-is), r3.Sub(c, last))))
		}
		if is >= -sliver {
			to = append(to, c)
			far = max(far, is)
		}
		last, was = c, is
	}
	return to, far
}

// Centre is the mean of the corners of a figure.
func Centre(corners []r3.Vec) (c r3.Vec) {
	for _, p := range corners {
		c = r3.Add(c, p)
	}
	return r3.Scale(1/float64(len(corners)), c)
}
