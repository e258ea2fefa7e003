package ink

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
)

// Hatch returns parallel lines of a bearing, spacing apart, inside rings that follow the even-odd
// rule. They lie on one set of lines through the origin, so that the hatches of neighbours meet.
func Hatch(rings [][]r2.Vec, spacing, bearing float64) [][2]r2.Vec {
	if !(spacing > 0) {
		return nil
	}
	along, across := Direction(bearing), Direction(bearing+90)
	low, high := math.Inf(1), math.Inf(-1)
	for _, ring := range rings {
		for _, p := range ring {
			low, high = min(low, r2.Dot(p, across)), max(high, r2.Dot(p, across))
		}
	}
	var lines [][2]r2.Vec
	for n := math.Ceil(low / spacing); n*spacing <= high; n++ {
		d := n * spacing
		cuts := crossings(rings, along, across, d)
		for i := 0; i+1 < len(cuts); i += 2 {
			if cuts[i+1] > cuts[i] {
				foot := r2.Scale(d, across)
				lines = append(lines, [2]r2.Vec{r2.Add(foot, r2.Scale(cuts[i], along)), r2.Add(foot, r2.Scale(cuts[i+1], along))})
			}
		}
	}
	return lines
}

// crossings returns, ascending, where the line at distance d along across meets the rings, as
// distances along it. A corner on the line belongs to the edge beyond it only.
func crossings(rings [][]r2.Vec, along, across r2.Vec, d float64) []float64 {
	var cuts []float64
	for _, ring := range rings {
		for i, p := range ring {
			q := ring[(i+1)%len(ring)]
			dp, dq := r2.Dot(p, across)-d, r2.Dot(q, across)-d
			if (dp < 0) != (dq < 0) {
				cuts = append(cuts, r2.Dot(between(p, q, dp/(dp-dq)), along))
			}
		}
	}
	slices.Sort(cuts)
	return cuts
}
