package unit

import (
	"math"
	"strings"
)

// Exact factors of the international foot and inch.
const (
	Foot = 0.3048 // m
	Inch = 0.0254 // m
)

// longest bounds a length, m: a scene is a place that a crew walks.
const longest = 1e5

var lengths = measure{
	name:   "a length",
	listed: "m, cm, mm, ft or in",
	units: map[string]float64{
		"m": 1, "metre": 1, "metres": 1, "meter": 1, "meters": 1,
		"cm": 0.01, "mm": 0.001,
		"ft": Foot, "'": Foot, "foot": Foot, "feet": Foot,
		"in": Inch, `"`: Inch, "inch": Inch, "inches": Inch,
	},
}

// ParseLength reads a length as metres: `2.4 m`, `240 cm`, `2400 mm`, `7'10"`, `7 ft 10 1/2 in`,
// `94 in`, or a bare number, which counts feet where feet is true and metres otherwise. A sign
// before the first figure applies to the whole.
func ParseLength(text string, feet bool) (float64, error) {
	s := normalise(text)
	v, rest, err := mixedNumber(text, s)
	if err != nil {
		return 0, lengths.naming(err)
	}
	if rest == "" {
		if feet {
			v *= Foot
		}
		return checkLength(text, v)
	}
	name, inches := splitUnit(rest)
	factor, ok := lengths.units[strings.ToLower(name)]
	switch {
	case !ok:
		return 0, lengths.unknown(text, rest)
	case inches == "":
		return checkLength(text, v*factor)
	case factor != Foot:
		return 0, fault("only feet are followed by inches", "%q is not a length: %q is left over", text, inches)
	}
	w, err := parseInches(text, s, inches)
	if err != nil {
		return 0, err
	}
	metres := v*Foot + math.Copysign(w, signOf(s))
	if w >= Foot {
		return 0, fault("did you mean "+FormatFeet(metres)+"?", "%q has more than 12 inches behind its feet", text)
	}
	return checkLength(text, metres)
}

// parseInches reads what follows the feet, as metres: `10"`, `-10 1/2 in`. The dash is the
// draughtsman's, between feet and inches; it is no sign.
func parseInches(text, s, inches string) (float64, error) {
	w, rest, err := mixedNumber(text, strings.TrimLeft(strings.TrimPrefix(inches, "-"), " "))
	if err != nil {
		return 0, lengths.naming(err)
	}
	if rest == "" {
		return 0, fault(`did you mean `+s+`"?`, "the inches of %q have no unit", text)
	}
	if lengths.units[strings.ToLower(rest)] != Inch {
		return 0, fault("only inches follow feet", "%q is not a length: %q is not inches", text, rest)
	}
	if w < 0 {
		return 0, fault("one sign, before the feet", "%q has a sign before its inches", text)
	}
	return w * Inch, nil
}

// splitUnit divides `ft 10 in` into the unit and what follows it.
func splitUnit(s string) (name, rest string) {
	i := strings.IndexAny(s, "0123456789.-+")
	if i < 0 {
		return s, ""
	}
	return strings.TrimRight(s[:i], " "), s[i:]
}

// signOf is -1 for a text that starts with a minus: -0'6" is half a foot below.
func signOf(s string) float64 {
	if strings.HasPrefix(s, "-") {
		return -1
	}
	return 1
}

// checkLength refuses a length that no set reaches.
func checkLength(text string, metres float64) (float64, error) {
	if math.Abs(metres) > longest {
		return 0, fault("the most is 100 km", "%q is too long a length", text)
	}
	return metres, nil
}
