package frame

// How a least change is looked for: in so many steps, then by halving the one at which nothing shows any more.
const (
	searchSteps = 24
	halvings    = 16
	most95      = 0.95 // of a least change something still shows
	mostSteps   = 8    // how often what is found is made less, or more
)

// leastThat is the least change from nought to most after which nothing shows, to a 65,000th of a step; not ok where there
// is none. After 95 % of it something shows.
func leastThat(most float64, shows func(change float64) bool) (least float64, ok bool) {
	step := most / searchSteps
	for i := 1; i <= searchSteps; i++ {
		if high := float64(i) * step; !shows(high) {
			return narrowed(high-step, high, shows), true
		}
	}
	return 0, false
}

// narrowed finds where between a change that leaves something to be seen and one that does not nothing shows first.
func narrowed(low, high float64, shows func(change float64) bool) float64 {
	for range mostSteps {
		for range halvings {
			if middle := (low + high) / 2; shows(middle) {
				low = middle
			} else {
				high = middle
			}
		}
		if less := most95 * high; less <= 0 || shows(less) {
			break
		} else {
			low, high = 0, less
		}
	}
	return high
}

// clearing is a least change after which nothing shows, and that rounded up to what a tape or a head can be set to, after which
// nothing shows either.
func clearing(most float64, round func(float64) float64, shows func(change float64) bool) (least, rounded float64, ok bool) {
	if least, ok = leastThat(most, shows); !ok {
		return 0, 0, false
	}
	rounded = round(least)
	for range mostSteps {
		if !shows(rounded) {
			return least, rounded, true
		}
		rounded = round(rounded * (1 + 1/float64(searchSteps)))
	}
	return 0, 0, false
}
