package unit

import "math"

// FormatStop prints the number n of an aperture as the nearest third of a stop, from the full
// mark below: `T2.8`, `T2.8+⅓`, `T2.8+⅔`. The sign keeps the third a part of a stop: a fraction
// that follows a figure is read as part of the figure, and T1+⅔ is T1.26, not T1.67. Beyond the marks
// it says so: `under T0.5`, `over T64`.
func FormatStop(n float64) string {
	third := int(math.Round(6 * math.Log2(n/0.5)))
	switch {
	case math.IsNaN(n) || n <= 0 || third < 0:
		return "under T" + thirds[0]
	case third >= len(thirds):
		return "over T" + thirds[len(thirds)-1]
	}
	return "T" + thirds[third-third%3] + [...]string{"", "+⅓", "+⅔"}[third%3]
}

// FormatFigure prints the number n of an aperture as a plain figure: `T3.2`, `T11`.
func FormatFigure(n float64) string {
	if n >= 9.95 {
		return "T" + decimal(n, 0)
	}
	return "T" + tidy(n, 1)
}

// FormatStops prints a difference in stops to a tenth, with its sign: `+1.3`, `-0.5`, `0`.
func FormatStops(stops float64) string {
	s := tidy(stops, 1)
	if s[0] == '-' || s == "0" {
		return s
	}
	return "+" + s
}

// EqualStops says whether a difference in stops prints as none: less than half of the last place.
func EqualStops(stops float64) bool { return math.Abs(stops) < 0.05 }

// FormatAgainst prints how far a light lies from another that has a name, in stops, in words, so that
// its zero is not taken for that of the working stop: `1.3 under key`, `0.4 over key`, `equal to key`.
func FormatAgainst(stops float64, other string) string {
	switch {
	case EqualStops(stops):
		return "equal to " + other
	case stops < 0:
		return decimal(-stops, 1) + " under " + other
	}
	return decimal(stops, 1) + " over " + other
}

// FormatThirds prints a difference in stops to the nearest third, with its sign: `+1 ⅓`, `-⅔`,
// `0`.
func FormatThirds(stops float64) string {
	n := int(math.Round(math.Abs(stops) * 3))
	if n == 0 {
		return "0"
	}
	sign := "+"
	if stops < 0 {
		sign = "-"
	}
	whole, part := n/3, [...]string{"", "⅓", "⅔"}[n%3]
	switch {
	case whole == 0:
		return sign + part
	case part == "":
		return sign + decimal(float64(whole), 0)
	}
	return sign + decimal(float64(whole), 0) + " " + part
}
