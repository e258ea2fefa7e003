package colour

// XYZ is a CIE 1931 tristimulus value.
type XYZ [3]float64

// The AP1 primaries and white, CIE 1931 x, y, of Academy S-2014-004 (ACEScg).
var (
	ap1Red   = [2]float64{0.713, 0.293}
	ap1Green = [2]float64{0.165, 0.830}
	ap1Blue  = [2]float64{0.128, 0.044}
	ap1White = [2]float64{0.32168, 0.33767}
)

var (
	toXYZ   = primaries(ap1Red, ap1Green, ap1Blue, ap1White)
	fromXYZ = toXYZ.inverse()
)

// Y returns the luminous part: the Y row of the AP1 matrix.
func (c RGB) Y() float64 {
	return toXYZ[1][0]*c[0] + toXYZ[1][1]*c[1] + toXYZ[1][2]*c[2]
}

// XYZ converts to CIE 1931 tristimulus values; {1, 1, 1} has Y = 1.
func (c RGB) XYZ() XYZ { return XYZ(toXYZ.times(c)) }

// FromXYZ converts from CIE 1931 tristimulus values. A colour outside AP1 has a negative channel.
func FromXYZ(c XYZ) RGB { return RGB(fromXYZ.times(c)) }

// XY gives the CIE 1931 chromaticity x, y of c; {0, 0} where there is no light.
func XY(c RGB) [2]float64 {
	v := c.XYZ()
	sum := v[0] + v[1] + v[2]
	if !(sum > 0) {
		return [2]float64{}
	}
	return [2]float64{v[0] / sum, v[1] / sum}
}

// FromXY gives the colour with CIE 1931 chromaticity xy and luminance y. xy[1] must be positive.
func FromXY(xy [2]float64, y float64) RGB { return FromXYZ(xyY(xy, y)) }

// xyY gives the tristimulus values of a chromaticity and a luminance.
func xyY(xy [2]float64, y float64) XYZ {
	return XYZ{xy[0] / xy[1] * y, y, (1 - xy[0] - xy[1]) / xy[1] * y}
}

// Scale multiplies every channel by k.
func (c RGB) Scale(k float64) RGB { return RGB{c[0] * k, c[1] * k, c[2] * k} }

// Add adds two lights.
func (c RGB) Add(d RGB) RGB { return RGB{c[0] + d[0], c[1] + d[1], c[2] + d[2]} }

// Times filters c by d, channel by channel.
func (c RGB) Times(d RGB) RGB { return RGB{c[0] * d[0], c[1] * d[1], c[2] * d[2]} }

// clamped sets negative channels to zero and says whether there were any beyond rounding.
func (c RGB) clamped() (RGB, bool) {
	var bad bool
	for i := range c {
		if c[i] < 0 {
			bad = bad || c[i] < -1e-9
			c[i] = 0
		}
	}
	return c, bad
}

// matrix is a 3 by 3 matrix by rows.
type matrix [3][3]float64

// times is m v.
func (m matrix) times(v [3]float64) (w [3]float64) {
	for i := range w {
		w[i] = m[i][0]*v[0] + m[i][1]*v[1] + m[i][2]*v[2]
	}
	return w
}

// inverse is the inverse by cofactors; m must not be singular.
func (m matrix) inverse() (n matrix) {
	cofactor := func(i, j int) float64 {
		a, b, c, d := (i+1)%3, (i+2)%3, (j+1)%3, (j+2)%3
		return m[a][c]*m[b][d] - m[a][d]*m[b][c]
	}
	det := m[0][0]*cofactor(0, 0) + m[0][1]*cofactor(0, 1) + m[0][2]*cofactor(0, 2)
	for i := range n {
		for j := range n[i] {
			n[i][j] = cofactor(j, i) / det
		}
	}
	return n
}

// primaries is the matrix to XYZ of an RGB space by its primaries and white (SMPTE RP 177).
func primaries(red, green, blue, white [2]float64) matrix {
	r, g, b := xyY(red, 1), xyY(green, 1), xyY(blue, 1)
	m := matrix{{r[0], g[0], b[0]}, {r[1], g[1], b[1]}, {r[2], g[2], b[2]}}
	gain := m.inverse().times(xyY(white, 1))
	for i := range m {
		for j := range m[i] {
			m[i][j] *= gain[j]
		}
	}
	return m
}
