package unit

import (
	"fmt"
	"regexp"
	"strings"

	"scrimshaw/plan/colour"
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

// CoolestWhite and HottestWhite are the range of whites that are read, K.
const CoolestWhite, HottestWhite = 1000, 40000

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
	if err == nil && (d > colour.MaxDuv || d < -colour.MaxDuv) {
		return 0, fault(fmt.Sprintf("a Duv is %g to %g, green positive", -colour.MaxDuv, colour.MaxDuv), "a Duv of %s is out of range", normalise(text))
	}
	return d, err
}

// check refuses a white that its locus does not reach.
func (w Kelvin) check(text string) error {
	if w.Daylight && (w.Kelvin < colour.CoolestDaylight || w.Kelvin > colour.HottestDaylight) {
		return fault(fmt.Sprintf("daylight is %d K to %d K", colour.CoolestDaylight, colour.HottestDaylight), "%q is outside the daylight locus", text)
	}
	if w.Kelvin < CoolestWhite || w.Kelvin > HottestWhite {
		return fault(fmt.Sprintf("a white is %d K to %d K", CoolestWhite, HottestWhite), "%q is out of range", text)
	}
	return nil
}
