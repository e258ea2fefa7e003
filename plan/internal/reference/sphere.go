package reference

import (
	"math"

	"gonum.org/v1/gonum/integrate/quad"

	"scrimshaw/plan/photometry"
)

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
