package radiosity

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/solid"
)

// face is one side of a solid: a convex polygon that is lit from before it. Its patches are the
// cells of a grid over the rectangle that it lies in.
type face struct {
	id            solid.ID
	group         int32
	reflect       colour.RGB // of what rays see: 1/met times what it returns
	met           float64    // share of rays that end on it; others pass a cloth or go on mirrored
	specular      *specular  // of a mirror
	through       colour.RGB // of a cloth: share of what returns light that comes from behind, by what the same light before it would
	otherSide     int32      // of a cloth: the number of its other face, and one; 0 for none
	corners       []r3.Vec   // counter-clockwise from before it
	basis                    // u and v along the rectangle, n out of the face
	origin        r3.Vec     // a corner of the rectangle
	width, height float64    // m
	outline       []r2.Vec   // in u and v from the origin; nil where the face fills its rectangle
	parted        bool       // whether it is a part of a side
	first         uint32     // patch
	nu, nv        int
	du, dv        float64
}

// area is the area of a polygon by its normal.
func area(corners []r3.Vec) (sum r3.Vec) {
	for i := 1; i+1 < len(corners); i++ {
		sum = r3.Add(sum, r3.Cross(r3.Sub(corners[i], corners[0]), r3.Sub(corners[i+1], corners[0])))
	}
	return r3.Scale(0.5, sum)
}

// newFace makes a face of a polygon; not ok where it has no area.
func newFace(corners []r3.Vec) (face, bool) {
	n := area(corners)
	size := r3.Norm(n)
	if !(size > 1e-12) || math.IsInf(size, 0) {
		return face{}, false
	}
	f := face{corners: corners}
	f.n = r3.Scale(1/size, n)
	f.u = longest(corners)
	f.v = r3.Cross(f.n, f.u)
	f.frame(size)
	return f, true
}

// longest is the direction of the longest edge.
func longest(corners []r3.Vec) (u r3.Vec) {
	most := 0.0
	for i, a := range corners {
		way := r3.Sub(corners[(i+1)%len(corners)], a)
		if length := r3.Norm(way); length > most*(1+1e-9) {
			u, most = r3.Scale(1/length, way), length
		}
	}
	return u
}

// frame finds the rectangle.
func (f *face) frame(size float64) {
	inf := math.Inf(1)
	low, high := r2.Vec{X: inf, Y: inf}, r2.Vec{X: -inf, Y: -inf}
	flat := make([]r2.Vec, len(f.corners))
	for i, c := range f.corners {
		p := r2.Vec{X: r3.Dot(c, f.u), Y: r3.Dot(c, f.v)}
		low, high = r2.Vec{X: min(low.X, p.X), Y: min(low.Y, p.Y)}, r2.Vec{X: max(high.X, p.X), Y: max(high.Y, p.Y)}
		flat[i] = p
	}
	f.width, f.height = high.X-low.X, high.Y-low.Y
	f.origin = r3.Add(r3.Add(r3.Scale(low.X, f.u), r3.Scale(low.Y, f.v)), r3.Scale(r3.Dot(f.n, f.corners[0]), f.n))
	if size < f.width*f.height*(1-1e-9) {
		for i := range flat {
			flat[i] = r2.Sub(flat[i], low)
		}
		f.outline = flat
	}
}

// at is a place of the face by its distances from the origin.
func (f *face) at(x, y float64) r3.Vec {
	return r3.Vec{
		X: f.origin.X + x*f.u.X + y*f.v.X,
		Y: f.origin.Y + x*f.u.Y + y*f.v.Y,
		Z: f.origin.Z + x*f.u.Z + y*f.v.Z,
	}
}

// contains says whether a place by its distances from the origin lies on the face.
func (f *face) contains(x, y float64) bool {
	for i, a := range f.outline {
		b := f.outline[(i+1)%len(f.outline)]
		if (b.X-a.X)*(y-a.Y)-(b.Y-a.Y)*(x-a.X) < 0 {
			return false
		}
	}
	return true
}

// liesUnder says whether a face lies under a place in its plane.
func (f *face) liesUnder(at r3.Vec) bool {
	way := r3.Sub(at, f.origin)
	x, y := r3.Dot(way, f.u), r3.Dot(way, f.v)
	return x >= 0 && x <= f.width && y >= 0 && y <= f.height && f.contains(x, y)
}

