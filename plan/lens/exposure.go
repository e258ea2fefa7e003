package lens

import "math"

// Constants of the incident meter, lx s: N^2 = E S t / C. ISO 2720 gives ranges, 240 to 400 for
// a flat receptor and 320 to 540 for a dome; these are the values that meters are usually set to.
const (
	FlatConstant = 250.0
	DomeConstant = 340.0
)

// Constants K of reflected-light meters, cd s/m²: N^2 = L S t / K. ISO 2720 gives 10.6 to 13.4 (as transcribed); hand-held spot
// meters have one of these two (common practice). Readings of this project's spot meter follow MidGrey instead, and GreyConstant
// says which K that is.
const (
	ReflectedConstant  = 12.5
	ReflectedConstant2 = 14.0
)

// Grey is the reflectance of the mid grey that an incident reading places.
const Grey = 0.18

// Exposure is a camera's setting and the constant of the meter that judges it.
type Exposure struct {
	ISO      float64 // arithmetic speed S
	Seconds  float64 // exposure time t
	Constant float64 // C, lx s
	Lost     float64 // stops that filters before the lens take
}

// Passes is the share of the light that filters before the lens let through.
func (x Exposure) Passes() float64 { return math.Exp2(-x.Lost) }

// Number gives the aperture N that an illuminance, lx, calls for; 0 for no light.
func (x Exposure) Number(lux float64) float64 {
	return math.Sqrt(math.Max(lux, 0) * x.ISO * x.Seconds * x.Passes() / x.Constant)
}

// Lux gives the illuminance, lx, that the aperture n calls for.
func (x Exposure) Lux(n float64) float64 {
	return n * n * x.Constant / (x.ISO * x.Seconds * x.Passes())
}

// Over gives by how many stops an illuminance, lx, exposes over the aperture n: -Inf for no light.
func (x Exposure) Over(lux, n float64) float64 { return math.Log2(lux / x.Lux(n)) }

// MidGrey gives the luminance, cd/m2, of a mid grey surface under the illuminance that the
// aperture n calls for: L = 0.18 C N²/(pi S t). It has no constant of its own, so that the spot
// meter and the incident meter agree on a grey card.
func (x Exposure) MidGrey(n float64) float64 { return Grey * x.Lux(n) / math.Pi }

// SpotOver gives by how many stops a luminance, cd/m2, lies over mid grey at the aperture n.
func (x Exposure) SpotOver(luminance, n float64) float64 {
	return math.Log2(luminance / x.MidGrey(n))
}

// GreyConstant gives the K, cd s/m², of a reflected-light meter that reads grey where MidGrey lies: 0.18 C/pi.
func (x Exposure) GreyConstant() float64 { return Grey * x.Constant / math.Pi }

// SpotNumber gives the aperture N that a reflected-light meter of a constant k, cd s/m², calls for at a luminance, cd/m².
func (x Exposure) SpotNumber(luminance, k float64) float64 {
	return math.Sqrt(math.Max(luminance, 0) * x.ISO * x.Seconds * x.Passes() / k)
}

// DensityStops gives the stops that an optical density takes: it passes 10^-D.
func DensityStops(density float64) float64 { return density / math.Log10(2) }

// Stops gives a ratio of light in stops.
func Stops(ratio float64) float64 { return math.Log2(ratio) }

// VeilingGlare is the luminance that stray light spreads over a picture, by that of an even surround which lights the front of
// the lens as much: a ratio. By the measure of ISO 9358 good lenses have 1 to 2 %; from memory.
const VeilingGlare = 0.015

// Veil is the luminance, cd/m², that light straight onto the front of a lens, lx, spreads over the picture: that of an even
// surround which would light it as much, E/pi, times the glare of the lens.
func Veil(lux float64) float64 { return VeilingGlare * lux / math.Pi }

// Range is what a camera holds on both sides of grey, stops. A side that is 0 is not known.
type Range struct{ Over, Under float64 }

// Known says whether one of its sides is.
func (r Range) Known() bool { return r != Range{} }

// Clips says whether what lies so many stops over grey is brighter than what the camera holds.
func (r Range) Clips(over float64) bool { return r.Over > 0 && over > r.Over }

// Sinks says whether what lies so many stops over grey is darker than what the camera holds.
func (r Range) Sinks(over float64) bool { return r.Under > 0 && over < -r.Under }
