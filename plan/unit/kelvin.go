package unit

import (
	"regexp"
	"strings"
)

// Kelvin is a white as written: a correlated colour temperature, K, whether the word daylight
// stood before it, and a distance from the locus in Duv (positive towards green).
type Kelvin struct {
	Kelvin   float64
	Daylight bool
	Duv      float64
}

var kelvins = measure{
	name: "a colour temperature", listed: "K", offered: "K",
	units: map[string]float64{"k": 1, "kelvin": 1},
}

// The range of whites that are read. Daylight's is that of the CIE formula.
const (
	coolestPlanck, hottestPlanck     = 1000, 40000
	coolestDaylight, hottestDaylight = 4000, 25000
	maxDuv                           = 0.05 // beyond it a correlated colour temperature has no meaning
)

// offLocus is the Duv at the end of a white: `3200 K, Duv 0.003`.
var offLocus = regexp.MustCompile(`(?i)^(.*?),? *\bduv *(.*)$`)

// usualWhites are what people mean by a word alone. Common practice.
var usualWhites = map[string]string{
	"daylight": "daylight 5600 K", "day": "daylight 5600 K", "tungsten": "3200 K", "halogen": "3200 K",
	"warm": "2700 K", "warm white": "2700 K", "cool": "6500 K", "cool white": "6500 K", "candle": "1900 K",
}

// ParseKelvin reads a white: `3200 K`, `daylight 5600 K`, `3200 K, Duv +0.003`. A bare number is
// refused.
func ParseKelvin(text string) (Kelvin, error) {
	var w Kelvin
	s := normalise(text)
	if m := offLocus.FindStringSubmatch(s); m != nil {
		duv, err := ParseDuv(m[2])
		if err != nil {
			return Kelvin{}, err
		}
		s, w.Duv = m[1], duv
	}
	if word, rest, ok := strings.Cut(s, " "); ok && strings.EqualFold(word, "daylight") {
		s, w.Daylight = rest, true
	}
	if usual := usualWhites[strings.ToLower(s)]; usual != "" {
		return Kelvin{}, fault("write "+usual, "%q is a white without its kelvins", text)
	}
	k, err := kelvins.parse(s)
	if err != nil {
		return Kelvin{}, err
	}
	w.Kelvin = k
	return w, w.check(text)
}

// ParseDuv reads a distance from the locus, a plain number: `+0.003`, positive towards green.
func ParseDuv(text string) (float64, error) {
	d, err := ParseNumber(text)
	if err == nil && (d > maxDuv || d < -maxDuv) {
		return 0, fault("a Duv is -0.05 to 0.05, green positive", "a Duv of %s is out of range", normalise(text))
	}
	return d, err
}

// check refuses a white that its locus does not reach.
func (w Kelvin) check(text string) error {
	if w.Daylight && (w.Kelvin < coolestDaylight || w.Kelvin > hottestDaylight) {
		return fault("daylight is 4000 K to 25000 K", "%q is outside the daylight locus", text)
	}
	if w.Kelvin < coolestPlanck || w.Kelvin > hottestPlanck {
		return fault("a white is 1000 K to 40000 K", "%q is out of range", text)
	}
	return nil
}
