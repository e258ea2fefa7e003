package sheet

import (
	"math"
	"slices"
	"strconv"

	"scrimshaw/plan/unit"
)

// metric are the scales of ISO 5455 that a plan of rooms uses, with 1:25 as a usual extra. 1:200
// is for who asks for it: what does not fit at 1:100 is drawn in parts.
var metric = []float64{10, 20, 25, 50, 100, 200}

// imperial are 1", 1/2", 1/4", 1/8" and, for who asks, 1/16" to the foot.
var imperial = []float64{12, 24, 48, 96, 192}

// good is the smallest scale at which a plan is read with ease: 1:50, or 1/4" to the foot.
const good = 50.0

// series are the scales to choose from, largest drawing first.
func series(feet bool) []float64 {
	if feet {
		return imperial
	}
	return metric
}

// chosen are the scales of a series that are taken unasked.
func chosen(feet bool) []float64 {
	all := series(feet)
	return all[:len(all)-1]
}

// parseScale reads a scale, and says whether it is of one of the series.
func parseScale(text string) (times float64, usual bool, err error) {
	times, err = unit.ParseScale(text)
	if err != nil {
		return 0, false, err
	}
	return times, isUsual(times), nil
}

func isUsual(times float64) bool {
	is := func(s float64) bool { return math.Abs(s-times) < 1e-6 }
	return slices.ContainsFunc(metric, is) || slices.ContainsFunc(imperial, is)
}

// nearestScale is the scale of the series nearest to times by ratio.
func nearestScale(times float64, feet bool) float64 {
	best := series(feet)[0]
	for _, s := range series(feet) {
		if math.Abs(math.Log(s/times)) < math.Abs(math.Log(best/times)) {
			best = s
		}
	}
	return best
}

// scaleWords says a scale as a sheet letters it: `1 : 50`, or `1/4" = 1'-0"`.
func scaleWords(times float64, feet bool) string {
	s := unit.FormatScale(times, feet)
	if feet && s[len(s)-1] == '"' {
		return s + ` = 1'-0"`
	}
	return "1 : " + strconv.FormatFloat(times, 'f', -1, 64)
}
