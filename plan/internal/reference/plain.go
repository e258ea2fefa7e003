package reference

import (
	"math"

	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/photometry"
)

// Cone is the same light in every direction within a cone about the axis and none outside.
type Cone struct{ half, peak float64 }

// NewCone makes the cone of a full angle, degrees, above 0 and up to 360.
func NewCone(angle float64) Cone {
	half := angle / 2 * math.Pi / 180
	sin := math.Sin(half / 2)
	return Cone{half, 1 / (4 * math.Pi * sin * sin)} // 2 pi (1 - cos), without cancellation
}

// Candela gives the intensity, cd/lm.
func (c Cone) Candela(dir r3.Vec) float64 { return c.At(math.Atan2(math.Hypot(dir.X, dir.Y), -dir.Z)) }

// At gives the intensity, cd/lm, at an angle from the axis in radians.
func (c Cone) At(t float64) float64 {
	if t > c.half {
		return 0
	}
	return c.peak
}

// Peak gives the intensity, cd/lm.
func (c Cone) Peak() float64 { return c.peak }

// SphereIntegral gives the integral of a distribution over the sphere, lm: 1 for every one in package
// photometry. It is summed over bands of 1 degree and 180 planes, which suits measured data too; a
// distribution with edges is good to about 1e-4.
func SphereIntegral(d photometry.Distribution) (lumens float64) {
	const bands, planes, nodes = 180, 180, 15
	for band := range bands {
		lumens += quad.Fixed(func(gamma float64) float64 {
			sum := 0.0
			for p := range planes {
				sum += d.Candela(photometry.Direction(gamma, 360*(float64(p)+0.5)/planes))
			}
			return sum * math.Sin(gamma*math.Pi/180)
		}, 180*float64(band)/bands, 180*float64(band+1)/bands, nodes, quad.Legendre{}, 1)
	}
	return lumens * 2 * math.Pi / planes * math.Pi / 180
}
