package review

import (
	"fmt"

	"scrimshaw/plan"
)

// maxNamed is how many keys a finding names that its figure leaves out; more are counted.
const maxNamed = 3

// withoutPrefix begins a finding whose figure leaves out what is not computed yet: "without scrims of 1 k, ".
func withoutPrefix(keys []plan.Uncomputed) string {
	switch n := len(keys); {
	case n == 0:
		return ""
	case n <= maxNamed:
		return "without " + plan.ListUncomputed(keys) + ", "
	default:
		return fmt.Sprintf("without %s and %d more, ", plan.ListUncomputed(keys[:maxNamed]), n-maxNamed)
	}
}
