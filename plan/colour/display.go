package colour

import "math"

// Pixel is a colour on paper or a screen: sRGB (IEC 61966-2-1), 8 bits a channel.
type Pixel struct{ R, G, B uint8 }

// bradford is the cone response of the linear Bradford transform (ICC.1, annex E).
var bradford = matrix{
	{0.8951, 0.2664, -0.1614},
	{-0.7502, 1.7135, 0.0367},
	{0.0389, -0.0685, 1.0296},
}

// srgbToXYZ and back, from the primaries of IEC 61966-2-1.
var (
	srgbToXYZ   = primaries([2]float64{0.64, 0.33}, [2]float64{0.30, 0.60}, [2]float64{0.15, 0.06}, [2]float64{0.3127, 0.3290})
	srgbFromXYZ = srgbToXYZ.inverse()
)

// adapt carries a colour seen under one white to what looks alike under another, by linear
// Bradford. A reader of a plan is adapted to its paper and the camera to its own white, so light
// of the camera's white has to come out white on the paper, warmer light orange, cooler blue.
func adapt(c XYZ, from, to [2]float64) XYZ {
	source, target := bradford.times(xyY(from, 1)), bradford.times(xyY(to, 1))
	cone := bradford.times(c)
	for i := range cone {
		cone[i] *= target[i] / source[i]
	}
	return XYZ(bradford.inverse().times(cone))
}

// Display gives light of colour c as it looks to a camera balanced to the chromaticity white, at
// the CIELAB lightness given (0 black to 100 paper). Chroma that sRGB cannot show at that
// lightness is reduced; the hue stays.
func Display(c RGB, white [2]float64, lightness float64) Pixel {
	y := c.Y()
	if !(y > 0) {
		return LCH{L: lightness}.Pixel()
	}
	lab := labOf(adapt(c.Scale(1/y).XYZ(), white, D65()))
	// The light itself has L = 100 here. Chroma follows lightness, so that what is drawn darker
	// keeps its saturation and does not glow.
	lab.C *= lightness / 100
	lab.L = lightness
	return lab.Pixel()
}

// LCH is a colour in CIELAB (ISO/CIE 11664-4, D65) by lightness 0..100, chroma and hue in degrees.
type LCH struct{ L, C, H float64 }

// Pixel gives the sRGB colour, with chroma reduced to what sRGB holds at this lightness and hue.
func (c LCH) Pixel() Pixel {
	c.L = math.Min(math.Max(c.L, 0), 100)
	if rgb := c.linear(); inGamut(rgb) {
		return encode(rgb)
	}
	low, high := 0.0, c.C
	for range 24 {
		c.C = (low + high) / 2
		if inGamut(c.linear()) {
			low = c.C
		} else {
			high = c.C
		}
	}
	c.C = low
	return encode(c.linear())
}

// linear gives linear sRGB, which may be out of range.
func (c LCH) linear() [3]float64 {
	sin, cos := math.Sincos(c.H * math.Pi / 180)
	fy := (c.L + 16) / 116
	f := [3]float64{fy + c.C*cos/500, fy, fy - c.C*sin/200}
	white := xyY(D65(), 1)
	var v [3]float64
	for i := range v {
		v[i] = white[i] * labInverse(f[i])
	}
	return srgbFromXYZ.times(v)
}

// LCH gives the CIELAB coordinates of p.
func (p Pixel) LCH() LCH { return labOf(XYZ(srgbToXYZ.times(p.Linear()))) }

// FromPixel gives a screen colour as light, without adaptation: white comes out at D65.
func FromPixel(p Pixel) RGB { return FromXYZ(XYZ(srgbToXYZ.times(p.Linear()))) }

// labOf gives the CIELAB coordinates of tristimulus values under D65 with Y = 1.
func labOf(v XYZ) LCH {
	white := xyY(D65(), 1)
	var f [3]float64
	for i := range f {
		f[i] = labForward(v[i] / white[i])
	}
	a, b := 500*(f[0]-f[1]), 200*(f[1]-f[2])
	hue := math.Atan2(b, a) * 180 / math.Pi
	if hue < 0 {
		hue += 360
	}
	return LCH{L: 116*f[1] - 16, C: math.Hypot(a, b), H: hue}
}

// The CIELAB function and its inverse, with the straight part near black.
func labForward(t float64) float64 {
	const d = 6.0 / 29
	if t > d*d*d {
		return math.Cbrt(t)
	}
	return t/(3*d*d) + 4.0/29
}

func labInverse(f float64) float64 {
	const d = 6.0 / 29
	if f > d {
		return f * f * f
	}
	return 3 * d * d * (f - 4.0/29)
}

// inGamut allows for a rounding of the last bit of a pixel.
func inGamut(rgb [3]float64) bool {
	for _, v := range rgb {
		if v < -1e-4 || v > 1+1e-4 {
			return false
		}
	}
	return true
}

// encode applies the sRGB curve.
func encode(rgb [3]float64) Pixel {
	var b [3]uint8
	for i, v := range rgb {
		v = math.Min(math.Max(v, 0), 1)
		if v <= 0.0031308 {
			v *= 12.92
		} else {
			v = 1.055*math.Pow(v, 1/2.4) - 0.055
		}
		b[i] = uint8(math.Round(v * 255))
	}
	return Pixel{b[0], b[1], b[2]}
}

// Linear undoes the sRGB curve: shares of full light, linear sRGB.
func (p Pixel) Linear() (rgb [3]float64) {
	for i, b := range [3]uint8{p.R, p.G, p.B} {
		v := float64(b) / 255
		if v <= 0.04045 {
			rgb[i] = v / 12.92
		} else {
			rgb[i] = math.Pow((v+0.055)/1.055, 2.4)
		}
	}
	return rgb
}
