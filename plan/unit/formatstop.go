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

// FormatStops prints a difference in stops to a tenth, with its sign: `+1.3`, `-0.5`, `0`.
func FormatStops(stops float64) string {
	s := trimZeros(stops, 1)
	if s[0] == '-' || s == "0" {
		return s
	}
	return "+" + s
}

// EqualStops says whether a difference in stops prints as none: less than half of the last place.
func EqualStops(stops float64) bool { return math.Abs(stops) < 0.05 }

// FormatRelativeStops prints how far a light lies from another that has a name, in stops, in words, so that
// its zero is not taken for that of the working stop: `1.3 under key`, `0.4 over key`, `equal to key`.
func FormatRelativeStops(stops float64, other string) string {
	switch {
	case EqualStops(stops):
		return "equal to " + other
	case stops < 0:
		return decimal(-stops, 1) + " under " + other
	}
	return decimal(stops, 1) + " over " + other
}
