package unit

import (
	"math"
	"regexp"
	"slices"
	"strings"
)

// metric are the scales of ISO 5455 that a plan of rooms uses, with 1:25 as a usual extra. 1:200
// is for who asks for it: what does not fit at 1:100 is drawn in parts.
var metric = []float64{10, 20, 25, 50, 100, 200}

// imperial are 1", 1/2", 3/8", 1/4", 1/8" and, for who asks, 1/16" to the foot. From 1/2" to 1/4" a plan
// shrinks to a quarter of its area, which left half a sheet empty; every triangular rule has 3/8".
var imperial = []float64{12, 24, 32, 48, 96, 192}

// Scales are the scales that plans are drawn at, largest drawing first. The caller must not change them.
func Scales(feet bool) []float64 {
	if feet {
		return imperial
	}
	return metric
}

// ParsePlanScale reads a scale of a plan: one that rules are made for, of either series. feet says which
// series a fix is offered from.
func ParsePlanScale(text string, feet bool) (float64, error) {
	times, err := ParseScale(text)
	if err != nil {
		return 0, fault("the scales are "+scaleList(feet), "%s", err)
	}
	is := func(s float64) bool { return math.Abs(s-times) < 1e-6 }
	if slices.ContainsFunc(metric, is) || slices.ContainsFunc(imperial, is) {
		return times, nil
	}
	best := Scales(feet)[0]
	for _, s := range Scales(feet) {
		if math.Abs(math.Log(s/times)) < math.Abs(math.Log(best/times)) {
			best = s
		}
	}
	return 0, fault("did you mean "+FormatScale(best, feet)+"?", "%q is not a scale that rules are made for", text)
}

// scaleList names the scales of a series.
func scaleList(feet bool) string {
	var words []string
	for _, s := range Scales(feet) {
		words = append(words, FormatScale(s, feet))
	}
	return strings.Join(words, ", ")
}

// toTheFoot is what may follow the paper inches of an imperial scale.
var toTheFoot = regexp.MustCompile(`^(?:"|in|inch|inches)(?: *(?:to|per|=) *(?:the|a|1|1'(?:-?0")?)? *(?:foot|ft|')?)?$`)

// ParseScale reads the scale of a drawing as how many times larger the set is than the paper:
// `1:50` is 50, `1/4"` (to the foot) is 48.
func ParseScale(text string) (float64, error) {
	s := strings.ToLower(normalise(text))
	v, rest, err := mixedNumber(text, s)
	if err != nil {
		return 0, notAScale(text)
	}
	switch {
	case strings.HasPrefix(rest, ":"):
		set, after, err := leadingNumber(text, strings.TrimLeft(rest[1:], " "))
		if err != nil || after != "" || v <= 0 {
			return 0, notAScale(text)
		}
		return scaled(text, set/v)
	case toTheFoot.MatchString(rest) && v > 0:
		return scaled(text, 12/v)
	}
	return 0, notAScale(text)
}

// scaled refuses a scale that no plan is drawn at.
func scaled(text string, times float64) (float64, error) {
	if !(times >= 1 && times <= 10000) {
		return 0, fault("a scale is 1:1 to 1:10000", "%q is out of range", text)
	}
	return times, nil
}

func notAScale(text string) error {
	return fault(`write 1:50, or 1/4" for a quarter inch to the foot`, "%q is not a scale", text)
}
