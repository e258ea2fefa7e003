package light

import (
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/photometry/row"
)

// rowSteps is what all rows of a lattice have in common for a lamp.
type rowSteps struct {
	grid                           *grid
	ahead, right, up, fall, square float64 // what each of them changes by from one receptor to the next: m, m²
	even, cos                      float64
}

func newRowSteps(l *lamp, g *grid) rowSteps {
	u := g.lattice.U
	s := rowSteps{
		grid: g, ahead: r3.Dot(u, l.axis), right: r3.Dot(u, l.right), up: r3.Dot(u, l.up),
		fall: -r3.Dot(u, g.lattice.Normal), square: r3.Norm2(u), cos: 1,
	}
	if g.lattice.Response == Dome {
		s.even, s.cos = 0.5, 0.5
	}
	return s
}

// from is the view of row j from a point of the lamp.
func (s *rowSteps) from(l *lamp, j int, point r3.Vec) row.View {
	lat := s.grid.lattice
	start := lat.At(0, j)
	v := r3.Sub(start, point)
	made := row.View{
		Ahead:  [2]float64{r3.Dot(v, l.axis), s.ahead},
		Right:  [2]float64{r3.Dot(v, l.right), s.right},
		Up:     [2]float64{r3.Dot(v, l.up), s.up},
		Fall:   [3]float64{-r3.Dot(v, lat.Normal), s.fall},
		Square: [3]float64{r3.Norm2(v), 2 * r3.Dot(v, lat.U), s.square},
		Even:   s.even, Cos: s.cos, Lean: s.grid.leanOfRow(j),
	}
	if lat.Toward != nil { // the way to the place, too, is linear in the index
		way := r3.Sub(*lat.Toward, start)
		made.Fall = [3]float64{-r3.Dot(v, way), r3.Dot(v, lat.U) - r3.Dot(way, lat.U), s.square}
	}
	return made
}
