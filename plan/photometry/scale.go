package photometry

import (
	"math"
	"sort"
)

// edgeTolerance is how far beyond the last angle of a table rounding may put a direction that is meant
// to be on it, degrees.
const edgeTolerance = 1e-9

// scale is the ascending angles of one side of a table, degrees.
type scale struct {
	angles []float64
	step   float64 // between all neighbours; 0 where they are not even

	inverse []float64 // of each step
	begin   []int32   // by even parts of the whole: the node below where the part begins
	parts   float64   // to the degree
}

func newScale(angles []float64) scale {
	s := scale{angles: append([]float64(nil), angles...)}
	last := len(s.angles) - 1
	if last < 1 {
		return s
	}
	s.divide()
	step := (s.angles[last] - s.angles[0]) / float64(last)
	for i, a := range s.angles {
		if math.Abs(a-s.angles[0]-float64(i)*step) > 1e-6*step {
			return s
		}
	}
	s.step = step
	return s
}

// find gives the node below an angle and the share of the way to the next; not ok beyond the ends.
func (s *scale) find(a float64) (i int, part float64, ok bool) {
	last := len(s.angles) - 1
	low, high := s.angles[0], s.angles[last]
	switch {
	case !(a >= low-edgeTolerance && a <= high+edgeTolerance):
		return 0, 0, false
	case a <= low:
		return 0, 0, true
	case a >= high:
		return last, 0, true
	}
	if s.step > 0 {
		i = int((a - low) / s.step) // by rounding, one too far at most
		if a < s.angles[i] {
			i--
		} else if a >= s.angles[i+1] {
			i++
		}
	} else {
		i = sort.Search(last, func(k int) bool { return s.angles[k] > a }) - 1
	}
	return i, (a - s.angles[i]) / (s.angles[i+1] - s.angles[i]), true
}

// divide makes ready for quick.
func (s *scale) divide() {
	last := len(s.angles) - 1
	n := 4 * last
	s.parts = float64(n) / (s.angles[last] - s.angles[0])
	i := 0
	for k := range n {
		for i < last-1 && s.angles[0]+float64(k)/s.parts >= s.angles[i+1] {
			i++
		}
		s.begin = append(s.begin, int32(i))
	}
	for i := range last {
		s.inverse = append(s.inverse, 1/(s.angles[i+1]-s.angles[i]))
	}
}

// quick is find to the last digits of a share, for scales of two angles and more. The last angle belongs to the
// step before it.
func (s *scale) quick(a float64) (i int, part float64, ok bool) {
	k := (a - s.angles[0]) * s.parts
	if !(k >= -edgeTolerance && k <= float64(len(s.begin))+edgeTolerance) {
		return 0, 0, false
	}
	i = int(s.begin[min(max(int(k), 0), len(s.begin)-1)])
	for i < len(s.inverse)-1 && a >= s.angles[i+1] {
		i++
	}
	return i, (a - s.angles[i]) * s.inverse[i], true
}
