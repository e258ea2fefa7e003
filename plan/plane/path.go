package plane

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// PathLength is how long a path through some corners is, m.
func PathLength(corners []r2.Vec) (sum float64) {
	for i := 1; i < len(corners); i++ {
		sum += r2.Norm(r2.Sub(corners[i], corners[i-1]))
	}
	return sum
}

// OnPath is the place so far along a path, m, and the way that it leads on there, a unit vector. Before its start is the start, and past
// its end the end. Of a path no two corners in a row may be one place.
func OnPath(corners []r2.Vec, along float64) (place, way r2.Vec) {
	for i := 1; i < len(corners); i++ {
		leg := r2.Sub(corners[i], corners[i-1])
		long := r2.Norm(leg)
		way = r2.Unit(leg)
		if along < long-Grain || i == len(corners)-1 {
			return r2.Add(corners[i-1], r2.Scale(math.Min(along, long), way)), way
		}
		along = math.Max(along-long, 0)
	}
	return corners[0], way
}

// PathCrossings are the distances along a path, m, at which it goes from one side of a line to the other, in their order. A path that
// only touches the line does not cross it.
func PathCrossings(corners []r2.Vec, l Line) (along []float64) {
	last, at, from := 0.0, 0.0, 0.0 // the last distance from the line that was not nought, and where the line was met since
	for i, c := range corners {
		is := l.Distance(c)
		if i > 0 {
			long := r2.Norm(r2.Sub(c, corners[i-1]))
			if was := l.Distance(corners[i-1]); was*is < 0 {
				at = from + long*was/(was-is)
			} else if math.Abs(is) <= Grain && math.Abs(was) > Grain {
				at = from + long
			}
			from += long
		}
		if math.Abs(is) <= Grain {
			continue
		}
		if last*is < 0 {
			along = append(along, at)
		}
		last = is
	}
	return along
}

// AlongSteps are the distances at which a path is looked at so that no two are farther apart than a step, m: both ends, each corner,
// and places evenly between them.
func AlongSteps(corners []r2.Vec, step float64) []float64 {
	all := []float64{0}
	from := 0.0
	for i := 1; i < len(corners); i++ {
		long := r2.Norm(r2.Sub(corners[i], corners[i-1]))
		n := max(1, int(math.Ceil(long/step-1e-9)))
		for k := 1; k <= n; k++ {
			all = append(all, from+long*float64(k)/float64(n))
		}
		from += long
	}
	return all
}

// PathsCross says whether two paths cross, and how far along each of them they first do, m, by the first.
func PathsCross(a, b []r2.Vec) (alongA, alongB float64, cross bool) {
	fromA := 0.0
	for i := 1; i < len(a); i++ {
		best, fromB := math.Inf(1), 0.0
		legA := r2.Sub(a[i], a[i-1])
		for k := 1; k < len(b); k++ {
			legB, gap := r2.Sub(b[k], b[k-1]), r2.Sub(b[k-1], a[i-1])
			if turn := r2.Cross(legA, legB); math.Abs(turn) > Grain*Grain {
				s, t := r2.Cross(gap, legB)/turn, r2.Cross(gap, legA)/turn
				if s >= 0 && s <= 1 && t >= 0 && t <= 1 && s < best {
					best, alongA, alongB, cross = s, fromA+s*r2.Norm(legA), fromB+t*r2.Norm(legB), true
				}
			}
			fromB += r2.Norm(legB)
		}
		if cross {
			return alongA, alongB, true
		}
		fromA += r2.Norm(legA)
	}
	return 0, 0, false
}

// Strip is the rectangle along the way from a to b, so wide; they must differ. It is counter-clockwise.
func Strip(a, b r2.Vec, wide float64) []r2.Vec {
	way := r2.Unit(r2.Sub(b, a))
	side := r2.Scale(wide/2, r2.Vec{X: way.Y, Y: -way.X})
	return []r2.Vec{r2.Add(a, side), r2.Add(b, side), r2.Sub(b, side), r2.Sub(a, side)}
}
