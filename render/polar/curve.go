package polar

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/photometry"
)

// curve is the intensity in one plane through the axis.
type curve struct {
	name        string
	points      []point // from 180 degrees on one side, by the axis, to 180 on the other
	most        float64 // cd
	behind      bool    // some of it lies beyond 90 degrees
	beam, field float64 // full angles in this plane, degrees
}

// point is the intensity at an angle from the axis: positive toward the plane's own side.
type point struct{ angle, candela float64 }

// sampling is the step of a curve, degrees.
const sampling = 0.25

// curvesOf are the planes that are drawn: one where both are the same.
func curvesOf(s photometry.Source) []curve {
	beam0, beam90 := photometry.BeamAngle(s.Distribution)
	field0, field90 := photometry.FieldAngle(s.Distribution)
	across := curveOf(s, "C0 and C180", r3.Vec{X: 1}, beam0, field0)
	if _, axial := s.Distribution.(photometry.Axial); axial {
		across.name = "every plane"
		return []curve{across}
	}
	along := curveOf(s, "C90 and C270", r3.Vec{Y: 1}, beam90, field90)
	if across.like(&along) {
		across.name = "C0 to C180, C90 to C270"
		return []curve{across}
	}
	return []curve{across, along}
}

// like reports whether two curves would be one line on paper.
func (c *curve) like(o *curve) bool {
	for i, p := range c.points {
		if math.Abs(p.candela-o.points[i].candela) > 0.002*c.most {
			return false
		}
	}
	return true
}

// curveOf samples the plane through the axis and a side.
func curveOf(s photometry.Source, name string, side r3.Vec, beam, field float64) curve {
	c := curve{name: name, beam: beam, field: field}
	n := int(math.Round(180 / sampling))
	for i := -n; i <= n; i++ {
		angle := float64(i) * sampling
		sin, cos := math.Sincos(angle * math.Pi / 180)
		v := s.Intensity(r3.Add(r3.Scale(sin, side), r3.Vec{Z: -cos}))
		c.points = append(c.points, point{angle, v})
		c.most = math.Max(c.most, v)
		c.behind = c.behind || math.Abs(angle) > 90+1e-9 && v > 0
	}
	return c
}

// line is the curve on paper, without the points that lie on their neighbours' chord.
func (d *drawing) line(c *curve) []r2.Vec {
	const smooth = 0.004 // mm
	var out []r2.Vec
	for i, p := range c.points {
		q := d.at(p.angle, p.candela)
		if n := len(out); n > 0 && out[n-1] == q {
			continue
		}
		if n := len(out); n > 1 && i < len(c.points)-1 && near(out[n-1], out[n-2], q, smooth) {
			out[n-1] = q
			continue
		}
		out = append(out, q)
	}
	return out
}

// near reports whether p lies within a distance of the line from a to b, which is short.
func near(p, a, b r2.Vec, distance float64) bool {
	ab, ap := r2.Sub(b, a), r2.Sub(p, a)
	length := r2.Norm(ab)
	return length < 2 && r2.Dot(ab, ap) > 0 && math.Abs(r2.Cross(ab, ap)) <= distance*length
}