// element is the one that a place falls on.
func (f *face) element(at r3.Vec) uint32 {
	way := r3.Sub(at, f.origin)
	x := half(r3.Dot(way, f.u)/f.du, f.nu)
	y := half(r3.Dot(way, f.v)/f.dv, f.nv)
	patch := f.first + uint32(y>>1*f.nu+x>>1)
	return 4*patch + uint32(y&1<<1|x&1)
}

// pieces is how many a length is cut into that are no longer than a size.
func pieces(length, size float64) int { return max(1, int(math.Ceil(length/size-1e-9))) }

// half is the half of a cell that a place falls in, counted from the first.
func half(x float64, n int) int { return min(max(int(2*x), 0), 2*n-1) }

// prismFaces are the faces of a vertical prism.
func prismFaces(p *solid.Prism) []face {
	ring := make([]r2.Vec, len(p.Base))
	copy(ring, p.Base)
	foot, top := ringAt(ring, p.Z0), ringAt(ring, p.Z1)
	switch z := area(foot).Z; {
	case z == 0 || !(p.Z1 > p.Z0):
		return nil
	case z < 0:
		reverse(foot)
		reverse(top)
	}
	var all []face
	keep := func(corners []r3.Vec) {
		if f, ok := newFace(corners); ok {
			all = append(all, f)
		}
	}
	for i := range foot {
		k := (i + 1) % len(foot)
		keep([]r3.Vec{foot[i], foot[k], top[k], top[i]})
	}
	keep(top)
	reverse(foot)
	keep(foot)
	return all
}

// sheetFaces are the two sides of a sheet.
func sheetFaces(s *solid.Sheet) (front, back []face) {
	if f, ok := newFace(s.Corners); ok {
		front = append(front, f)
	}
	turned := append([]r3.Vec(nil), s.Corners...)
	reverse(turned)
	if f, ok := newFace(turned); ok {
		back = append(back, f)
	}
	return front, back
}

// ringAt are the corners of an outline at a height z, m.
func ringAt(ring []r2.Vec, z float64) []r3.Vec {
	corners := make([]r3.Vec, len(ring))
	for i, p := range ring {
		corners[i] = r3.Vec{X: p.X, Y: p.Y, Z: z}
	}
	return corners
}

func reverse(corners []r3.Vec) {
	for i, k := 0, len(corners)-1; i < k; i, k = i+1, k-1 {
		corners[i], corners[k] = corners[k], corners[i]
	}
}

// rectangle is the part of the face's rectangle from a corner on.
func (f *face) rectangle(x, y, width, height float64) [4]r3.Vec {
	return [4]r3.Vec{f.at(x, y), f.at(x+width, y), f.at(x+width, y+height), f.at(x, y+height)}
}

// element4 is the rectangle of element k of the patch whose corner is at x, y.
func (f *face) element4(x, y float64, k int) [4]r3.Vec {
	return f.rectangle(x+f.du/2*float64(k&1), y+f.dv/2*float64(k>>1), f.du/2, f.dv/2)
}

// touches says whether a patch may lie in a prism. Its own prism is among those near, and lies behind it.
func (f *face) touches(x, y int, near []box) bool {
	left, low := float64(x)*f.du, float64(y)*f.dv
	before := r3.Scale(clearance, f.n)
	cell := boxRound([]r3.Vec{
		r3.Add(f.at(left, low), before), r3.Add(f.at(left+f.du, low), before),
		r3.Add(f.at(left, low+f.dv), before), r3.Add(f.at(left+f.du, low+f.dv), before),
	})
	return slices.ContainsFunc(near, func(b box) bool { return b.meets(&cell) && !f.behind(&b) })
}

// behind says whether a box lies wholly behind a face.
func (f *face) behind(b *box) bool {
	far := r3.Vec{X: b.low.X, Y: b.low.Y, Z: b.low.Z} // the corner furthest along the normal
	if f.n.X > 0 {
		far.X = b.high.X
	}
	if f.n.Y > 0 {
		far.Y = b.high.Y
	}
	if f.n.Z > 0 {
		far.Z = b.high.Z
	}
	return r3.Dot(f.n, r3.Sub(far, f.origin)) <= clearance/2
}

// strip is what of a convex figure lies between two offsets, m, along a direction; nil where nothing does.
func strip(figure []r3.Vec, along r3.Vec, low, high float64) []r3.Vec {
	var view solid.Viewer
	over, under := solid.Plane{N: along, C: low}, solid.Plane{N: along, C: high}
	if figure = view.Clip(figure, &over, 1); figure != nil {
		figure = view.Clip(figure, &under, -1)
	}
	return figure
}
