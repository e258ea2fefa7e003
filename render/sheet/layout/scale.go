package layout

import (
	"strconv"

	"scrimshaw/plan/unit"
)

// good is the smallest scale at which a plan is read with ease: 1:50, or 1/4" to the foot.
const good = 50.0

// Scales are the scales of a series that are taken unasked.
func Scales(feet bool) []float64 {
	all := unit.Scales(feet)
	return all[:len(all)-1]
}

// ScaleWords says a scale as a sheet letters it: `1 : 50`, or `1/4" = 1'-0"`.
func ScaleWords(times float64, feet bool) string {
	s := unit.FormatScale(times, feet)
	if feet && s[len(s)-1] == '"' {
		return s + ` = 1'-0"`
	}
	return "1 : " + strconv.FormatFloat(times, 'f', -1, 64)
}
