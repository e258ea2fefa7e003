package box

import "gonum.org/v1/gonum/spatial/r2"

// InRing says whether a point lies in a ring, by the number of sides a ray crosses.
func InRing(ring []r2.Vec, p r2.Vec) bool {
	in := false
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(b.X-a.X)*(p.Y-a.Y)/(b.Y-a.Y) {
			in = !in
		}
	}
	return in
}
