package photometry

import "math"

// beyondEdge is how bright the image of a straight edge is, share of the open field, at a distance inside it, in radii of
// the circle of confusion. A lens that is out of focus makes a disc of every point of its gate, as bright all over; on the
// image of an edge lies as much of the discs as is cut off the circle by a chord (geometry of a thin lens).
func beyondEdge(inside float64) float64 {
	switch {
	case inside >= 1:
		return 1
	case inside <= -1:
		return 0
	}
	return 0.5 + (inside*math.Sqrt(1-inside*inside)+math.Asin(inside))/math.Pi
}

// EdgeBlur gives the circle of confusion, as a share of the width of the image, that leaves half of the light at one full
// angle and a tenth of it at another, degrees.
func EdgeBlur(beam, field float64) float64 {
	edge := ImageRadius(beam)
	return (ImageRadius(field) - edge) / edgeAt(0.1) / edge
}

// ImageRadius gives the radius of the image on a plane at a distance of 1 of a beam with a full angle, degrees.
func ImageRadius(beam float64) float64 { return math.Tan(min(beam, widestField) / 2 * math.Pi / 180) }
