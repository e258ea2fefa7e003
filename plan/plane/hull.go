package plane

import (
	"cmp"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
)

// Hull is the least convex ring round points, counter-clockwise from the lowest of those that lie farthest left; points on its sides are left
// out. Of points on one line it is the two ends, of points in one place one of them (Andrew's monotone chain, 1979).
func Hull(points []r2.Vec) []r2.Vec {
	sorted := slices.Clone(points)
	slices.SortFunc(sorted, func(a, b r2.Vec) int { return cmp.Or(cmp.Compare(a.X, b.X), cmp.Compare(a.Y, b.Y)) })
	sorted = slices.Compact(sorted)
	if len(sorted) < 3 {
		return sorted
	}
	half := func(points []r2.Vec) (chain []r2.Vec) {
		for _, p := range points {
			for len(chain) > 1 && r2.Cross(r2.Sub(chain[len(chain)-1], chain[len(chain)-2]), r2.Sub(p, chain[len(chain)-1])) <= 0 {
				chain = chain[:len(chain)-1]
			}
			chain = append(chain, p)
		}
		return chain[:len(chain)-1]
	}
	lower := half(sorted)
	slices.Reverse(sorted)
	return append(lower, half(sorted)...)
}
