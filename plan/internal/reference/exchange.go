package reference

import (
	"math"

	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/spatial/r3"
)

// exchangeNodes is the order of the rule along an edge.
const exchangeNodes = 96

// Exchange is the area of a flat polygon times the share of its light that falls on another, m²:
// A1 F12 = A2 F21. Each must lie wholly before the other, corners counter-clockwise from before it; they
// may touch along edges or in corners; where they come closer than a tenth of an edge without touching the
// last of ten digits is lost. It is the double contour integral of ln r (E. M. Sparrow, J. Heat Transfer 85:81, 1963), the
// inner one in closed form.
func Exchange(a, b []r3.Vec) float64 {
	sum := 0.0
	x, w := make([]float64, exchangeNodes), make([]float64, exchangeNodes)
	quad.Legendre{}.FixedLocations(x, w, 0, 1)
	for i, from := range a {
		along := r3.Sub(a[(i+1)%len(a)], from)
		for n := range x {
			// Where the polygons touch, the inner integral has a crease at the ends of an edge; the
			// nodes are denser there.
			t, dt := smoothstep(x[n])
			t2, dt2 := smoothstep(t)
			p := r3.Add(from, r3.Scale(t2, along))
			for k, start := range b {
				end := b[(k+1)%len(b)]
				d := r3.Sub(end, start)
				length := r3.Norm(d)
				if length == 0 {
					continue
				}
				d = r3.Scale(1/length, d)
				sum += w[n] * dt * dt2 * r3.Dot(along, d) * logIntegral(p, start, d, length)
			}
		}
	}
	return math.Max(0, sum/(2*math.Pi))
}

// smoothstep maps 0..1 to itself with a slope of nought at both ends, and gives the slope.
func smoothstep(x float64) (y, slope float64) { return x * x * (3 - 2*x), 6 * x * (1 - x) }

// logIntegral is the integral of ln r from p along an edge that starts at a point in the unit direction d.
func logIntegral(p, start, d r3.Vec, length float64) float64 {
	way := r3.Sub(p, start)
	foot := r3.Dot(way, d)
	off := r3.Norm(r3.Sub(way, r3.Scale(foot, d)))
	part := func(u float64) float64 {
		square := u*u + off*off
		if square == 0 {
			return 0
		}
		sum := u*math.Log(square)/2 - u
		if off > 0 {
			sum += off * math.Atan(u/off)
		}
		return sum
	}
	return part(length-foot) - part(-foot)
}
