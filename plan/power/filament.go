package power

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
