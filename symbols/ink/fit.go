package ink

import "sort"

// Fitting returns how many runes of a line, from its start, are no wider than width: few trials find it, so that a
// line may be of any length.
func Fitting(line []rune, width float64, measure func(string) float64) int {
	return sort.Search(len(line), func(n int) bool { return measure(string(line[:n+1])) > width })
}
