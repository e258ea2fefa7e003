// Package colour carries light as linear RGB in the ACEScg primaries (AP1, Academy S-2014-004)
// and converts between it, CIE 1931 chromaticity, correlated colour temperature and mireds.
package colour

// RGB is a linear AP1 triple. {1, 1, 1} has luminance Y = 1.
type RGB [3]float64

// White is a white point by correlated colour temperature, K, and distance from the Planckian
// locus, Duv (positive towards green). Daylight places it on the CIE daylight locus instead,
// in which case Duv is added to the locus's own.
type White struct {
	Kelvin   float64
	Duv      float64
	Daylight bool
}

// Filter is one gel: a shift in mireds (positive warms) and in Duv (positive towards green),
// the luminous transmittance, and, for a strong colour, the chromaticity it tints white to.
type Filter struct {
	Mired, Duv    float64
	Transmittance float64     // 0..1
	Tint          *[2]float64 // CIE 1931 x, y under an equal-energy white; nil for a correction gel
}
