// Package formfactor holds closed forms for the light of uniform Lambertian sources of simple
// shapes: what a flat receptor and an incident dome receive from a polygon, a disc, a sphere or
// a line that is fully seen, at any distance and in any attitude.
//
// Every function gives lux for a luminance of 1 cd/m² (for a line: for 1 cd/m), which is pi times the
// form factor. A flat receptor takes light by the cosine and nothing from behind its plane, so a source that
// crosses the plane is clipped there. A dome weighs by (1 + cos t)/2 and clips nothing.
// Vectors are in any one frame; axis is the receptor's, of unit length.
package formfactor

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// edge is one edge's part of Lambert's formula as a vector: the angle it subtends along the unit
// normal of its plane through the receptor, halved. An edge that passes through the receptor has
// no plane and gives nothing.
func edge(a, b r3.Vec) r3.Vec {
	n := r3.Cross(a, b)
	sin := length(n)
	if sin == 0 {
		return r3.Vec{}
	}
	return r3.Scale(math.Atan2(sin, r3.Dot(a, b))/(2*sin), n)
}

// length is that of a vector, in half the time of r3.Norm, which guards against overflow.
func length(v r3.Vec) float64 { return math.Sqrt(r3.Norm2(v)) }

// dome is what a dome receives: half the scalar and half the vector along its axis.
func dome(solidAngle float64, vector, axis r3.Vec) float64 {
	return math.Max(0, (solidAngle+r3.Dot(vector, axis))/2)
}
