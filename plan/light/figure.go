package light

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/photometry"
)

// outline is the flat figure as which the opening is seen from a point: the corners of a face, a polygon for
// a disc, the ends of a tube. A sphere is seen as the disc that its rim bounds from there. Nil for a point, and for
// a sphere that the point lies in.
func (l *lamp) outline(from r3.Vec, sides int) []r3.Vec {
	switch l.opening.Form {
	case photometry.Rectangle:
		return l.corners[:]
	case photometry.Disc:
		if sides == fewSides {
			return l.coarseRing
		}
		return l.ring
	case photometry.Tube:
		return l.ends[:]
	case photometry.Sphere:
		if rim, ok := l.rim(from); ok {
			return rim.polygon(sides)
		}
	}
	return nil
}

// bound is a figure of four corners at most that holds the outline from a point.
func (l *lamp) bound(from r3.Vec) []r3.Vec {
	switch l.opening.Form {
	case photometry.Rectangle, photometry.Disc:
		return l.corners[:]
	case photometry.Tube:
		return l.ends[:]
	case photometry.Sphere, photometry.Lampshade:
		if rim, ok := l.rim(from); ok {
			return rim.square()
		}
	}
	return nil
}

// rim is where the outline of a sphere, or of the one about a shade, lies as seen from a point; not ok from within it.
func (l *lamp) rim(from r3.Vec) (c circle, ok bool) {
	return sphereRim(l.at, l.roundRadius(), from, l.up, l.axis)
}

// roundRadius is the radius of a sphere, or of the one about a shade, m.
func (l *lamp) roundRadius() float64 {
	if l.shade != nil {
		return l.shade.reach()
	}
	return l.opening.Width / 2
}

// sphereRim is where a sphere's outline lies as seen from a point; not ok from within it. Its polygon turns with up or,
// where that leads to the point, with other, so that a moved scene is cut alike.
func sphereRim(at r3.Vec, radius float64, from, up, other r3.Vec) (c circle, ok bool) {
	way := r3.Sub(from, at)
	square := r3.Norm2(way)
	if square <= radius*radius*(1+1e-9) {
		return c, false
	}
	share := radius * radius / square // of the way, at which the rim lies
	axis := r3.Scale(1/math.Sqrt(square), way)
	right := r3.Cross(axis, up)
	if r3.Norm(right) < 1e-3 {
		right = r3.Cross(axis, other)
	}
	right = r3.Unit(right)
	return circle{r3.Add(at, r3.Scale(share, way)), right, r3.Cross(axis, right), radius * math.Sqrt(1-share)}, true
}
