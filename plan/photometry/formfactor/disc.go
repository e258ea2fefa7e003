package formfactor

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// Circle is a luminous disc: its centre, its unit normal on the luminous side, and its radius, m.
type Circle struct {
	Centre, Normal r3.Vec
	Radius         float64
}

// Disc gives what a flat receptor receives from a disc: Lambert's contour integral, whose
// integrand on a circle is a ratio of first-degree trigonometric polynomials, integrated exactly along
// the arc that the receptor's plane leaves, closed by the chord.
func Disc(c Circle, at, axis r3.Vec) float64 {
	seen := c.from(at)
	if seen.height <= 0 {
		return 0
	}
	from, to, whole := seen.above(axis)
	switch {
	case whole:
		return math.Max(0, r3.Dot(seen.arcVector(0, 2*math.Pi), axis))
	case from == to:
		return 0
	}
	sum := seen.arcVector(from, to)
	sum = r3.Add(sum, edge(seen.point(from), seen.point(to)))
	return math.Max(0, r3.Dot(sum, axis))
}

// DiscDome gives what an incident dome receives from a disc.
func DiscDome(c Circle, at, axis r3.Vec) float64 {
	seen := c.from(at)
	if seen.height <= 0 {
		return 0
	}
	return dome(seen.solidAngle(), seen.arcVector(0, 2*math.Pi), axis)
}

// rim is a circle seen from a receptor at the origin: centre + radius (u cos t + v sin t), with t
// running counter-clockwise seen from the luminous side.
type rim struct {
	centre, u, v r3.Vec
	radius       float64
	height       float64 // of the receptor above the disc's plane, on the luminous side
}

// from is the rim of c as seen from at. u points from the receptor's foot to the centre, so that
// t = pi is the near point and the integrand is even about it.
func (c Circle) from(at r3.Vec) rim {
	centre := r3.Sub(c.Centre, at)
	height := -r3.Dot(centre, c.Normal)
	outward := r3.Add(centre, r3.Scale(height, c.Normal))
	var u r3.Vec
	if s := r3.Norm(outward); s > 1e-12*(c.Radius+math.Abs(height)) {
		u = r3.Scale(1/s, outward)
	} else {
		u = perpendicular(c.Normal)
	}
	return rim{centre, u, r3.Cross(c.Normal, u), c.Radius, height}
}

// perpendicular is some unit vector square to n.
func perpendicular(n r3.Vec) r3.Vec {
	other := r3.Vec{X: 1}
	if math.Abs(n.X) > 0.7 {
		other = r3.Vec{Y: 1}
	}
	return r3.Unit(r3.Cross(n, other))
}

// point is the point of the rim at t.
func (c *rim) point(t float64) r3.Vec {
	sin, cos := math.Sincos(t)
	return r3.Add(c.centre, r3.Add(r3.Scale(c.radius*cos, c.u), r3.Scale(c.radius*sin, c.v)))
}

// above gives the range of t in which the rim lies above the receptor's plane; whole where all of
// it does, an empty range where nothing does.
func (c *rim) above(axis r3.Vec) (from, to float64, whole bool) {
	middle := r3.Dot(c.centre, axis)
	x, y := c.radius*r3.Dot(c.u, axis), c.radius*r3.Dot(c.v, axis)
	reach := math.Hypot(x, y)
	switch {
	case middle >= reach:
		return 0, 0, true
	case middle <= -reach:
		return 0, 0, false
	}
	half := math.Acos(-middle / reach)
	top := math.Atan2(y, x)
	return top - half, top + half, false
}

// arcVector is -1/2 the integral of r x dr / r² along the rim from t0 to t1: with r² = d + e cos t
// and r x dr = (k + m cos t + n sin t) dt.
func (c *rim) arcVector(t0, t1 float64) r3.Vec {
	d := r3.Dot(c.centre, c.centre) + c.radius*c.radius
	e := 2 * c.radius * r3.Dot(c.centre, c.u) // r.v is zero by the choice of u
	k := r3.Scale(c.radius*c.radius, r3.Cross(c.u, c.v))
	m := r3.Scale(c.radius, r3.Cross(c.centre, c.v))
	n := r3.Scale(-c.radius, r3.Cross(c.centre, c.u))
	one, cos, sin := ratios(d, e, t0, t1)
	sum := r3.Add(r3.Scale(one, k), r3.Add(r3.Scale(cos, m), r3.Scale(sin, n)))
	return r3.Scale(-0.5, sum)
}

// ratios integrates 1, cos t and sin t over d + e cos t from t0 to t1, for d > e >= 0. No term
// loses figures as e goes to zero, on the axis of the disc.
func ratios(d, e, t0, t1 float64) (one, cos, sin float64) {
	root := math.Sqrt((d - e) * (d + e))
	s0, c0 := math.Sincos(t0)
	s1, c1 := math.Sincos(t1)
	// 2 atan(sqrt((d-e)/(d+e)) tan(t/2)) = t - 2 atan(e sin t/(d + root + e cos t)): the step
	// between the two anomalies of an ellipse, continuous in t.
	lag := atanOver(e, s1/(d+root+e*c1)) - atanOver(e, s0/(d+root+e*c0))
	one = (t1 - t0 - 2*e*lag) / root
	cos = (2*d*lag - e/(d+root)*(t1-t0)) / root
	sin = log1pOver(e, (c0-c1)/(d+e*c1))
	return one, cos, sin
}

// atanOver is atan(e x)/e, and its limit for small e.
func atanOver(e, x float64) float64 {
	if math.Abs(e*x) < 1e-9 {
		return x
	}
	return math.Atan(e*x) / e
}

// log1pOver is log(1 + e x)/e, and its limit for small e.
func log1pOver(e, x float64) float64 {
	if math.Abs(e*x) < 1e-17 {
		return x
	}
	return math.Log1p(e*x) / e
}

// solidAngle is the solid angle of the disc, by the periodic trapezium rule on its contour, which
// converges geometrically; 1e-10 unless the receptor all but touches the rim.
func (c *rim) solidAngle() float64 {
	pole := r3.Cross(c.v, c.u) // toward the disc's plane, so that the whole disc is on its side
	last := math.Inf(1)
	for n := 32; ; n *= 2 {
		sum := 0.0
		for i := range n {
			sum += c.turning(pole, 2*math.Pi*float64(i)/float64(n))
		}
		sum *= 2 * math.Pi / float64(n)
		if math.Abs(sum-last) < 1e-11 || n >= 4096 {
			return math.Abs(sum)
		}
		last = sum
	}
}

// turning is the rate at which the contour turns about the pole, weighted by 1 - cos of its
// distance from it: its integral around the contour is the solid angle inside.
func (c *rim) turning(pole r3.Vec, t float64) float64 {
	sin, cos := math.Sincos(t)
	r := c.point(t)
	along := r3.Add(r3.Scale(-c.radius*sin, c.u), r3.Scale(c.radius*cos, c.v))
	length := r3.Norm(r)
	return r3.Dot(pole, r3.Cross(r, along)) / (length * (length + r3.Dot(pole, r)))
}
