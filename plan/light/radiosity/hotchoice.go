package radiosity

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"
)

// hotChoice says which hot patches are looked at from the viewpoints round a place.
type hotChoice struct {
	close   []int     // the hot patches of which parts may be close
	chances []float64 // by hot patch, each added to those before it

	nearby  []nearbyPart // the parts of the patch looked at last that only their elements are close for
	weights float64      // of all of them
}

// nearbyPart is a part that only its element is close for, and in what proportion it is looked at.
type nearbyPart struct {
	number int
	weight float64
}

// addNearby takes up a part, in proportion to about what is got of it: by what it returns alone, a dim part next to a viewpoint would be
// looked at as seldom as it is dim, and would then stand for bright ones that are farther off.
func (c *hotChoice) addNearby(number int, weight float64) {
	c.nearby = append(c.nearby, nearbyPart{number, weight})
	c.weights += weight
}

// Viewpoints that share a choice lie within leastReach, m, of a place, and farther off where a choice costs more
// than the looks it is for: up to mostReach at what is looked at seldom.
const (
	leastReach = 0.12
	mostReach  = 1.5
)

// manyPatches is from how many hot patches on a choice among them costs more than the looks it is for.
const manyPatches = 1024

// choiceReach is how far, m, viewpoints may lie from the place round which a choice is made.
func (s *hotParts) choiceReach() float64 {
	return min(leastReach*math.Sqrt(max(1, 1/s.looks, float64(len(s.patches))/manyPatches)), mostReach)
}

// tileSide is how many viewpoints, so far apart, m, make a row of a square that shares a choice.
func (s *hotParts) tileSide(apart float64) int {
	return 1 + int(min(s.choiceReach()*math.Sqrt2/apart, mostTile))
}

// mostTile bounds the rows of a square of viewpoints.
const mostTile = 64

// choose makes the choice one for viewpoints that lie within a distance, m, of one, and look about as that does.
func (c *hotChoice) choose(s *hotParts, from *viewpoint, within float64) {
	c.close, c.chances = c.close[:0], c.chances[:0]
	sum := 0.0
	for i := range s.patches {
		h := &s.patches[i]
		if slices.Contains(from.skip, h.of) {
			c.chances = append(c.chances, sum)
			continue
		}
		if reach := within + h.reach; r3.Norm2(r3.Sub(h.middle, from.middle)) <= reach*reach {
			c.close = append(c.close, i)
		}
		sum += h.chance(from, within+from.reach)
		c.chances = append(c.chances, sum)
	}
}

// pick finds the figure that a place along a sum falls on: its number, how far along it the place is, 0 to 1, and the
// figure.
func pick(upTo []float64, at float64) (k int, rest, figure float64) {
	k = min(reaching(upTo, at), len(upTo)-1)
	before := 0.0
	if k > 0 {
		before = upTo[k-1]
	}
	figure = upTo[k] - before
	return k, min((at-before)/figure, 1), figure
}

// reaching is the place of the first of some figures, which ascend, that reaches one; their number where none does. The search of the
// library asks a function at each step.
func reaching(upTo []float64, at float64) int {
	low, high := 0, len(upTo)
	for low < high {
		if middle := int(uint(low+high) >> 1); upTo[middle] < at {
			low = middle + 1
		} else {
			high = middle
		}
	}
	return low
}
