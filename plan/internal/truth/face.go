package truth

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/solid"
)

// face is a flat convex polygon. Front is the side its normal points to.
type face struct {
	id        solid.ID
	normal    r3.Vec
	offset    float64 // normal·p = offset on it
	corners   []r3.Vec
	edges     []edge
	reflect   [2]colour.RGB // of the front and the back
	pass      [2]colour.RGB // of the front and the back; of a pane
	shine     [2]colour.RGB // of the front and the back: what is mirrored
	lobe      [2]float64    // likewise the power of the lobe that it leaves in; 0 for sharply
	aside     []float64     // by angle: what passes it by what passes from ahead; of glass
	glass     *solid.Glass  // by which less passes from aside; nil where as much does from everywhere
	scatter   [2]colour.RGB // what falls on the front and on the back and leaves the other side scattered; of a cloth
	one       r3.Vec        // of a parallelogram: the shares along its two sides are one·p - at[0] and two·p - at[1]
	two       r3.Vec
	at        [2]float64
	slant     bool // not a parallelogram
	low, high [3]float64
}

// edge is a plane square to a face through a side of it; the face lies where normal·p <= offset.
type edge struct {
	normal r3.Vec
	offset float64
}

// Lengths that count as nought, m: how near a ray may begin or end on a surface, and by how much faces reach
// over their edges, so that no ray slips between two.
const (
	touching = 1e-7
	overlap  = 1e-9
)

// newFace makes a face of corners that run counter-clockwise seen from its front; not ok where it has no area.
func newFace(id solid.ID, corners []r3.Vec) (f face, ok bool) {
	var area r3.Vec
	for i := range corners {
		area = r3.Add(area, r3.Cross(r3.Sub(corners[i], corners[0]), r3.Sub(corners[(i+1)%len(corners)], corners[0])))
	}
	size := r3.Norm(area)
	if !(size > 0) {
		return f, false
	}
	f = face{id: id, corners: corners, normal: r3.Scale(1/size, area)}
	f.offset = r3.Dot(f.normal, corners[0])
	f.bound()
	for i, a := range corners {
		along := r3.Sub(corners[(i+1)%len(corners)], a)
		if length := r3.Norm(along); length > 0 {
			out := r3.Scale(1/length, r3.Cross(along, f.normal))
			f.edges = append(f.edges, edge{out, r3.Dot(out, a) + overlap})
		}
	}
	f.square()
	return f, true
}

// square finds whether the face is a parallelogram, which is quicker to meet.
func (f *face) square() {
	c := f.corners
	f.slant = len(c) != 4 || r3.Norm(r3.Sub(r3.Add(c[0], c[2]), r3.Add(c[1], c[3]))) > overlap
	if f.slant {
		return
	}
	u, v := r3.Sub(c[1], c[0]), r3.Sub(c[3], c[0])
	acrossV, acrossU := r3.Cross(v, f.normal), r3.Cross(f.normal, u)
	f.one = r3.Scale(1/r3.Dot(u, acrossV), acrossV)
	f.two = r3.Scale(1/r3.Dot(v, acrossU), acrossU)
	f.at = [2]float64{r3.Dot(f.one, c[0]), r3.Dot(f.two, c[0])}
}

// bound finds the box of the face.
func (f *face) bound() {
	for k := range 3 {
		f.low[k], f.high[k] = math.Inf(1), math.Inf(-1)
	}
	for _, c := range f.corners {
		for k, v := range [3]float64{c.X, c.Y, c.Z} {
			f.low[k], f.high[k] = min(f.low[k], v-overlap), max(f.high[k], v+overlap)
		}
	}
}

// meets says how far along a ray the face is met, between touching and far; front says whether from its front.
func (f *face) meets(o, d r3.Vec, far float64) (t float64, front, ok bool) {
	slope := f.normal.X*d.X + f.normal.Y*d.Y + f.normal.Z*d.Z
	t = (f.offset - f.normal.X*o.X - f.normal.Y*o.Y - f.normal.Z*o.Z) / slope
	if !(t > touching && t < far) {
		return 0, false, false
	}
	p := r3.Vec{X: o.X + t*d.X, Y: o.Y + t*d.Y, Z: o.Z + t*d.Z}
	if f.slant {
		return t, slope < 0, f.within(p)
	}
	a := f.one.X*p.X + f.one.Y*p.Y + f.one.Z*p.Z - f.at[0]
	b := f.two.X*p.X + f.two.Y*p.Y + f.two.Z*p.Z - f.at[1]
	return t, slope < 0, a >= -overlap && a <= 1+overlap && b >= -overlap && b <= 1+overlap
}

// within says whether a point of its plane lies on the face.
func (f *face) within(p r3.Vec) bool {
	for i := range f.edges {
		e := &f.edges[i]
		if e.normal.X*p.X+e.normal.Y*p.Y+e.normal.Z*p.Z > e.offset {
			return false
		}
	}
	return true
}

// place is a place of the face by two shares, each place as likely as any other, and the area of the face.
func (f *face) place(u, v float64) (at r3.Vec, area float64) {
	c := f.corners
	if !f.slant {
		one, two := r3.Sub(c[1], c[0]), r3.Sub(c[3], c[0])
		return r3.Add(c[0], r3.Add(r3.Scale(u, one), r3.Scale(v, two))), r3.Norm(r3.Cross(one, two))
	}
	parts := make([]float64, len(c)) // by its last corner, the area of a triangle about the first
	for i := 2; i < len(c); i++ {
		parts[i] = r3.Norm(r3.Cross(r3.Sub(c[i-1], c[0]), r3.Sub(c[i], c[0]))) / 2
		area += parts[i]
	}
	rest, i := u*area, 2
	for ; i < len(c)-1 && rest > parts[i]; i++ {
		rest -= parts[i]
	}
	far := math.Sqrt(min(1, rest/parts[i])) // from the first corner
	side := r3.Add(c[i-1], r3.Scale(v, r3.Sub(c[i], c[i-1])))
	return r3.Add(c[0], r3.Scale(far, r3.Sub(side, c[0]))), area
}
