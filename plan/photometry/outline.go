package photometry

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// outlineRound is how many places round the axis stand for the rim of an image.
const outlineRound = 72

// Outline gives the rim of the image of a beam to a share of its peak, on the plane at a distance of 1: to the right of the axis
// and over it, counter-clockwise as seen from behind. The pattern of a gate leaves it as it is; it is empty where cuts leave nothing.
func Outline(d Distribution, share float64) []r2.Vec {
	base, gate := d, &Gated{}
	if g, ok := d.(*Gated); ok {
		base, gate = g.base, g
	}
	threshold := share * Peak(base)
	var rim []r2.Vec
	for k := range outlineRound {
		turn := 2 * math.Pi * float64(k) / outlineRound
		sin, cos := math.Sincos(turn)
		out := math.Tan(min(outermost(base, turn, threshold), radians(widestField/2)))
		rim = append(rim, r2.Vec{X: out * cos, Y: out * sin})
	}
	past := edgeAt(share) * gate.blur
	for _, l := range gate.lines {
		rim = before(rim, line{l.x, l.y, (l.at + past) * gate.radius})
	}
	return rim
}

// before is the part of a convex ring that lies before a line.
func before(ring []r2.Vec, l line) (part []r2.Vec) {
	for i, p := range ring {
		last := ring[(i+len(ring)-1)%len(ring)]
		to, from := l.at-p.X*l.x-p.Y*l.y, l.at-last.X*l.x-last.Y*l.y
		if (to >= 0) != (from >= 0) {
			part = append(part, r2.Add(last, r2.Scale(from/(from-to), r2.Sub(p, last))))
		}
		if to >= 0 {
			part = append(part, p)
		}
	}
	return part
}

// edgeAt is how far beyond an edge, in radii of the circle of confusion, a share of the light is left.
func edgeAt(share float64) float64 {
	low, high := -1.0, 1.0
	for range 60 {
		if middle := (low + high) / 2; beyondEdge(middle) < share {
			low = middle
		} else {
			high = middle
		}
	}
	return -low
}
