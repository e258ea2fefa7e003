package power

import "math"

// Neutral is the current in the neutral of three phases that carry so many amps each, a third of a turn apart and all at a power factor of 1, A:
// the length of the sum of their phasors.
func Neutral(amps [3]float64) float64 {
	a, b, c := amps[0], amps[1], amps[2]
	return math.Sqrt(math.Max(0, a*a+b*b+c*c-a*b-b*c-c*a))
}

// WithThirds is the current in a neutral with the third harmonics of all phases, which add up in it where the currents of the mains cancel, A:
// the root of the sum of the squares of two currents of other frequencies.
func WithThirds(neutral, thirds float64) float64 { return math.Hypot(neutral, thirds) }

// What the third harmonic of an electronic supply for light may be by its current at the mains' own frequency: IEC 61000-3-2, class C, from memory.
const (
	thirdOfLarge = 0.30 // by the power factor, over smallSupply
	thirdOfSmall = 0.86 // up to that
	smallSupply  = 25   // W
)

// ThirdOfSupply is the most third harmonic that the standard allows an electronic supply of so many watts and of a power factor, as a share of
// its current.
func ThirdOfSupply(watts, factor float64) float64 {
	if watts <= smallSupply {
		return thirdOfSmall
	}
	return thirdOfLarge * factor
}

// ThirdOfDimmed is the third harmonic of a filament behind a dimmer that cuts half-waves, as a share of its full current, where it is
// most: cut at the middle of each half-wave, 1/pi by the integral of Fourier.
const ThirdOfDimmed = 1 / math.Pi

// HarmonicFactor is the share of what it carries otherwise that a cable of four or five cores carries with so much third harmonic in its phases, as
// a share of their current; byNeutral where the current of the neutral has to keep within it, and else that of the phases: IEC 60364-5-52,
// table E.52.1, from memory.
func HarmonicFactor(third float64) (factor float64, byNeutral bool) {
	switch {
	case third <= 0.15:
		return 1, false
	case third <= 0.33:
		return 0.86, false
	case third <= 0.45:
		return 0.86, true
	}
	return 1, true
}

// filamentPower is the exponent by which the power of a filament goes with its voltage: that of its current and one more.
const filamentPower = 1 + filamentCurrent

// DimmedFilamentPower is the share of its full power that a filament takes at a share of its light, 0 to 1.
func DimmedFilamentPower(light float64) float64 {
	if light <= 0 {
		return 0
	}
	return math.Pow(light, filamentPower/filamentLight)
}

// SupplyLeakage is the current that the filter of an electronic supply sends down its earth all the time, mA: common practice, of 0.5 to 2; of
// equipment on a plug up to 4 A, IEC 61140 allows 2 (from memory).
const SupplyLeakage = 1.0

// StandingShare is the share of its residual current that may flow through a protective device all the time, so that it does not trip for nothing:
// IEC 60364-5-53, 531.3.2, from memory. It may trip from half of it on (IEC 61008-1).
const StandingShare = 0.3
