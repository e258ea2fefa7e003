package photometry

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// FlatField is the light of a projection spot: as strong all over the image of its round gate, and none beside it. The rim
// is the straight edge of a lens in or out of focus, half as bright at half the beam.
type FlatField struct {
	radius float64 // of the image at a distance of 1
	blur   float64 // radius of the circle of confusion there
	peak   float64 // cd/lm
}

// leastBlur keeps an edge from being none, share of the width of the image.
const leastBlur = 1e-3

// NewFlatField makes the field of a full angle, degrees, with a circle of confusion that is a share of the image.
func NewFlatField(beam, blur float64) *FlatField {
	f := &FlatField{radius: ImageRadius(beam), peak: 1}
	f.blur = min(max(blur, leastBlur), 1) * f.radius
	ring := func(t float64) float64 { return f.At(t) * math.Sin(t) }
	edge := func(at float64) float64 { return math.Atan(max(0, at)) }
	f.peak = 1 / (2 * math.Pi * integrateAcross(ring, []float64{0, edge(f.radius - f.blur), edge(f.radius), edge(f.radius + f.blur)}))
	return f
}

// At gives the intensity, cd/lm, at an angle from the axis in radians.
func (f *FlatField) At(t float64) float64 {
	if t >= math.Pi/2 {
		return 0
	}
	return f.peak * beyondEdge((f.radius-math.Tan(t))/f.blur)
}

// Candela gives the intensity, cd/lm.
func (f *FlatField) Candela(dir r3.Vec) float64 {
	if dir.Z >= 0 {
		return 0
	}
	return f.peak * beyondEdge((f.radius-math.Hypot(dir.X, dir.Y)/-dir.Z)/f.blur)
}

// Peak gives the intensity on the axis, cd/lm.
func (f *FlatField) Peak() float64 { return f.peak * beyondEdge(f.radius/f.blur) }

// Figures give the radius of the image and that of the circle of confusion, both at a distance of 1.
func (f *FlatField) Figures() (radius, blur float64) { return f.radius, f.blur }

// Detail gives the size of the finest detail, by the distance.
func (f *FlatField) Detail() float64 { return 2 * f.blur }
