package colour

import "math"

// minFilamentKelvin is how far a dimmed filament is followed, K: below it there is hardly any light.
const minFilamentKelvin = 1000

// The end of the search for a temperature: the error of the logarithm of light, which is some ten times that
// of the temperature's.
const (
	maxSecants        = 20
	logLightTolerance = 1e-8
)

// Dimmed gives the colour temperature, K, of a filament that has kelvin at full, dimmed to a share of its light.
// The filament is a grey body: its light goes with temperature as Planck's law against V(lambda), the
// luminous efficiency of CIE 1924, which is y bar of the 1931 observer. That is far steeper than the fourth
// power, and steeper the colder it is: 1 % of the light of 3200 K is that of 2016 K. The emissivity of tungsten
// falls a little as it gets hotter, which moves what is found by less than 1 %.
func Dimmed(kelvin, share float64) float64 {
	goal := logLight(kelvin) + math.Log(share)
	switch {
	case kelvin <= minFilamentKelvin || share >= 1:
		return kelvin
	case !(goal > logLight(minFilamentKelvin)):
		return minFilamentKelvin
	}
	// Against 1/K the logarithm of light is all but a straight line: secants meet it at once.
	last, over := 1/kelvin, -math.Log(share)
	at := last + over*middleWavelength/secondRadiation
	for range maxSecants {
		now := logLight(1/at) - goal
		if math.Abs(now) < logLightTolerance {
			break
		}
		slope := (now - over) / (at - last)
		last, over = at, now
		at -= now / slope
	}
	return 1 / at
}

// logLight is the logarithm of the light of a black body, but for a constant.
func logLight(kelvin float64) float64 {
	return math.Log(planckXYZ(kelvin)[1]) - math.Log(exitance(secondRadiation/(kelvin*middleWavelength)))
}
