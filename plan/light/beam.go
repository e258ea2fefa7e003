package light

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/photometry"
)

const (
	scanStep = 0.5           // degrees at which a beam's edge is looked for
	radian   = math.Pi / 180 // of a degree
)

// halfExtent is how far the opening reaches from its middle toward a side, a unit vector square to
// the axis.
func (l *lamp) halfExtent(side r3.Vec) float64 {
	x, y := math.Abs(r3.Dot(side, l.right)), math.Abs(r3.Dot(side, l.up))
	w, h := l.opening.Width/2, l.opening.Height/2
	switch l.opening.Form {
	case photometry.Point:
		return 0
	case photometry.Rectangle: // to its edge
		return 1 / math.Max(x/w, y/h)
	case photometry.Tube:
		return w * x
	}
	return w
}

// cutoffAngle is the angle from the axis, degrees, at which the intensity toward a side has fallen below
// a threshold: the first one outside the brightest direction before the lamp.
func (l *lamp) cutoffAngle(side r3.Vec, threshold float64) float64 {
	at := func(degrees float64) float64 {
		sin, cos := math.Sincos(degrees * radian)
		return l.intensity(r3.Add(r3.Scale(cos, l.axis), r3.Scale(sin, side)))
	}
	threshold *= 1 - 1e-9
	brightest, most := 0.0, at(0)
	for a := scanStep; a <= 90; a += scanStep {
		if v := at(a); v > most*(1+1e-9) {
			brightest, most = a, v
		}
	}
	if most < threshold {
		return 0
	}
	low := brightest
	for low < 180 && at(low+scanStep) >= threshold {
		low += scanStep
	}
	if low >= 180 {
		return 180
	}
	high := low + scanStep
	for range 40 {
		if a := (low + high) / 2; at(a) >= threshold {
			low = a
		} else {
			high = a
		}
	}
	return low
}

// widestAngle is the greatest angle from the axis, radians, at which the intensity reaches a threshold, in steps of
// which one is added.
func (l *lamp) widestAngle(threshold float64) float64 {
	const step, round = math.Pi / 180, 16
	for n := 180; n > 0; n-- {
		sin, cos := math.Sincos(float64(n) * step)
		for k := range round {
			s, c := math.Sincos(2 * math.Pi * float64(k) / round)
			side := r3.Add(r3.Scale(c, l.right), r3.Scale(s, l.up))
			if l.intensity(r3.Add(r3.Scale(cos, l.axis), r3.Scale(sin, side))) >= threshold {
				return float64(n+1) * step
			}
		}
	}
	return step
}

// shortestRule is the shortest rule over the opening.
func (l *lamp) shortestRule() []node {
	switch l.opening.Form {
	case photometry.Rectangle:
		return l.productRule(2, 2)
	case photometry.Disc:
		return l.discRule(2)
	case photometry.Tube:
		return l.productRule(2, 1)
	}
	return []node{{l.at, 1}}
}
