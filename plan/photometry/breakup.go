package photometry

import (
	"math"
	"slices"
)

// Breakup is a pattern in the gate of a projection spot: holes of no regular form, as of leaves.
type Breakup struct {
	Open  float64 // share of the gate
	Grain float64 // about how wide a hole is, or what lies between two: share of the width of the gate
	Seed  uint64  // other seeds are other patterns
}

// relief is the height of a relief of noise at a place of the gate, in radii to the right of its middle and over it: the
// pattern is open where that lies over a level. Two layers make it irregular, the second of half the height and half the
// grain.
func (b *Breakup) relief(x, y float64) float64 {
	cell := 2 * b.Grain
	return noise(x/cell, y/cell, b.Seed) + 0.5*noise(2*x/cell+secondRight, 2*y/cell+secondUp, b.Seed+1)
}

// How far the second layer is shifted, in its own cells, so that the grids of both do not lie on each other.
const secondRight, secondUp = 0.37, 0.71

// noise is a smooth relief between 0 and 1 through a height for each point of a grid of whole numbers.
func noise(x, y float64, seed uint64) float64 {
	i, j := math.Floor(x), math.Floor(y)
	u, v := smoothStep(x-i), smoothStep(y-j)
	height := func(di, dj int64) float64 { return gridHeight(int64(i)+di, int64(j)+dj, seed) }
	low, high := height(0, 0), height(0, 1)
	low += u * (height(1, 0) - low)
	high += u * (height(1, 1) - high)
	return low + v*(high-low)
}

// smoothStep goes from 0 to 1 with neither slope nor bend at its ends.
func smoothStep(t float64) float64 { return t * t * t * (t*(6*t-15) + 10) }

// gridHeight is a number between 0 and 1 that nothing predicts: the bits of the place and the seed, mixed (S. Vigna's
// splitmix64, in the public domain).
func gridHeight(i, j int64, seed uint64) float64 {
	z := uint64(i)*0x9E3779B97F4A7C15 ^ uint64(j)*0xC2B2AE3D27D4EB4F ^ seed*0x165667B19E3779F9
	z = (z ^ z>>30) * 0xBF58476D1CE4E5B9
	z = (z ^ z>>27) * 0x94D049BB133111EB
	return float64((z^z>>31)>>11) / (1 << 53)
}

// level is the height over which the relief is open, so that a share of the gate is.
func (b *Breakup) level(heights []float64) float64 {
	var inside []float64
	for n, h := range heights {
		if math.Hypot(cellPlace(n%pictureSide), cellPlace(n/pictureSide)) <= 1 {
			inside = append(inside, h)
		}
	}
	slices.Sort(inside)
	first := int((1 - b.Open) * float64(len(inside)))
	if first == 0 {
		return math.Inf(-1) // all of it is open
	}
	return inside[min(first, len(inside)-1)]
}
