package radiosity

import "gonum.org/v1/gonum/spatial/r3"

// elementMap is where on a face the points of a view look along a direction, in halves of its patches: both figures
// are linear in the point.
type elementMap struct {
	round  int
	x, y   halves
	first  uint32 // patch of the face
	nu, nv int
}

// halves is a figure c + i u + j v of point (i, j).
type halves struct{ c, u, v float64 }

func newElementMap(f *face, v *view, d r3.Vec, round int) elementMap {
	way := r3.Sub(v.origin, f.origin)
	along := func(side r3.Vec, size float64) halves {
		// A place q before the face is seen at q + t d with t = -n·q/n·d: its figure is w·q.
		w := r3.Scale(2/size, r3.Sub(side, r3.Scale(r3.Dot(side, d)/r3.Dot(f.n, d), f.n)))
		return halves{r3.Dot(w, way), r3.Dot(w, v.u), r3.Dot(w, v.v)}
	}
	return elementMap{round, along(f.u, f.du), along(f.v, f.dv), f.first, f.nu, f.nv}
}

// element is the one that point (i, j) sees.
func (q *elementMap) element(i, j int) uint32 {
	x, y := q.x.at(i, j, q.nu), q.y.at(i, j, q.nv)
	return 4*(q.first+uint32(y>>1*q.nu+x>>1)) + uint32(y&1<<1|x&1)
}

func (h *halves) at(i, j, n int) int {
	return min(max(int(h.c+float64(i)*h.u+float64(j)*h.v), 0), 2*n-1)
}
