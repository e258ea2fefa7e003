package unit

import (
	"math"
	"strings"
	"time"

	"scrimshaw/plan/source"
)

var angles = measure{
	name: "an angle", listed: "deg or °", bare: 1,
	units: map[string]float64{"°": 1, "deg": 1, "degree": 1, "degrees": 1},
}

// ParseAngle reads an angle in degrees: `45`, `45°`, `45 deg`.
func ParseAngle(text string) (float64, error) { return angles.parse(text) }

var levels = measure{
	name: "a level", listed: "%", offered: "%",
	units: map[string]float64{"%": 0.01, "percent": 0.01, "per cent": 0.01},
}

// ParseLevel reads the level of a light as 0..1: `80 %`, `80%`, `off`, `full`. A bare number is
// refused, since 1 would mean full to one reader and 1 % to another.
func ParseLevel(text string) (float64, error) {
	switch strings.ToLower(normalise(text)) {
	case "off":
		return 0, nil
	case "full":
		return 1, nil
	case "on", "yes", "true", "max":
		return 0, fault("write full, or 100 %", "%q is not a level", text)
	case "no", "false", "none":
		return 0, fault("write off, or 0 %", "%q is not a level", text)
	}
	if share, err := ParseNumber(text); err == nil && share > 0 && share <= 1 {
		return 0, fault("did you mean "+FormatPercent(share)+", or "+normalise(text)+" %?", "a level needs %%, and %q has none", text)
	}
	v, err := levels.parse(text)
	if err != nil {
		return 0, err
	}
	if v < 0 || v > 1 {
		return 0, fault("a level is 0 % to 100 %", "a level of %s is out of range", normalise(text))
	}
	return v, nil
}

var percents = measure{
	name: "a share", listed: "%", offered: "%",
	units: levels.units,
}

// ParsePercent reads a share of any size as a fraction: `5 %` is 0.05. Its range is the caller's.
func ParsePercent(text string) (float64, error) { return percents.parse(text) }

var focals = measure{
	name: "a lens", listed: "mm", offered: "mm",
	units: map[string]float64{"mm": 1},
}

// ParseLens reads a focal length in millimetres: `32 mm`. A bare number is refused.
func ParseLens(text string) (float64, error) {
	v, err := focals.positive(text)
	if err != nil {
		return 0, meantLens(text, err)
	}
	if v < 1 || v > 5000 {
		return 0, fault("a lens is 1 mm to 5000 mm", "a lens of %s is out of range", normalise(text))
	}
	return v, nil
}

// lostNought is the figure, mm, under which a lens has lost its nought: 3.5 for 35.
const lostNought = 5

// meantLens offers the lens that was meant by one without its unit, or with that of another length: 3.5 and 35 m are 35 mm.
func meantLens(text string, err error) error {
	d := err.(*source.Diagnostic)
	v, rest, wrong := leadingNumber(text, normalise(text))
	if wrong != nil || v <= 0 {
		return err
	}
	switch strings.ToLower(rest) {
	case "cm":
		v *= 10
	case "", "m":
		if v < lostNought {
			v *= 10
		}
	default:
		return err
	}
	return source.Errorf(d.Code, "did you mean "+FormatLens(v)+"?", "%s", d.Message)
}

var powers = measure{
	name: "a power", listed: "W or kW", offered: "W",
	units: map[string]float64{"w": 1, "kw": 1000, "watt": 1, "watts": 1},
}

// ParsePower reads electrical power in watts: `300 W`, `1.2 kW`.
func ParsePower(text string) (float64, error) { return powers.atLeastZero(text) }

var masses = measure{
	name: "a mass", listed: "kg, g or lb", offered: "kg",
	units: map[string]float64{"kg": 1, "g": 0.001, "lb": 0.45359237, "lbs": 0.45359237},
}

// ParseMass reads a mass in kilograms: `6.2 kg`, `850 g`, `14 lb`.
func ParseMass(text string) (float64, error) { return masses.atLeastZero(text) }

// Footcandle is one lumen a square foot, in lx.
const Footcandle = 1 / (Foot * Foot)

var illuminances = measure{
	name: "an illuminance", listed: "lx or fc", offered: "lx",
	units: map[string]float64{
		"lx": 1, "lux": 1, "klx": 1000,
		"fc": Footcandle, "footcandle": Footcandle, "footcandles": Footcandle,
	},
}

// ParseIlluminance reads an illuminance in lux: `500 lx`, `50 fc`.
func ParseIlluminance(text string) (float64, error) { return illuminances.atLeastZero(text) }

// ParseAspect reads the shape of a frame as width over height: `2.39`, `2.39:1`, `16:9`.
func ParseAspect(text string) (float64, error) {
	s := normalise(text)
	w, rest, err := leadingNumber(text, s)
	if err != nil {
		return 0, err
	}
	h := 1.0
	if rest != "" {
		if rest[0] != ':' {
			return 0, fault("write 2.39 or 16:9", "%q is not the shape of a frame", text)
		}
		if h, rest, err = leadingNumber(text, strings.TrimLeft(rest[1:], " ")); err != nil {
			return 0, err
		}
	}
	a := w / h
	if rest != "" || !(a >= 0.2 && a <= 10) || math.IsInf(a, 0) {
		return 0, fault("write 2.39 or 16:9", "%q is not the shape of a frame", text)
	}
	return a, nil
}

// ParseDate checks a date as a sheet prints it, year first, and returns it as written: `2031-05-14`.
func ParseDate(text string) (string, error) {
	if _, err := time.Parse(time.DateOnly, text); err != nil {
		return "", fault("", "a date is written like 2031-05-14, and %q is not", text)
	}
	return text, nil
}
