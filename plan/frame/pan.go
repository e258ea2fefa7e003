package frame

import (
	"math"

	"scrimshaw/plan"
)

// Pan is the least pan of a camera after which it does not see a thing.
type Pan struct {
	Least   float64 // degrees, either way
	Degrees float64 // that, rounded up to half a degree, to the right; negative to the left
}

// panStep is what a pan is rounded up to, degrees.
const panStep = 0.5

// leastPan is the least pan that takes what is seen of a thing out of a picture: within half the angle of view, for beyond
// that the picture is another; nil where none does.
func leastPan(c *plan.Camera, seen []seenPart, p picture) (best *Pan) {
	round := func(v float64) float64 { return math.Ceil(v/panStep-1e-6) * panStep }
	for _, side := range []float64{-1, 1} {
		most := c.HAOV / 2
		least, rounded, ok := clearing(most, round, func(change float64) bool { return showsOf(seen, p.panned(side*change)) })
		if ok && rounded <= most && (best == nil || least < best.Least) {
			best = &Pan{Least: least, Degrees: side * rounded}
		}
	}
	return best
}

// farthest is how far outside a picture things are measured, as a share of its width.
const farthest = 1.0

// outside is by how much of the picture's width, on each side, it would have to be wider to show what is seen; infinite where it
// would have to be more than three times as wide.
func outside(seen []seenPart, p picture) float64 {
	if !showsOf(seen, p.grown(farthest)) {
		return math.Inf(1)
	}
	low, high := 0.0, farthest
	for range 30 {
		if middle := (low + high) / 2; showsOf(seen, p.grown(middle)) {
			high = middle
		} else {
			low = middle
		}
	}
	return high
}
