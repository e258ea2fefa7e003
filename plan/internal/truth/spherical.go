package truth

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// spherical is a rectangle as seen from a point, by which its points are picked by solid angle (C. Ureña, M.
// Fajardo and A. King, An Area-Preserving Parametrization for Spherical Rectangles, 2013).
type spherical struct {
	x0, y0, x1, y1, z float64 // of the rectangle from the point; z is less than 0
	b0, b1, k         float64
	angle             float64 // solid, sr
}

// newSpherical is the rectangle with its corner at (x, y) on a plane at a distance.
func newSpherical(x, y, width, height, distance float64) spherical {
	s := spherical{x0: x, y0: y, x1: x + width, y1: y + height, z: -distance}
	corner := [4]r3.Vec{{X: s.x0, Y: s.y0, Z: s.z}, {X: s.x1, Y: s.y0, Z: s.z}, {X: s.x1, Y: s.y1, Z: s.z}, {X: s.x0, Y: s.y1, Z: s.z}}
	var n [4]r3.Vec
	for i := range n {
		n[i] = r3.Unit(r3.Cross(corner[i], corner[(i+1)%4]))
	}
	inner := func(i int) float64 { return math.Acos(max(-1, min(1, -r3.Dot(n[i], n[(i+1)%4])))) }
	s.b0, s.b1 = n[0].Z, n[2].Z
	s.k = 2*math.Pi - inner(2) - inner(3)
	s.angle = inner(0) + inner(1) - s.k
	return s
}

// point gives the point of two numbers from 0 to 1, from below the place that looks.
func (s *spherical) point(u, v float64) (x, y float64) {
	sin, cos := math.Sincos(u*s.angle + s.k)
	fu := (cos*s.b0 - s.b1) / sin
	cu := math.Copysign(1/math.Sqrt(fu*fu+s.b0*s.b0), fu)
	cu = max(-1, min(1, cu))
	x = -cu * s.z / math.Sqrt(max(1e-30, 1-cu*cu))
	x = max(s.x0, min(s.x1, x))
	d := math.Hypot(x, s.z)
	h0, h1 := s.y0/math.Hypot(d, s.y0), s.y1/math.Hypot(d, s.y1)
	h := h0 + v*(h1-h0)
	if h*h >= 1-1e-12 {
		return x, s.y1
	}
	return x, max(s.y0, min(s.y1, h*d/math.Sqrt(1-h*h)))
}
