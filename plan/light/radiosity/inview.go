package radiosity

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// facing is a face that the points of a view may see.
type facing struct {
	n       r3.Vec
	corners []r3.Vec
	number  int32
	cloth   bool
}

// facesInView are those of some faces that may be seen from a convex figure, put into to: faces that have all of it behind them are not seen,
// nor, where all directions go ahead of a normal, those that lie behind it. ahead is nil where directions go all round.
func facesInView(to []facing, m *mesh, faces []int32, figure []r3.Vec, ahead *r3.Vec) []facing {
	to = to[:0]
	lowest := math.Inf(-1)
	if ahead != nil {
		lowest = math.Inf(1)
		for _, c := range figure {
			lowest = min(lowest, r3.Dot(*ahead, c))
		}
	}
	for _, i := range faces {
		f := &m.faces[i]
		if isBefore(figure, f.n, r3.Dot(f.n, f.corners[0])) && (ahead == nil || isBefore(f.corners, *ahead, lowest)) {
			to = append(to, facing{f.n, f.corners, i, f.otherSide != 0})
		}
	}
	return to
}

// isBefore says whether any of some places lies farther along a direction than an offset, m.
func isBefore(places []r3.Vec, along r3.Vec, offset float64) bool {
	for _, at := range places {
		if r3.Dot(along, at) > offset {
			return true
		}
	}
	return false
}
