// Package power holds formulas of electrical supply: what lamps take from mains, what follows from their voltage, and what comes together in
// a neutral and an earth.
package power

import "math"

// Current is what a load takes from mains, A: I = P / (V x pf), with watts, volts and the power factor, 0 to 1, all of
// them positive.
func Current(watts, volts, factor float64) float64 { return watts / (volts * factor) }

// How the light, the current and the power of a filament in gas go with its voltage: each as a power of it, near the voltage that it is made for.
// As the handbooks of lighting have it; from memory, and as common practice 3.3 to 3.6 for the light.
const (
	filamentLight   = 3.4
	filamentCurrent = 0.54
)

// FilamentLight is the share of its light that a filament gives at a share of the voltage that it is made for.
func FilamentLight(volts float64) float64 { return math.Pow(volts, filamentLight) }

// DimmedFilament is the share of its full current that a filament takes from the mains at a share of its light, 0 to 1.
// A dimmer that cuts each half-wave stands in line with the lamp, so the mains carry the current of the lamp: at half the light
// nine tenths of it.
func DimmedFilament(light float64) float64 {
	if light <= 0 {
		return 0
	}
	return math.Pow(light, filamentCurrent/filamentLight)
}

// filamentTimes are how long large filaments take to follow, s, by watts: a thick one glows on after its current has gone, and comes up
// as late. Common practice, from memory.
var filamentTimes = [...]struct{ watts, seconds float64 }{{1000, 0.5}, {2000, 1}, {5000, 2}, {10000, 3}}

// FilamentTime is about how long the filament of a lamp of so many watts takes to follow what it is set to, s; 0 of a small one,
// which nobody sees lag.
func FilamentTime(watts float64) (seconds float64) {
	for _, row := range filamentTimes {
		if watts >= row.watts {
			seconds = row.seconds
		}
	}
	return seconds
}

// typeB is the multiple of its rated current below which a breaker of type B does not open at once: IEC 60898-1, from memory.
const typeB = 3

// HoldsInrush says whether a breaker of type B, rated in A, rides through a peak of current, A. Its multiple is of the
// root mean square of a sine, whose peak is the square root of two times as high.
func HoldsInrush(breaker, peak float64) bool { return peak <= typeB*math.Sqrt2*breaker }

// flexible is the most that copper of class 5, the strands of flexible cable, may resist at 20 °C, ohms a km, by section in mm²: IEC 60228.
var flexible = [...]struct{ section, ohms float64 }{
	{1, 19.5}, {1.5, 13.3}, {2.5, 7.98}, {4, 4.95}, {6, 3.30}, {10, 1.91}, {16, 1.21}, {25, 0.780}, {35, 0.554}, {50, 0.386},
}

// Resistance is what a core of flexible copper cable resists at 20 °C, ohms a m, by its section in mm²: between the sections
// of the standard, in proportion to the section from the next smaller one.
func Resistance(section float64) float64 {
	row := flexible[0]
	for _, r := range flexible {
		if r.section <= section {
			row = r
		}
	}
	return row.ohms / 1000 * row.section / section
}

// Copper resists more as it is warmer, in proportion to its heat over 234.5 °C below nought (IEC 60228).
const (
	copperZero = -234.5 // °C
	standard   = 20     // °C
	warmCable  = 70     // °C, of a cable that carries what it may
)

// PhaseDrop is the voltage that a cable of three phases loses from one of them to the neutral, V, warm: l R (I + In), with the current in the neutral
// against it as a whole, for nobody knows its phase. Where all phases carry the same, that is l R I.
func PhaseDrop(length, section, amps, neutral float64) float64 {
	return CableDrop(length, section, (amps+neutral)/2)
}

// CableDrop is the voltage that a cable of two cores loses to and fro, V, warm: 2 l R I, with its length in m, the section
// of a core in mm² and the current in A.
func CableDrop(length, section, amps float64) float64 {
	warm := (warmCable - copperZero) / (standard - copperZero)
	return 2 * length * Resistance(section) * warm * amps
}
