package colour

import "math"

// secondRadiation is c2 = h c / k of Planck's law, m K (exact in the SI of 2019, rounded here).
const secondRadiation = 1.438776877e-2

// Planck gives the CIE 1931 chromaticity of a black body at kelvin K: Planck's law summed against
// the 5 nm observer. kelvin must be positive.
func Planck(kelvin float64) [2]float64 {
	v := planckXYZ(kelvin)
	sum := v[0] + v[1] + v[2]
	return [2]float64{v[0] / sum, v[1] / sum}
}

// middleWavelength is a wavelength in the middle of those that are seen, m.
const middleWavelength = 560e-9

// planckXYZ is the tristimulus value of a black body relative to Planck's law at the middle of what is
// seen, so that no temperature underflows.
func planckXYZ(kelvin float64) (v XYZ) {
	c := secondRadiation / kelvin
	middle := exitance(c / middleWavelength)
	for i := range observer {
		wavelength := firstWavelength + wavelengthStep*float64(i)
		q := middleWavelength / wavelength
		power := q * q * q * q * q * middle / exitance(c/wavelength)
		for j := range v {
			v[j] += power * observer[i][j]
		}
	}
	return v
}

// exitance is exp(x) - 1, kept finite for the coldest bodies.
func exitance(x float64) float64 { return math.Expm1(math.Min(x, 600)) }

// CoolestDaylight and HottestDaylight are the ends of the CIE daylight locus, K (CIE 15).
const CoolestDaylight, HottestDaylight = 4000, 25000

// MaxDuv is the distance from the Planckian locus beyond which a correlated colour temperature has no meaning
// (CIE 15: 0.05 in the CIE 1960 diagram).
const MaxDuv = 0.05

// Daylight gives the CIE 1931 chromaticity of the CIE daylight locus (CIE 15) at a nominal
// correlated colour temperature from CoolestDaylight to HottestDaylight; outside that range it is held at its ends.
func Daylight(kelvin float64) [2]float64 {
	t := math.Min(math.Max(kelvin, CoolestDaylight), HottestDaylight)
	c := [4]float64{-4.6070e9, 2.9678e6, 0.09911e3, 0.244063}
	if t > 7000 {
		c = [4]float64{-2.0064e9, 1.9018e6, 0.24748e3, 0.237040}
	}
	x := ((c[0]/t+c[1])/t+c[2])/t + c[3]
	return [2]float64{x, -3*x*x + 2.870*x - 0.275}
}

// UV converts a CIE 1931 chromaticity to CIE 1960 u, v, the diagram that correlated colour
// temperature and Duv are defined in.
func UV(xy [2]float64) [2]float64 {
	d := -2*xy[0] + 12*xy[1] + 3
	return [2]float64{4 * xy[0] / d, 6 * xy[1] / d}
}

// FromUV converts CIE 1960 u, v to a CIE 1931 chromaticity.
func FromUV(uv [2]float64) [2]float64 {
	d := 2*uv[0] - 8*uv[1] + 4
	return [2]float64{3 * uv[0] / d, 2 * uv[1] / d}
}

// D65 is the chromaticity of CIE standard illuminant D65, as sRGB rounds it (IEC 61966-2-1).
func D65() [2]float64 { return [2]float64{0.3127, 0.3290} }

// EqualEnergy is the chromaticity of CIE illuminant E.
func EqualEnergy() [2]float64 { return [2]float64{1.0 / 3, 1.0 / 3} }
