package light

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/photometry"
)

// A face behind a grid of cells is not a smooth source: seen from a place, its light has creases
// along lines of the face, straight before the place and where the cut-off angles fall. pieces sums
// it between those lines, where a short rule serves.
type creases struct {
	left, right, down, up float64    // tangents at which the light ends; +Inf where it does not
	grid                  [2]float64 // of a grid before a cosine: inverse tangents of the cut-off angles
	gain                  float64    // and its intensity on the axis, cd/lm; 0 for any other distribution
	measured              tabulated  // nil for what was not measured
}

// newCreases looks for the ends of a distribution in the planes of C0 and C90.
func newCreases(d photometry.Distribution) *creases {
	c := &creases{
		left: lastTangent(d, -1, 0), right: lastTangent(d, 1, 0),
		down: lastTangent(d, 0, -1), up: lastTangent(d, 0, 1),
	}
	if g, ok := d.(gridded); ok {
		c.grid, c.gain, _ = g.OverCosine()
	}
	c.measured, _ = d.(tabulated)
	return c
}

// gridded is a distribution that may be a cosine behind a grid, of which a sum by parts is shorter than any other.
type gridded interface {
	OverCosine() (inverseTangents [2]float64, perLumen float64, ok bool)
}

// tabulated is a distribution with a kink at each of the angles that it was measured at. It gives intensities fast: in the
// direction (right, up, -ahead) times inverse, cd/lm.
type tabulated interface {
	FastCandela(right, up, ahead, inverse float64) float64
}

// lastTangent is the tangent of the angle at which the light ends in a half plane of the lamp's
// frame.
func lastTangent(d photometry.Distribution, x, y float64) float64 {
	lit := func(t float64) bool {
		sin, cos := math.Sincos(t)
		return d.Candela(r3.Vec{X: x * sin, Y: y * sin, Z: -cos}) > 0
	}
	low, high := 0.0, math.Pi/2
	if lit(high - 1e-6) {
		return math.Inf(1)
	}
	for range 50 {
		if t := (low + high) / 2; lit(t) {
			low = t
		} else {
			high = t
		}
	}
	return math.Tan(high)
}
