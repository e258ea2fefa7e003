package light

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/solid"
)

// surfaceSum sums light over figures of one patch.
type surfaceSum struct {
	r       Receptor
	grain   float64 // m over which the light changes little
	near    float64 // m from the lamp
	closely bool    // by several places of each part
	light   func(r *Receptor) colour.RGB
	sum     colour.RGB
}

// mostStrips is how often, at most, a side is divided for a lamp; and a part that is longer than such a share of its
// distance from the lamp takes more than the light in its middle.
const (
	mostStrips = 16
	flatShare  = 0.1
)

// strips is how many parts of a length are no longer than twice the grain.
func (s *surfaceSum) strips(length float64) int {
	return min(max(1, int(math.Ceil(length/(2*s.grain)))), mostStrips)
}

// at adds the light of a place, which stands for an area.
func (s *surfaceSum) at(p r3.Vec, area float64) {
	s.r.At = p
	s.sum = s.sum.Add(s.light(&s.r).Scale(area))
}

// figure sums over a convex figure.
func (s *surfaceSum) figure(f []r3.Vec) {
	if isParallelogram(f) {
		s.parallelogram(f)
		return
	}
	for i := 1; i+1 < len(f); i++ {
		t := triangle{f[0], f[i], f[i+1]}
		t.split(s.strips(t.longest()), s.triangle)
	}
}

// isParallelogram says whether a figure is one.
func isParallelogram(f []r3.Vec) bool {
	return len(f) == 4 && r3.Norm2(r3.Sub(r3.Add(f[0], f[2]), r3.Add(f[1], f[3]))) < 1e-18
}

// gauss2 is how far the two points of Gauss's rule lie from the middle of a length of 1.
const gauss2 = 0.28867513459481287

// parallelogram sums over strips each way, by Gauss's rule of one or of two points.
func (s *surfaceSum) parallelogram(f []r3.Vec) {
	u, v := r3.Sub(f[1], f[0]), r3.Sub(f[3], f[0])
	nu, nv := s.strips(math.Sqrt(r3.Norm2(u))), s.strips(math.Sqrt(r3.Norm2(v)))
	area := math.Sqrt(r3.Norm2(r3.Cross(u, v))) / float64(nu*nv)
	u, v = r3.Scale(1/float64(nu), u), r3.Scale(1/float64(nv), v)
	flat := !s.closely && math.Sqrt(max(r3.Norm2(u), r3.Norm2(v))) < flatShare*s.near
	for n := range nu * nv {
		middle := r3.Add(f[0], r3.Add(r3.Scale(float64(n%nu)+0.5, u), r3.Scale(float64(n/nu)+0.5, v)))
		if flat {
			s.at(middle, area)
			continue
		}
		for _, c := range [...][2]float64{{-1, -1}, {1, -1}, {-1, 1}, {1, 1}} {
			s.at(r3.Add(middle, r3.Add(r3.Scale(c[0]*gauss2, u), r3.Scale(c[1]*gauss2, v))), area/4)
		}
	}
}

// triangle sums over a triangle by its middle, or by three points.
func (s *surfaceSum) triangle(t triangle) {
	if !s.closely && t.longest() < flatShare*s.near {
		s.at(solid.Centre(t[:]), t.area())
		return
	}
	for _, at := range t.three() {
		s.at(at, t.area()/3)
	}
}
