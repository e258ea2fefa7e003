package radiosity

import (
	"math"
	"slices"
	"sort"

	"gonum.org/v1/gonum/spatial/r3"
)

// hotChoice says which hot patches are looked at from a viewpoint and from those around it.
type hotChoice struct {
	of      *hotParts
	from    viewpoint
	close   []int     // the hot patches of which parts may be close
	chances []float64 // by hot patch, each added to those before it
}

// Viewpoints that share a choice lie within leastReach, m, of the one by which it was made, and farther off where a choice costs more
// than the looks it is for: up to mostReach at what is looked at seldom. leastTurn is the cosine of how far they may be turned from it.
const (
	leastReach = 0.5
	mostReach  = 1.5
	leastTurn  = 0.9
)

// manyPatches is from how many hot patches on a choice among them costs more than the looks it is for.
const manyPatches = 256

// choiceReach is how far, m, viewpoints may lie from the one by which a choice was made.
func (s *hotParts) choiceReach() float64 {
	return min(leastReach*math.Sqrt(max(1, 1/s.looks, float64(len(s.patches))/manyPatches)), mostReach)
}

// update makes the choice one that holds for a viewpoint.
func (c *hotChoice) update(s *hotParts, from *viewpoint) {
	within := s.choiceReach()
	if c.of == s && r3.Norm2(r3.Sub(from.middle, c.from.middle)) <= within*within &&
		r3.Dot(from.normal, c.from.normal) >= leastTurn && from.response == c.from.response {
		return
	}
	c.of, c.from, c.close, c.chances = s, *from, c.close[:0], c.chances[:0]
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

// hasNoneClose says whether the choice knows that none of the hot patches of a lamp has parts close to a place.
func (c *hotChoice) hasNoneClose(s *hotParts, at r3.Vec) bool {
	within := s.choiceReach()
	return c.of == s && len(c.close) == 0 && r3.Norm2(r3.Sub(at, c.from.middle)) <= within*within
}

// pick finds the figure that a place along a sum falls on: its number, how far along it the place is, 0 to 1, and the
// figure.
func pick(upTo []float64, at float64) (k int, rest, figure float64) {
	k = min(sort.SearchFloat64s(upTo, at), len(upTo)-1)
	before := 0.0
	if k > 0 {
		before = upTo[k-1]
	}
	figure = upTo[k] - before
	return k, min((at-before)/figure, 1), figure
}
