package radiosity

import "gonum.org/v1/gonum/spatial/r3"

// elementMap is where on a face the points of a view look along a direction, in halves of its patches: both figures
// are linear in the point.
type elementMap struct {
	round  int
	x, y   linearFigure
	first  uint32 // patch of the face
	nu, nv int
}

// linearFigure is a figure c + i u + j v of point (i, j).
type linearFigure struct{ c, u, v float64 }

func newElementMap(f *face, v *view, d r3.Vec, round int) elementMap {
	way := r3.Sub(v.origin, f.origin)
	along := func(side r3.Vec, size float64) linearFigure {
		// A place q before the face is seen at q + t d with t = -n·q/n·d: its figure is w·q.
		w := r3.Scale(2/size, r3.Sub(side, r3.Scale(r3.Dot(side, d)/r3.Dot(f.n, d), f.n)))
		return linearFigure{r3.Dot(w, way), r3.Dot(w, v.u), r3.Dot(w, v.v)}
	}
	return elementMap{round, along(f.u, f.du), along(f.v, f.dv), f.first, f.nu, f.nv}
}

// elements are those that the points from (i, j) on see, side by side.
func (q *elementMap) elements(to []uint32, i, j int) {
	x, y := q.x.c+float64(j)*q.x.v, q.y.c+float64(j)*q.y.v
	for n := range to {
		at := float64(i + n)
		a := min(max(int(x+at*q.x.u), 0), 2*q.nu-1)
		b := min(max(int(y+at*q.y.u), 0), 2*q.nv-1)
		to[n] = 4*(q.first+uint32(b>>1*q.nu+a>>1)) + uint32(b&1<<1|a&1)
	}
}
