package lens

import "math"

// VeilingGlare is the luminance that stray light spreads over a picture, by that of an even surround which lights the front of
// the lens as much: a ratio. By the measure of ISO 9358 good lenses have 1 to 2 %; from memory.
const VeilingGlare = 0.015

// Veil is the luminance, cd/m², that light straight onto the front of a lens, lx, spreads over the picture: that of an even
// surround which would light it as much, E/pi, times the glare of the lens.
func Veil(lux float64) float64 { return VeilingGlare * lux / math.Pi }
